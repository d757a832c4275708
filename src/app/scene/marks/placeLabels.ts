/** A point of the picture, px. */
export type Pixel = readonly [x: number, y: number];

const CLEARANCE = 4;

/** A label, or something that labels keep clear of, px. */
export interface LabelBox {
  readonly at: Pixel;
  readonly width: number;
  readonly height: number;
}

interface Frame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Greatest share of the free part of a picture that labels cover: the cover is to be seen behind them. Free choice. */
const MOST_COVERED = 0.12;

/**
 * Places labels as near as possible to where they are wanted, inside the picture, clear of one another and of the
 * obstacles. They only move up and down. A label with no place clear of the obstacles may cover one. Those for which the
 * picture has no room are left out; the most urgent one is always shown.
 * @param wanted where the labels should be, the most urgent first
 * @param frame sides of the part of the picture that is free for labels, px
 * @param obstacles what to keep free
 * @returns centres in the order of `wanted`, null for what is left out
 */
export function placeLabels(
  wanted: readonly LabelBox[],
  frame: Frame,
  obstacles: readonly LabelBox[] = [],
): (Pixel | null)[] {
  let room = MOST_COVERED * (frame.right - frame.left) * (frame.bottom - frame.top);
  let chosen: readonly LabelBox[] = [];
  let centres: readonly (Pixel | null)[] = [];
  for (const label of wanted) {
    const size = label.width * label.height;
    const more = [...chosen, label];
    const placed = centresOf(more, frame, obstacles);
    if (chosen.length > 0 && (size > room || placed.includes(null))) continue;
    room -= size;
    [chosen, centres] = [more, placed];
  }
  return wanted.map((label) => {
    const k = chosen.indexOf(label);
    return k < 0 ? null : (centres[k] ?? label.at);
  });
}

/** From the highest to the lowest, null where a label would cover another one. */
function centresOf(wanted: readonly LabelBox[], frame: Frame, obstacles: readonly LabelBox[]): (Pixel | null)[] {
  const labels: LabelBox[] = [];
  const centres: (Pixel | null)[] = wanted.map(() => null);
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]!.at[1] - wanted[b]!.at[1]);
  for (const i of order) {
    const { at, width, height } = wanted[i]!;
    const x = clamp(at[0], frame.left + width / 2 + CLEARANCE, frame.right - width / 2 - CLEARANCE);
    const [top, foot] = [frame.top + height / 2 + CLEARANCE, frame.bottom - height / 2 - CLEARANCE];
    const wantedY = clamp(at[1], top, foot);
    const taken = [...labels, ...obstacles];
    const nearest = (clearOf: readonly LabelBox[]): number | undefined =>
      [wantedY, ...taken.flatMap((box) => [1, -1].map((way) => box.at[1] + way * apart(box.height, height)))]
        .filter((y) => y >= top && y <= foot)
        .filter((y) => clearOf.every((box) => !overlap(box, { at: [x, y], width, height })))
        .sort((a, b) => Math.abs(a - wantedY) - Math.abs(b - wantedY))[0];
    const y = nearest(taken) ?? nearest(labels);
    if (y === undefined) continue;
    labels.push({ at: [x, y], width, height });
    centres[i] = [x, y];
  }
  return centres;
}

const apart = (a: number, b: number): number => (a + b) / 2 + CLEARANCE;

const overlap = (a: LabelBox, b: LabelBox): boolean =>
  Math.abs(a.at[0] - b.at[0]) < apart(a.width, b.width) &&
  Math.abs(a.at[1] - b.at[1]) < apart(a.height, b.height) - 1e-6;

const clamp = (value: number, low: number, high: number): number => Math.max(low, Math.min(high, value));
