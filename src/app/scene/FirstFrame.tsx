import { useFrame, useThree } from '@react-three/fiber';
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { whenGpuIdle } from './whenGpuIdle.ts';

interface FirstFrameProps {
  readonly onDrawn: () => void;
  readonly children?: ReactNode;
}

/** Mounts its children when the first frame after its own mounting has been drawn, and calls back once they are there. */
export function FirstFrame({ onDrawn, children }: FirstFrameProps) {
  const gl = useThree((state) => state.gl);
  const invalidate = useThree((state) => state.invalidate);
  const isAsked = useRef(false);
  const [isDrawn, setDrawn] = useState(false);
  useEffect(() => invalidate(), [invalidate]);
  useFrame(() => {
    if (isAsked.current) return;
    isAsked.current = true;
    // The frame is drawn after this call, in the same task.
    queueMicrotask(() => whenGpuIdle(gl, () => setDrawn(true)));
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the first frame is told of once
  useEffect(() => {
    if (isDrawn) onDrawn();
  }, [isDrawn]);
  return isDrawn ? children : null;
}
