import { type PointerEvent, useLayoutEffect, useRef, useState } from 'react';
import { distance, type Vec2 } from '../../core/index.ts';
import type { CloseUp, DrawnPicture } from './photographQuestions.ts';
import { useMagnified } from './useMagnified.ts';

interface PointLoupeProps {
  readonly picture: DrawnPicture;
  readonly name: string;
  readonly at: Vec2;
  /** Where the lines that end in the point lead. */
  readonly toward: readonly Vec2[];
  /** The other points, which it leaves free to be pressed. */
  readonly others: readonly Vec2[];
  readonly closeUp: (at: Vec2) => Promise<CloseUp>;
  /** Takes the point along while the loupe is dragged, and where it was let go. */
  readonly hold: (at: Vec2) => void;
  readonly letGo: (at: Vec2) => void;
}

/** Side of the loupe, px, as in the style sheet; and how many of them a pixel of the picture takes. */
const SIDE = 136;
const ZOOM = 3;
/** From the point to the middle of the loupe, px: clear of a finger. */
const BESIDE = 112;
/** How far it may stand out over the picture's upper and lower edge, px. */
const OVER = 48;

/**
 * What is round a point, three times as large as in the file, under a cross. It stands beside the point, clear of the others,
 * and may itself be dragged, which moves the picture under the cross.
 */
export function PointLoupe({ picture, name, at, toward, others, closeUp, hold, letGo }: PointLoupeProps) {
  const canvas = useMagnified({ picture, at, toward, side: SIDE, zoom: ZOOM }, closeUp);
  const grip = useRef<{ readonly from: Vec2; readonly at: Vec2 } | null>(null);
  // Where the point was when the loupe was taken: it does not run away from the finger.
  const [anchor, setAnchor] = useState<Vec2 | null>(null);

  useLayoutEffect(() => {
    const own = canvas.current!;
    const [left, top] = besides(own.parentElement!.getBoundingClientRect(), picture, anchor ?? at, others);
    own.style.left = `${left}px`;
    own.style.top = `${top}px`;
  });

  const moved = (event: PointerEvent): Vec2 => {
    const { from, at: start } = grip.current!;
    return [start[0] - (event.clientX - from[0]) / ZOOM, start[1] - (event.clientY - from[1]) / ZOOM];
  };
  return (
    <canvas
      ref={canvas}
      className="point-loupe"
      width={SIDE}
      height={SIDE}
      role="img"
      aria-label={`What is round ${name}, magnified`}
      // The point keeps the focus, and with it the loupe.
      onMouseDown={(event) => event.preventDefault()}
      onPointerDown={(event) => {
        event.preventDefault();
        event.currentTarget.setPointerCapture(event.pointerId);
        grip.current = { from: [event.clientX, event.clientY], at };
        setAnchor(at);
      }}
      onPointerMove={(event) => grip.current !== null && hold(moved(event))}
      onPointerUp={(event) => {
        if (grip.current === null) return;
        const to = moved(event);
        grip.current = null;
        setAnchor(null);
        letGo(to);
      }}
      onPointerCancel={() => {
        if (grip.current === null) return;
        const { at: start } = grip.current;
        grip.current = null;
        setAnchor(null);
        hold(start);
      }}
    />
  );
}

/** Upper left of the loupe in the frame of the picture, px: of eight places round the point that which is clearest of all points. */
function besides(frame: DOMRect, picture: DrawnPicture, at: Vec2, others: readonly Vec2[]): Vec2 {
  const onFrame = ([x, y]: Vec2): Vec2 => [(x / picture.width) * frame.width, (y / picture.height) * frame.height];
  const [x, y] = onFrame(at);
  const points = [at, ...others].map(onFrame);
  const half = SIDE / 2;
  let best: { clear: number; middle: Vec2 } | null = null;
  for (let i = 0; i < 8; i++) {
    const angle = (i * Math.PI) / 4;
    const middle: Vec2 = [
      Math.max(half, Math.min(frame.width - half, x + BESIDE * Math.cos(angle))),
      Math.max(half - OVER, Math.min(frame.height - half + OVER, y + BESIDE * Math.sin(angle))),
    ];
    const clear = Math.min(...points.map((point) => distance(point, middle)));
    if (best === null || clear > best.clear + 1) best = { clear, middle };
  }
  return [best!.middle[0] - half, best!.middle[1] - half];
}
