import type { SegmentId } from '../../core/index.ts';
import { spreadLabels } from './spreadLabels.ts';
import type { Track } from './track.ts';

export interface StripLabel {
  readonly id: SegmentId;
  readonly lines: readonly string[];
  /** Side of the cover that the stretch is on, for screen readers; its place shows it on screen. */
  readonly side: string;
}

interface PlacedLabel extends StripLabel {
  /** px: centre and width of the label, and its top. */
  readonly centre: number;
  readonly width: number;
  readonly top: number;
  /** px: the leader, from the stretch to the label. */
  readonly leader: { readonly from: readonly [number, number]; readonly to: readonly [number, number] };
}

/** Places of everything, px. */
export interface StripLayout {
  readonly width: number;
  readonly height: number;
  /** Top of each row. */
  readonly rows: readonly number[];
  readonly ruler: number;
  readonly labelHeight: number;
  readonly labels: readonly PlacedLabel[];
  /** px a millimetre. */
  readonly scale: number;
  /** px of a place, mm from the tracks' origin. */
  place(at: number): number;
}

/** A label that takes less room along the strip: each word of its name on a line of its own. */
export const stacked = (label: StripLabel): StripLabel => ({
  ...label,
  lines: [...label.lines[0]!.split(' '), ...label.lines.slice(1)],
});

export const BAR = 20;
const CHARACTER = 6.1;
const LINE = 14;
const ROW = 27;
const LEADER = 22;
const RULER = 26;
/** Kept free at both ends for the tabs at the cut edges. */
const END = 22;

const labelWidth = ({ lines }: StripLabel): number =>
  Math.max(40, CHARACTER * Math.max(...lines.map((line) => line.length)) + 8);

/**
 * Sets labels above the rows where they fit side by side; else those of the front half above and the rest below.
 * @param track the row that the labels belong to
 * @param labels one for each of its stretches
 * @param rowCount rows to draw
 * @param room px to draw in; the layout grows wider where even two sides do not suffice
 * @param span mm to draw, half of it on either side of the origin
 */
export function stripLayout(
  { segments, origin }: Track,
  labels: readonly StripLabel[],
  rowCount: number,
  room: number,
  span: number,
): StripLayout {
  const needed = (part: readonly StripLabel[]): number => part.reduce((sum, label) => sum + labelWidth(label), 0);
  const isOneSided = needed(labels) <= room;
  const half = isOneSided ? labels.length : Math.ceil(labels.length / 2);
  const [above, below] = [labels.slice(0, half), labels.slice(half)];
  const width = Math.max(room, needed(above), needed(below));
  const scale = (width - 2 * END) / span;
  const place = (at: number): number => width / 2 + at * scale;

  const labelHeight = Math.max(...labels.map(({ lines }) => lines.length)) * LINE + 4;
  const first = labelHeight + LEADER;
  // With labels on both sides the ruler goes between the rows, where no leader crosses it.
  const rows = Array.from({ length: rowCount }, (_, i) => first + i * ROW + (!isOneSided && i > 0 ? RULER - 4 : 0));
  const bottom = rows.at(-1)! + BAR;
  const ruler = isOneSided ? bottom + 4 : first + BAR + 4;
  const lowest = isOneSided || rowCount === 1 ? ruler + RULER : bottom;

  const side = (part: readonly StripLabel[], offset: number, from: number, to: number, top: number): PlacedLabel[] => {
    const middles = part.map((_, i) => place((segments[offset + i]!.from + segments[offset + i]!.to) / 2 - origin));
    const centres = spreadLabels(middles, part.map(labelWidth), width);
    return part.map((label, i) => ({
      ...label,
      centre: centres[i]!,
      width: labelWidth(label),
      top,
      leader: { from: [middles[i]!, from], to: [centres[i]!, to] },
    }));
  };
  return {
    width,
    height: isOneSided ? lowest : lowest + LEADER + labelHeight,
    rows,
    ruler,
    labelHeight,
    labels: [...side(above, 0, first, labelHeight, 0), ...side(below, half, lowest, lowest + LEADER, lowest + LEADER)],
    scale,
    place,
  };
}
