import { type PointerEvent, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { distance, type Vec2 } from '../../core/index.ts';
import type { CloseUp, DrawnPicture, Preview } from './photographQuestions.ts';

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
  const canvas = useRef<HTMLCanvasElement>(null);
  const [near, setNear] = useState<CloseUp | null>(null);
  const grip = useRef<{ readonly from: Vec2; readonly at: Vec2 } | null>(null);
  // Where the point was when the loupe was taken: it does not run away from the finger.
  const [anchor, setAnchor] = useState<Vec2 | null>(null);

  const needed = near === null || !covers(near, at, picture);
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
    draw(canvas.current!, picture, near, at, toward);
  });
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

/** Whether a part of the picture has all that the loupe shows of it. */
function covers({ left, top, width, height }: CloseUp, [x, y]: Vec2, picture: DrawnPicture): boolean {
  const half = SIDE / ZOOM / 2;
  return (
    (left <= x - half || left === 0) &&
    (top <= y - half || top === 0) &&
    (left + width >= x + half || left + width === picture.width) &&
    (top + height >= y + half || top + height === picture.height)
  );
}

function draw(
  canvas: HTMLCanvasElement,
  picture: DrawnPicture,
  near: CloseUp | null,
  [x, y]: Vec2,
  toward: readonly Vec2[],
): void {
  const context = canvas.getContext('2d')!;
  const { preview } = picture;
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.fillStyle = '#808080';
  context.fillRect(0, 0, SIDE, SIDE);
  // From pixels of the file to those of the loupe.
  context.setTransform(ZOOM, 0, 0, ZOOM, SIDE / 2 - ZOOM * x, SIDE / 2 - ZOOM * y);
  if (near !== null && covers(near, [x, y], picture)) {
    context.imageSmoothingEnabled = false;
    context.drawImage(greyCanvas(near), near.left, near.top);
  } else context.drawImage(previewCanvas(preview), 0, 0, picture.width, picture.height);
  context.setTransform(1, 0, 0, 1, 0, 0);
  const middle = SIDE / 2;
  for (const [colour, width] of [
    ['rgb(255 255 255 / 70%)', 3],
    ['#1f4269', 1],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.beginPath();
    for (const [to, across] of toward) {
      const [dx, dy] = [to - x, across - y];
      const length = Math.hypot(dx, dy) || 1;
      context.moveTo(middle + (8 * dx) / length, middle + (8 * dy) / length);
      context.lineTo(middle + (SIDE * dx) / length, middle + (SIDE * dy) / length);
    }
    for (const [a, b] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      context.moveTo(middle + 3 * a, middle + 3 * b);
      context.lineTo(middle + 14 * a, middle + 14 * b);
    }
    context.stroke();
  }
}

const drawn = new WeakMap<object, OffscreenCanvas>();

function once(
  of: object,
  width: number,
  height: number,
  pixels: () => Uint8ClampedArray<ArrayBuffer>,
): OffscreenCanvas {
  const made = drawn.get(of) ?? new OffscreenCanvas(width, height);
  if (!drawn.has(of)) made.getContext('2d')!.putImageData(new ImageData(pixels(), width, height), 0, 0);
  drawn.set(of, made);
  return made;
}

const previewCanvas = (preview: Preview): OffscreenCanvas =>
  once(preview, preview.width, preview.height, () => preview.rgba);

const greyCanvas = (part: CloseUp): OffscreenCanvas =>
  once(part, part.width, part.height, () => {
    const rgba = new Uint8ClampedArray(4 * part.values.length).fill(255);
    for (const [i, grey] of part.values.entries()) rgba.fill(grey, 4 * i, 4 * i + 3);
    return rgba;
  });
