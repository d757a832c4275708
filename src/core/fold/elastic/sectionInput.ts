/** A pair of figures for the two boards. */
export interface PerBoard {
  readonly front: number;
  readonly back: number;
}

/**
 * A leather cover across the spine of a book, at one opening. Plain numbers: mm, rad, N, MPa.
 *
 * The leather runs from the front board's fore-edge round the spine to the back board's, with the book on its left.
 */
export interface SectionInput {
  /**
   * Outside of the book across the spine, x and y in turn, in that order; at least three points. The first and last
   * stretches are the boards, ending at their fore-edges. Any opening, any shape of spine.
   */
  readonly outline: ArrayLike<number>;
  /** How the outline's points move for one radian of opening, mm; given, the section's `moment` is worked out. */
  readonly rate?: ArrayLike<number>;
  /** From the outline's points to the flesh side: lining, and the edge radius where points are given shrunk by it; 0 up. */
  readonly offset: number;
  /** First and last point of the spine; the second and the last but one if left out. */
  readonly spine?: { readonly first: number; readonly last: number };
  /** t, above 0. */
  readonly thickness: number;
  /** K, neutral fraction from the inside face, 0 to 1; it enters the length only. */
  readonly neutral: number;
  /** Neutral length of leather between the two fore-edge seats, above 0. */
  readonly length: number;
  /** How far in from each fore-edge the leather is held flat to its board, above 0. It moves with the leather. */
  readonly held: PerBoard;
  /** Spare room kept at each fore-edge, 0 up. Left out, the leather slides freely, but no farther than its seat. */
  readonly gap?: PerBoard;
  /** Tangent angles of the shape the crease was set to (`StripSection.angles`) and how much of it stayed, 0 to 1. */
  readonly crease?: { readonly angles: ArrayLike<number>; readonly set: number };
  /**
   * A bench under the book, which lies on its back board with its weight on it: the leather does not go below. The bench runs
   * along the leather's outer face on the board; where the back of the book is lower than that, to the back, from the
   * cover's edge, which is `overhang` mm beyond the board's, 0 up.
   */
  readonly bench?: { readonly overhang: number };
  /** D that tolerances refer to: thickness of the book, above 0. */
  readonly scale: number;
  /** Length of the leather along the spine, above 0; forces and energy are in proportion. */
  readonly height: number;
  /** E of the leather, MPa, above 0: an assumption that forces depend on and the shape under posed boards does not. */
  readonly modulus: number;
}

/** Says what is wrong with an input, as place, got and allowed; null when nothing is. */
export function faultInSection(input: SectionInput): string | null {
  const { outline, rate, spine, gap, crease, bench } = input;
  const points = outline.length / 2;
  if (!Number.isInteger(points) || points < 3) return 'outline: at least three points are needed, x and y in turn';
  if (!Array.from(outline).every(Number.isFinite)) return 'outline: every coordinate must be a finite number';
  if (rate && !(rate.length === outline.length && Array.from(rate).every(Number.isFinite)))
    return 'rate: a finite number for every coordinate of the outline is needed';
  for (const name of ['thickness', 'length', 'scale', 'height', 'modulus'] as const) {
    if (!(input[name] > 0 && input[name] < Infinity)) return `${name}: got ${input[name]}, allowed above 0`;
  }
  if (!(input.offset >= 0 && input.offset < Infinity)) return `offset: got ${input.offset}, allowed 0 or more`;
  if (!(input.neutral >= 0 && input.neutral <= 1)) return `neutral: got ${input.neutral}, allowed 0 to 1`;
  for (const side of ['front', 'back'] as const) {
    const board = boardLength(outline, side);
    if (!(input.held[side] > 0 && input.held[side] < board)) {
      return `held.${side}: got ${input.held[side]}, allowed above 0 and less than the board's ${board} mm`;
    }
    if (gap && !(gap[side] >= 0 && gap[side] < Infinity)) return `gap.${side}: got ${gap[side]}, allowed 0 or more`;
  }
  if (bench && !(bench.overhang >= 0 && bench.overhang < Infinity))
    return `bench.overhang: got ${bench.overhang}, allowed 0 or more`;
  if (crease && !(crease.set >= 0 && crease.set <= 1)) return `crease.set: got ${crease.set}, allowed 0 to 1`;
  if (spine && !(spine.first >= 1 && spine.last >= spine.first && spine.last <= points - 2)) {
    return `spine: got ${spine.first} to ${spine.last}, allowed within 1 to ${points - 2}`;
  }
  return null;
}

/** Length of the outline's first or last stretch. */
function boardLength(outline: ArrayLike<number>, side: keyof PerBoard): number {
  const tip = side === 'front' ? 0 : outline.length - 2;
  const root = side === 'front' ? 2 : outline.length - 4;
  return Math.hypot(outline[root]! - outline[tip]!, outline[root + 1]! - outline[tip + 1]!);
}
