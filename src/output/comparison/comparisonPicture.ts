import { type Compared, isWithin, type LengthUnit, MM_PER_INCH, statedReach } from '../../core/index.ts';

/** A mark of the picture, in its own units, y downward. */
export type PictureMark =
  | {
      readonly kind: 'line';
      readonly of: 'axis' | 'agreed' | 'stated';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
    }
  | {
      readonly kind: 'circle' | 'square';
      readonly x: number;
      readonly y: number;
      readonly isFilled: boolean;
      readonly title: string;
    }
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly text: string;
    };

/** Measured lengths over predicted ones, as marks that black and white tell apart. */
export interface ComparisonPicture {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly PictureMark[];
  /** What it shows, in words. */
  readonly title: string;
}

const SIZE = { width: 420, height: 430, left: 46, right: 12, top: 12, bottom: 76 } as const;

/** Steps between the figures of an axis, of which the first that gives no more than `MOST_TICKS` is taken. */
const STEPS = [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const;
const MOST_TICKS = 8;

/**
 * Draws measured over predicted. On the slanting line both agree; a level bar is what was stated at 95 in 100, and the mark is filled where
 * the line runs through it. A circle is a wrap or width, a square a height.
 * @param lengths one or more
 */
export function comparisonPicture(lengths: readonly Compared[], units: LengthUnit): ComparisonPicture {
  const scale = units === 'in' ? 1 / MM_PER_INCH : 1;
  const ends = lengths.flatMap((each) => [
    each.measured,
    each.predicted - statedReach(each),
    each.predicted + statedReach(each),
  ]);
  const [low, high] = [Math.min(...ends) * scale, Math.max(...ends) * scale];
  const span = Math.max(high - low, 0.5);
  const [from, to] = [low - 0.05 * span, low + 1.05 * span];
  const across = SIZE.width - SIZE.left - SIZE.right;
  const up = SIZE.height - SIZE.top - SIZE.bottom;
  const x = (mm: number): number => round(SIZE.left + ((mm * scale - from) / (to - from)) * across);
  const y = (mm: number): number => round(SIZE.top + up - ((mm * scale - from) / (to - from)) * up);
  const step = STEPS.find((each) => (to - from) / each <= MOST_TICKS) ?? 2000;
  const ticks: number[] = [];
  for (let tick = Math.ceil(from / step) * step; tick <= to; tick += step) ticks.push(tick / scale);
  const bottom = SIZE.top + up;
  const text = (tick: number): string => String(Number((tick * scale).toFixed(2))).replace('-', '−');
  return {
    width: SIZE.width,
    height: SIZE.height,
    title: `${lengths.length} lengths of finished covers, measured over predicted; ${lengths.filter(isWithin).length} of them within what was stated.`,
    marks: [
      { kind: 'line', of: 'axis', x1: SIZE.left, y1: bottom, x2: SIZE.left + across, y2: bottom },
      { kind: 'line', of: 'axis', x1: SIZE.left, y1: SIZE.top, x2: SIZE.left, y2: bottom },
      { kind: 'line', of: 'agreed', x1: SIZE.left, y1: bottom, x2: SIZE.left + across, y2: SIZE.top },
      ...ticks.flatMap((tick): PictureMark[] => [
        { kind: 'line', of: 'axis', x1: x(tick), y1: bottom, x2: x(tick), y2: bottom + 4 },
        { kind: 'text', x: x(tick), y: bottom + 17, anchor: 'middle', text: text(tick) },
        { kind: 'line', of: 'axis', x1: SIZE.left - 4, y1: y(tick), x2: SIZE.left, y2: y(tick) },
        { kind: 'text', x: SIZE.left - 7, y: y(tick) + 4, anchor: 'end', text: text(tick) },
      ]),
      { kind: 'text', x: SIZE.left + across, y: bottom + 33, anchor: 'end', text: `predicted, ${units}` },
      { kind: 'text', x: SIZE.left + 6, y: SIZE.top + 10, anchor: 'start', text: `measured, ${units}` },
      { kind: 'circle', x: SIZE.left + 5, y: bottom + 46, isFilled: true, title: '' },
      { kind: 'text', x: SIZE.left + 15, y: bottom + 50, anchor: 'start', text: 'fore-edges, width' },
      { kind: 'square', x: SIZE.left + 145, y: bottom + 46, isFilled: true, title: '' },
      { kind: 'text', x: SIZE.left + 155, y: bottom + 50, anchor: 'start', text: 'head and tail, height' },
      { kind: 'circle', x: SIZE.left + 5, y: bottom + 64, isFilled: false, title: '' },
      {
        kind: 'text',
        x: SIZE.left + 15,
        y: bottom + 68,
        anchor: 'start',
        text: 'hollow: outside the bar, stated at 95 in 100',
      },
      ...lengths.flatMap((each): PictureMark[] => [
        {
          kind: 'line',
          of: 'stated',
          x1: x(each.predicted - statedReach(each)),
          y1: y(each.measured),
          x2: x(each.predicted + statedReach(each)),
          y2: y(each.measured),
        },
        {
          kind: each.of === 'fore-edges' || each.of === 'cut width' ? 'circle' : 'square',
          x: x(each.predicted),
          y: y(each.measured),
          isFilled: isWithin(each),
          title: `${each.cover}, ${each.of}`,
        },
      ]),
    ],
  };
}

const round = (value: number): number => Math.round(100 * value) / 100;
