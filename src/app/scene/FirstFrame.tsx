import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { whenGpuIdle } from './whenGpuIdle.ts';

/** Calls back once when the first frame after mounting has been drawn. */
export function FirstFrame({ onDrawn }: { readonly onDrawn: () => void }) {
  const gl = useThree((state) => state.gl);
  const invalidate = useThree((state) => state.invalidate);
  const isAsked = useRef(false);
  useEffect(() => invalidate(), [invalidate]);
  useFrame(() => {
    if (isAsked.current) return;
    isAsked.current = true;
    // The frame is drawn after this call, in the same task.
    queueMicrotask(() => whenGpuIdle(gl, onDrawn));
  });
  return null;
}
