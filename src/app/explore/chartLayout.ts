import type { FitLimit, ResultPart, SweepPoint } from '../../core/index.ts';

/** Margins of the plot, px: upright figures at the left, curve names at the right, result and present job above. */
export const MARGIN = { left: 56, right: 52, top: 42, bottom: 44 } as const;

export interface PlotFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** From values to px. */
  readonly x: (at: number) => number;
  readonly y: (value: number) => number;
  /** Ends of the upright axis, in values. */
  readonly low: number;
  readonly high: number;
}

/** A point of a curve that has values. */
export interface PlotPoint {
  readonly at: number;
  readonly thin: number;
  readonly nominal: number;
  readonly thick: number;
  readonly limit: FitLimit | null;
  readonly parts: readonly ResultPart[];
}

/** Runs of a sweep without a gap, split at values that a job may not have and at missing results. */
export function stretches(points: readonly SweepPoint[]): readonly (readonly PlotPoint[])[] {
  const runs: PlotPoint[][] = [[]];
  for (const point of points) {
    const reading = 'issue' in point ? undefined : point.readings[0];
    const { thin, nominal, thick } = reading?.values ?? { thin: null, nominal: null, thick: null };
    if (reading === undefined || thin === null || nominal === null || thick === null) runs.push([]);
    else runs.at(-1)!.push({ at: point.at, thin, nominal, thick, limit: reading.limit, parts: reading.parts });
  }
  return runs.filter((run) => run.length > 0);
}

/** One part of a sum as a band, with its lower and upper edge. */
export interface StackedPart {
  readonly name: string;
  readonly lower: Read;
  readonly upper: Read;
}

/** The parts of a sum stacked from zero; those that the field changes most are on top. */
export function stackedParts(points: readonly PlotPoint[]): readonly StackedPart[] {
  const lengthOf = (name: string, { parts }: PlotPoint): number =>
    parts.find((part) => part.name === name)?.length_mm ?? 0;
  const names = [...new Set(points.flatMap(({ parts }) => parts.map(({ name }) => name)))];
  const movement = (name: string): number => {
    const lengths = points.map((point) => lengthOf(name, point));
    return Math.round((Math.max(...lengths) - Math.min(...lengths)) * 1e6);
  };
  const order = names.sort((a, b) => movement(a) - movement(b));
  const sums = new Map(points.map((point) => [point, runningSums(order.map((name) => lengthOf(name, point)))]));
  const upTo = (count: number) => (point: PlotPoint) => sums.get(point)![count]!;
  return order.map((name, i) => ({ name, lower: upTo(i), upper: upTo(i + 1) }));
}

function runningSums(lengths: readonly number[]): readonly number[] {
  const sums = [0];
  for (const length of lengths) sums.push(sums.at(-1)! + length);
  return sums;
}

/** Scales the plot to hold every value and limit; a flat curve gets some height, and a sum starts at zero. */
export function plotFrame(
  points: readonly PlotPoint[],
  range: { readonly from: number; readonly to: number },
  width: number,
  height: number,
): PlotFrame {
  const values = points.flatMap(({ thin, nominal, thick, limit, parts }) => [
    thin,
    nominal,
    thick,
    ...(limit === null ? [] : [limit.fits, limit.fails]),
    ...(parts.length === 0 ? [] : [0]),
  ]);
  const [least, most] = values.length === 0 ? [0, 1] : [Math.min(...values), Math.max(...values)];
  const pad = Math.max((most - least) * 0.09, Math.abs(most) * 1e-3, 1e-3);
  const startsAtZero = least === 0 && points.some(({ parts }) => parts.length > 0);
  const [low, high] = [startsAtZero ? 0 : least - pad, most + pad];
  const frame = { left: MARGIN.left, right: width - MARGIN.right, top: MARGIN.top, bottom: height - MARGIN.bottom };
  return {
    ...frame,
    low,
    high,
    x: (at) => frame.left + ((at - range.from) / (range.to - range.from)) * (frame.right - frame.left),
    y: (value) => frame.bottom - ((value - low) / (high - low)) * (frame.bottom - frame.top),
  };
}

type Read = (point: PlotPoint) => number;

const place =
  ({ x, y }: PlotFrame, read: Read) =>
  (point: PlotPoint) =>
    `${x(point.at).toFixed(1)} ${y(read(point)).toFixed(1)}`;

/** A line through the points. A lone point is drawn as a short dash. */
export function linePath(run: readonly PlotPoint[], frame: PlotFrame, read: Read): string {
  if (run.length === 1) return `M${place(frame, read)(run[0]!)}h2`;
  return `M${run.map(place(frame, read)).join('L')}`;
}

/** The area between two lines, the lower one shifted by `drop` px. */
export function bandPath(run: readonly PlotPoint[], frame: PlotFrame, upper: Read, lower: Read, drop = 0): string {
  const dropped: PlotFrame = { ...frame, y: (value) => frame.y(value) + drop };
  return `M${run.map(place(frame, upper)).join('L')}L${[...run].reverse().map(place(dropped, lower)).join('L')}Z`;
}
