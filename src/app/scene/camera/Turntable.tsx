import { type RefObject, useEffect } from 'react';
import type { CameraHandle } from './CameraRig.tsx';

/** One turn in 48 s: slow enough to look at, radians per second. */
const SPEED = (2 * Math.PI) / 48;

/** Rest between two steps, ms: leaves the page time for other things on a machine that draws slowly. */
const REST = 33;

/** Longest time that one step makes up for, s: a page that was in the background goes on from where it was. */
const LONGEST_STEP = 0.25;

/** Turns the work before the camera for as long as it is there. */
export function Turntable({ camera }: { camera: RefObject<CameraHandle | null> }) {
  useEffect(() => {
    let last = performance.now();
    let timer: ReturnType<typeof setTimeout>;
    let frame = 0;
    const step = (): void => {
      const now = performance.now();
      camera.current?.turn(SPEED * Math.min(LONGEST_STEP, (now - last) / 1000), 0);
      last = now;
      // A frame first, so that nothing piles up where drawing takes longer than the rest.
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
