import type { Segment } from '../math/contour.ts';
import { addScaled, type Vec2 } from '../math/vec2.ts';
import type { Printer } from '../units/printer.ts';
import { line } from './drawing.ts';
import { type PieceFrame, placed } from './holeMarks.ts';
import type { Word } from './lettering.ts';
import type { Seam, SeamHole, SeamRow } from './seam.ts';

/** Inward from each side, in the frame of the outside, and how words along it are turned. */
const INWARD = {
  tail: { way: [0, 1], rotation: 0 },
  head: { way: [0, -1], rotation: 0 },
  frontForeEdge: { way: [1, 0], rotation: Math.PI / 2 },
  backForeEdge: { way: [-1, 0], rotation: Math.PI / 2 },
} as const satisfies Record<SeamRow['side'], { way: Vec2; rotation: number }>;

/** Ends of a mark and middle of its words, mm inward from the seam line. */
const MARK = { from: 1.5, to: 5, words: 5 } as const;

/** Marks where uneven strides begin and end on the piece that has the chosen holes, and words that say what they measure. */
export function unevenMarks(
  { rows }: Seam,
  frame: PieceFrame,
  print: Printer,
  takes: (hole: SeamHole) => boolean = () => true,
): { readonly marks: readonly Segment[]; readonly words: readonly Word[] } {
  const marked = rows.flatMap(({ side, uneven, holes }) => {
    if (uneven === undefined) return [];
    const ends = [holes[uneven.first], holes[uneven.first + uneven.count]].filter((hole) => hole !== undefined);
    if (ends.length < 2 || !ends.every(takes)) return [];
    const { way, rotation } = INWARD[side];
    const inward = ({ at }: SeamHole, by: number): Vec2 => placed(frame, addScaled(at, way, by));
    const [low, high] = ends.map((hole) => inward(hole, MARK.words)) as [Vec2, Vec2];
    const middle: Vec2 = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
    const word: Word = [`${uneven.count} × ${print.small(uneven.pitch)}`, middle, 2.5, rotation, 'mark'];
    return [{ marks: ends.map((hole) => line(inward(hole, MARK.from), inward(hole, MARK.to))), word }];
  });
  return { marks: marked.flatMap(({ marks }) => marks), words: marked.map(({ word }) => word) };
}
