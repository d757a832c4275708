import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { whenGpuIdle } from './whenGpuIdle.ts';

/** A frame that takes longer is slow, ms. */
const SLOW_MS = 80;
/** Share of the pixels along a side in which a slow scene moves, and the rest after which it is drawn in full, ms. Judged by eye. */
const COARSE = 0.5;
const REST_MS = 250;

/** Draws what moves, and the very first frame, in fewer pixels where drawing is slow, and in full once it stands still. */
export function Sharpness() {
  const { gl, invalidate } = useThree();
  const now = useRef({ isSlow: true, hasRested: false, stop: () => {} }).current;
  useEffect(() => () => now.stop(), [now]);
  useFrame(({ viewport }) => {
    now.stop();
    const isFull = now.hasRested || !now.isSlow;
    now.hasRested = false;
    const ratio = viewport.dpr * (isFull ? 1 : COARSE);
    // Set on the renderer alone: the canvas gives its own ratio back to the scene with every change of a property.
    if (gl.getPixelRatio() !== ratio) gl.setPixelRatio(ratio);
    const start = performance.now();
    const drawn = (): void => {
      if (isFull) {
        now.isSlow = performance.now() - start > SLOW_MS;
        return;
      }
      const timer = setTimeout(() => {
        now.hasRested = true;
        invalidate();
      }, REST_MS);
      now.stop = () => clearTimeout(timer);
    };
    // The frame is drawn after this call, in the same task.
    queueMicrotask(() => {
      now.stop = whenGpuIdle(gl, drawn);
    });
  });
  return null;
}
