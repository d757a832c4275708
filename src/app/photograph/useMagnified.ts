import { type RefObject, useEffect, useRef, useState } from 'react';
import type { Vec2 } from '../../core/index.ts';
import { covers, drawMagnified, type MagnifiedPoint } from './magnifiedPoint.ts';
import type { CloseUp } from './photographQuestions.ts';

/** A canvas that shows what is round a point; it asks for the file's own pixels when the point leaves those that it has. */
export function useMagnified(
  point: MagnifiedPoint,
  closeUp: (at: Vec2) => Promise<CloseUp>,
): RefObject<HTMLCanvasElement | null> {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [near, setNear] = useState<CloseUp | null>(null);
  const { at } = point;
  const needed = near === null || !covers(near, point);
  useEffect(() => {
    if (!needed) return;
    let isGone = false;
    // Until it comes the preview is magnified; without it that stays.
    closeUp(at).then(
      (part) => {
        if (!isGone) setNear(part);
      },
      () => {},
    );
    return () => {
      isGone = true;
    };
  }, [needed, at, closeUp]);
  useEffect(() => {
    drawMagnified(canvas.current!, point, near);
  });
  return canvas;
}
