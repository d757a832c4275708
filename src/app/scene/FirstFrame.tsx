import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { whenGpuIdle } from './whenGpuIdle.ts';

/** Calls back once when the first frame after it was set in has been drawn to the end. */
export function FirstFrame({ onDrawn }: { readonly onDrawn: () => void }) {
  const gl = useThree((state) => state.gl);
  const invalidate = useThree((state) => state.invalidate);
  const isAsked = useRef(false);
  useEffect(() => invalidate(), [invalidate]);
  useFrame(() => {
    if (isAsked.current) return;
    isAsked.current = true;
    // The frame is drawn after this call, within the same turn.
    queueMicrotask(() => whenGpuIdle(gl, onDrawn));
  });
  return null;
}
