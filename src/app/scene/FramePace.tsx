import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { whenGpuIdle } from './whenGpuIdle.ts';

/** The first frames also compile shaders and fill buffers; they are not measured. */
const WARM_UP = 2;
const MEASURED = 5;
const SLOW_MS = 120;

/** Draws a few frames when the scene starts, and calls back once if their median is slow. */
export function FramePace({ onSlow }: { onSlow: () => void }) {
  const invalidate = useThree((state) => state.invalidate);
  const gl = useThree((state) => state.gl);
  const times = useRef<number[]>([]);
  const told = useRef(false);
  useEffect(() => invalidate(), [invalidate]);
  useFrame(() => {
    // A page in the background is drawn rarely on any machine.
    if (document.hidden || told.current) return;
    times.current.push(performance.now());
    const steps = times.current.slice(WARM_UP).map((time, i) => time - times.current[WARM_UP + i - 1]!);
    const slow = steps.filter((step) => step > SLOW_MS).length;
    // The median is known as soon as more than half of the steps lie on one side.
    const decided = 2 * slow > MEASURED || 2 * (steps.length - slow) > MEASURED;
    if (!decided) {
      invalidate();
      return;
    }
    told.current = true;
    // Frames still waiting would block the page when their canvas is removed.
    if (2 * slow > MEASURED) whenGpuIdle(gl, onSlow);
  });
  return null;
}
