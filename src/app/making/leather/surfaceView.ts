import { type LengthUnit, MM_PER_INCH, type Vec2 } from '../../../core/index.ts';

/** Size of a drawing surface, px. */
export interface SurfaceSize {
  readonly width: number;
  readonly height: number;
}

/** What a drawing surface shows: the point at its lower left corner, mm, y up, and px a millimetre. */
export interface SurfaceView {
  readonly left: number;
  readonly low: number;
  readonly scale: number;
}

/** From all that a job allows on a small screen to a millimetre as broad as a finger. */
const SCALES = { min: 0.02, max: 20 } as const;

/** Kept clear round what is fitted, px. */
const MARGIN = 28;

/** A square of the grid is this wide at least, px. */
const LEAST_SQUARE = 16;

export const onScreen = ({ left, low, scale }: SurfaceView, { height }: SurfaceSize, [x, y]: Vec2): Vec2 => [
  (x - left) * scale,
  height - (y - low) * scale,
];

export const onPlane = ({ left, low, scale }: SurfaceView, { height }: SurfaceSize, [x, y]: Vec2): Vec2 => [
  left + x / scale,
  low + (height - y) / scale,
];

/** Shows points as large as the surface allows, in its middle. */
export function fittedView(points: readonly Vec2[], { width, height }: SurfaceSize): SurfaceView {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const enlarged = (room: number, reach: number): number => Math.max(1, room - 2 * MARGIN) / Math.max(1, reach);
  const scale = inScales(Math.min(enlarged(width, x1 - x0), enlarged(height, y1 - y0)));
  return { left: (x0 + x1 - width / scale) / 2, low: (y0 + y1 - height / scale) / 2, scale };
}

/** The view moved so that what was under one place of the screen is under another, `times` as large. */
export function carried(view: SurfaceView, size: SurfaceSize, from: Vec2, to: Vec2, times = 1): SurfaceView {
  const [x, y] = onPlane(view, size, from);
  const scale = inScales(view.scale * times);
  return { left: x - to[0] / scale, low: y - (size.height - to[1]) / scale, scale };
}

const inScales = (scale: number): number => Math.min(SCALES.max, Math.max(SCALES.min, scale));

/** Sides of a square of the grid in inches, beside whole feet. */
const INCHES = [0.25, 0.5, 1, 2, 6, 12, 24, 60, 120, 240];

/** Side of a square of the grid at a scale: the least of 1, 2, 5, 10 mm ..., or of 1/4, 1/2, 1, 2, 6, 12 in ..., that can be told apart; mm. */
export function gridStep(scale: number, units: LengthUnit): number {
  const least = LEAST_SQUARE / scale;
  if (units === 'in') return MM_PER_INCH * (INCHES.find((side) => side * MM_PER_INCH >= least) ?? INCHES.at(-1)!);
  const decade = 10 ** Math.floor(Math.log10(least));
  return decade * ([1, 2, 5].find((each) => each * decade >= least) ?? 10);
}
