import { type RefObject, useEffect } from 'react';
import type { CameraHandle } from './CameraRig.tsx';

/** Radians per second: one turn in 48 s. */
const SPEED = (2 * Math.PI) / 48;

/** Pause between two steps, ms: leaves a slow machine time for other work. */
const REST = 33;

/** Longest time of one step, s: a page that was in the background continues from where it was. */
const LONGEST_STEP = 0.25;

/** Turns the work while it is mounted. */
export function Turntable({ camera }: { camera: RefObject<CameraHandle | null> }) {
  useEffect(() => {
    let last = performance.now();
    let timer: ReturnType<typeof setTimeout>;
    let frame = 0;
    const step = (): void => {
      const now = performance.now();
      camera.current?.turn(SPEED * Math.min(LONGEST_STEP, (now - last) / 1000), 0);
      last = now;
      // Waits for a frame, so that steps do not pile up where drawing takes longer than the pause.
      timer = setTimeout(() => {
        frame = requestAnimationFrame(step);
      }, REST);
    };
    step();
    return () => {
      clearTimeout(timer);
      cancelAnimationFrame(frame);
    };
  }, [camera]);
  return null;
}
