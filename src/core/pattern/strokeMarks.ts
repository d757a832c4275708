import { addScaled, type Vec2 } from '../math/vec2.ts';
import type { Printer } from '../units/printer.ts';
import { line } from './drawing.ts';
import { type PieceFrame, placed } from './holeMarks.ts';
import type { NamedMarks, Word } from './lettering.ts';
import { holeShape, type PatternSource, type Seam, type SeamHole, type SeamRow } from './seam.ts';
import { type Strokes, strokesAlong } from './strokes.ts';

/** Name of each side on the piece, the way inward from it in the frame of the outside, and how words along it are turned. */
const SIDES = {
  tail: { name: 'tail', way: [0, 1], rotation: 0 },
  head: { name: 'head', way: [0, -1], rotation: 0 },
  frontForeEdge: { name: 'fore-edge', way: [1, 0], rotation: Math.PI / 2 },
  backForeEdge: { name: 'fore-edge', way: [-1, 0], rotation: Math.PI / 2 },
} as const satisfies Record<SeamRow['side'], { name: string; way: Vec2; rotation: number }>;

/** Start of a mark, its length, and middle of the words of a mark and of those of the side, mm inward from the seam line. */
const MARK = { from: 1.5, long: 3.5, words: 5, side: 9 } as const;

/** Room between a hole and a mark, mm. */
const ROOM = 0.5;

/** Letter height beside a mark and of the strokes of a side, mm. */
const LETTERS = { mark: 2.5, side: 2.2 } as const;

/**
 * What a piece shows of the iron: the strokes of each side counted, a mark where the last stroke of a stretch starts that goes
 * back over holes already made, and marks where uneven strides begin and end, with what they measure. Nothing without an iron.
 * @param takes whether the piece has a hole
 */
export function strokeMarks(
  source: PatternSource,
  seam: Seam,
  frame: PieceFrame,
  print: Printer,
  takes: (hole: SeamHole) => boolean = () => true,
): NamedMarks {
  const start = Math.max(MARK.from, holeShape(source.job).size / 2 + ROOM);
  const marked = seam.rows.map((row, i): NamedMarks => {
    const next = seam.isClosed ? seam.rows[(i + 1) % seam.rows.length]!.holes.slice(0, 1) : [];
    const holes = [...row.holes, ...next];
    const numbers = holes.flatMap((hole, k) => (takes(hole) ? [k] : []));
    const [first, last] = [numbers[0], numbers.at(-1)];
    if (first === undefined || last === undefined || last === first) return { marks: [], words: [] };
    const { name, way, rotation } = SIDES[row.side];
    const inward = (k: number, by: number): Vec2 => placed(frame, addScaled(holes[k]!.at, way, by));
    const tick = (k: number) => line(inward(k, start), inward(k, start + MARK.long));
    const between = (from: number, to: number, by: number): Vec2 => {
      const [a, b] = [inward(from, by), inward(to, by)];
      return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    };
    const beside = (text: string, from: number, to: number): Word => [
      text,
      between(from, to, MARK.words),
      LETTERS.mark,
      rotation,
      'mark',
    ];
    const strokes = strokesAlong(source, seam, row, [first, last]);
    const back = strokes.filter(({ again }) => again > 0).map(({ to, teeth }) => [to - teeth + 1, to] as const);
    const { uneven } = row;
    const isUneven = uneven !== undefined && uneven.first >= first && uneven.first + uneven.count <= last;
    const stretch = isUneven ? ([uneven.first, uneven.first + uneven.count] as const) : null;
    return {
      marks: [...(stretch ?? []), ...back.map(([from]) => from)].map(tick),
      words: [
        ...(stretch === null ? [] : [beside(`${uneven!.count} × ${print.small(uneven!.pitch)}`, ...stretch)]),
        ...back.map((ends) => beside('last stroke', ...ends)),
        ...(strokes.length === 0
          ? []
          : [[`${name}: ${counted(strokes)}`, between(first, last, MARK.side), LETTERS.side, rotation] as const]),
      ],
    };
  });
  return { marks: marked.flatMap(({ marks }) => marks), words: marked.flatMap(({ words }) => words) };
}

/** `12 strokes of 10 teeth, 6 holes singly`: a side in all. */
function counted(strokes: readonly Strokes[]): string {
  const inAll = (of: readonly Strokes[]): number => of.reduce((sum, { times }) => sum + times, 0);
  const singly = inAll(strokes.filter(({ teeth }) => teeth === 1));
  const many = strokes.filter(({ teeth }) => teeth > 1);
  const sizes = [...new Set(many.map(({ teeth }) => teeth))].map((teeth) => {
    const times = inAll(many.filter((each) => each.teeth === teeth));
    return `${times} ${times === 1 ? 'stroke' : 'strokes'} of ${teeth} teeth`;
  });
  return [...sizes, ...(singly === 0 ? [] : [`${singly} ${singly === 1 ? 'hole' : 'holes'} singly`])].join(', ');
}
