import type { Vec2 } from '../../core/index.ts';
import type { CloseUp, DrawnPicture, Preview } from './photographQuestions.ts';

/** A point of a picture, and what is drawn round it on a square. */
export interface MagnifiedPoint {
  readonly picture: DrawnPicture;
  readonly at: Vec2;
  /** Where the lines that end in the point lead. */
  readonly toward: readonly Vec2[];
  /** Side of the square, px, and how many of them a pixel of the file takes. */
  readonly side: number;
  readonly zoom: number;
}

/** Whether a part of the picture has all that the square shows of it. */
export function covers(
  { left, top, width, height }: CloseUp,
  { picture, at: [x, y], side, zoom }: MagnifiedPoint,
): boolean {
  const half = side / zoom / 2;
  return (
    (left <= x - half || left === 0) &&
    (top <= y - half || top === 0) &&
    (left + width >= x + half || left + width === picture.width) &&
    (top + height >= y + half || top + height === picture.height)
  );
}

/** Draws what is round a point, under a cross with its lines; from the preview where the file's own pixels are not there. */
export function drawMagnified(canvas: HTMLCanvasElement, point: MagnifiedPoint, near: CloseUp | null): void {
  const {
    picture,
    at: [x, y],
    toward,
    side,
    zoom,
  } = point;
  const context = canvas.getContext('2d')!;
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.fillStyle = '#808080';
  context.fillRect(0, 0, side, side);
  // From pixels of the file to those of the square.
  context.setTransform(zoom, 0, 0, zoom, side / 2 - zoom * x, side / 2 - zoom * y);
  if (near !== null && covers(near, point)) {
    context.imageSmoothingEnabled = false;
    context.drawImage(greyCanvas(near), near.left, near.top);
  } else context.drawImage(previewCanvas(picture.preview), 0, 0, picture.width, picture.height);
  context.setTransform(1, 0, 0, 1, 0, 0);
  const middle = side / 2;
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
      context.lineTo(middle + (side * dx) / length, middle + (side * dy) / length);
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
