import { bendLength } from '../leather/bend.ts';
import { corneredContour, type Segment } from '../math/contour.ts';
import { SQUARE } from '../math/corner.ts';
import type { Vec2 } from '../math/vec2.ts';
import type { Printer } from '../units/printer.ts';
import { directionMark } from './arrow.ts';
import { type BuckleTab, buckleTabMarks, buckleTabOf } from './buckleTab.ts';
import { asCut, cutSum, given, lengthSum, part } from './cutSums.ts';
import { type CutSum, type Entity, line, noLayers, type PieceDrawing, type PieceTooling, path } from './drawing.ts';
import { evenPitch } from './evenPitch.ts';
import { holeMarks } from './holeMarks.ts';
import { letteredPiece } from './letteredPiece.ts';
import type { NamedMarks } from './lettering.ts';
import { type PatternSource, type SeamHole, turnAxis } from './seam.ts';
import { seamRise } from './seamRise.ts';
import { sizeLine } from './sumColumn.ts';

/** The closure strap or flap: sewn on the back cover, taken round the fore-edge of the closed book, fastened on the front. */
export interface Strap {
  readonly width: number;
  /** Radius of both corners of its free end, mm: a strap ends in a half circle. */
  readonly corner: number;
  readonly sum: CutSum;
  /** Distances from its sewn end, mm, to where it leaves the back, reaches the front and is fastened. */
  readonly leaves: number;
  readonly reaches: number;
  readonly fastening: number;
  /** Holes in the frame of the outside: rows across the strap, a margin from its end and two from the cover's edge. */
  readonly holes: readonly SeamHole[];
  /** What holds the buckle on the front; null for other fastenings. */
  readonly tab: BuckleTab | null;
}

/** All holes for a closure's own seams in the outside: of the strap on the back, then of the tab on the front. */
export const closureHoles = ({ holes, tab }: Strap): readonly SeamHole[] => [...holes, ...(tab?.holes ?? [])];

/**
 * Length of the strap from the closed book, thick end of the leather: anchor + c + A K t + l + reach + end.
 *
 * c is the distance between the two cut edges over the outsides, T + 2 (u sin w + o cos w): u from the spine plane to the
 * cut edge, w the wedge of the boards, o the thickness of the layers on a board. A = pi + 2 w is the turning at the two
 * edges, taken as sharp. l is what it takes to lie over thread or lace of a seam at these edges (`overSeam`). The strap is
 * cut from the outside's leather, its length across the backbone, so that it and the places on it change with that leather in
 * making; its width, some tenths of a millimetre, is cut as given.
 * @returns null where the job has no strap
 */
export function strapOf(source: PatternSource): Strap | null {
  const { job, pieces, needs } = source;
  const { strap } = job.construction;
  if (strap === null) return null;
  const { book, leathers, closed, foreEdge } = needs.thick;
  const { thickness, neutral } = leathers.outside;
  const isTurned = pieces.pocket.count === 0;
  const { growth } = pieces;
  const beyond =
    (pieces.outside.width * growth - closed.length) / 2 -
    (isTurned ? pieces.pocketDepth + foreEdge.turn - thickness : 0);
  const layers = thickness + (job.construction.lining === 'full' ? (leathers.lining?.thickness ?? 0) : 0);
  const across = Math.max(
    0,
    book.thickness + 2 * ((book.width + beyond) * Math.sin(book.wedge) + layers * Math.cos(book.wedge)),
  );
  const turn = Math.PI + 2 * book.wedge;
  const bends = bendLength(turn, 0, thickness, neutral);
  const over = isTurned ? 0 : overSeam(job, strap, turn);
  const parts = [
    given('sewn to the back', strap.anchor_mm),
    part('across the fore-edge of the closed book', across),
    part('bends at the two edges', bends),
    part(job.seam.method === 'lacing' ? 'over the laced edge' : 'over the stitches at the edge', over),
    given('on the front, to the fastening', strap.reach_mm),
    given('beyond the fastening', strap.end_mm),
  ];
  const sum = lengthSum(job, asCut(job, parts));
  return {
    width: strap.width_mm,
    corner: strap.shape === 'flap' ? Math.min(strap.end_mm, strap.width_mm / 2) : strap.width_mm / 2,
    sum,
    leaves: strap.anchor_mm / growth,
    reaches: (strap.anchor_mm + across + bends + over) / growth,
    fastening: sum.total - strap.end_mm / growth,
    holes: strapHoles(source, strap.width_mm, strap.anchor_mm / growth),
    tab: buckleTabOf(source, pieces.outside.width - backEdge(source)),
  };
}

/**
 * What a strap takes to lie over a seam along both edges: e A + C(a) + C(r).
 *
 * Laid e farther out all round it is longer by e times its turning A (Steiner). C(x) is the climb, sqrt((x - m)^2 + y^2) +
 * sqrt(m^2 + (y - e)^2) - x, from the leather x inside the edge over the seam line m from it, where what stands there or the
 * straight way is y high: from the last row that sews the strap down, a, and from the fastening, r.
 */
function overSeam(job: PatternSource['job'], strap: StrapFields, turn: number): number {
  const { face, edge } = seamRise(job);
  const margin = job.seam.edgeMargin_mm;
  const climb = (from: number): number => {
    if (from <= margin) return 0;
    const high = Math.max(face, (edge * (from - margin)) / from);
    return Math.hypot(from - margin, high) + Math.hypot(margin, high - edge) - from;
  };
  const lastRow = strap.anchor_mm - sewnRows(strap.anchor_mm, margin).at(-1)!;
  return edge * turn + climb(lastRow) + climb(strap.reach_mm);
}

type StrapFields = NonNullable<PatternSource['job']['construction']['strap']>;

/**
 * Rows that sew a strap down, mm from its end: a margin from it, and a margin from the seam of the cover. A short anchor has room
 * for one row only.
 */
const sewnRows = (anchor: number, margin: number): number[] =>
  [margin, anchor - 2 * margin].filter((at, i) => i === 0 || at > 2 * margin);

/** Back edge of the finished cover in the frame of the outside: its cut edge, or the fold of a turned end. */
const backEdge = (source: PatternSource): number =>
  source.pieces.outside.width - (source.pieces.pocket.count === 0 ? turnAxis(source) : 0);

function strapHoles(source: PatternSource, width: number, anchor: number): SeamHole[] {
  const { job, pieces } = source;
  const { edgeMargin_mm: margin, pitch_mm } = job.seam;
  const end = backEdge(source) - anchor;
  const low = pieces.outside.height / 2 - width / 2 + margin;
  const { intervals, pitch } = evenPitch(width - 2 * margin, pitch_mm);
  return sewnRows(anchor, margin).flatMap((at) =>
    Array.from({ length: intervals + 1 }, (_, k): SeamHole => {
      const point: Vec2 = [end + at, low + k * pitch];
      return { at: point, heading: Math.PI / 2, side: 'backForeEdge', isCorner: false, layers: ['outside'] };
    }),
  );
}

/** Numbers of the holes of a strap or tab as they are sewn: the row at its end, and back along the one at the cover's edge. */
export function sewingOrder({ holes }: Pick<Strap, 'holes'>): readonly number[] {
  const numbers = holes.map((_, i) => i);
  const isFirst = (i: number): boolean => holes[i]!.at[0] === holes[0]!.at[0];
  return [...numbers.filter(isFirst), ...numbers.filter((i) => !isFirst(i)).reverse()];
}

/** Width kept for the arrow of the direction beside the words, mm. */
const ARROW = 8;

export function strapDrawing(
  source: PatternSource,
  strap: Strap,
  print: Printer,
  tooling?: PieceTooling,
): PieceDrawing {
  const { job, pieces } = source;
  const [length, width] = [strap.sum.total, strap.width];
  const layers = noLayers(tooling);
  const { isFlap, noun } = named(job);
  const round = { style: 'rounded', size: strap.corner } as const;
  const outline = corneredContour([
    { at: [0, 0], corner: SQUARE },
    { at: [length, 0], corner: round },
    { at: [length, width], corner: round },
    { at: [0, width], corner: SQUARE },
  ]);
  layers.cut.push(path(outline, true));
  for (const x of [strap.leaves, strap.reaches]) layers.fold.push(line([x, 0], [x, width]));
  const holes = holeMarks(job, strap.holes, { origin: strap.leaves - backEdge(source), sign: 1 });
  layers.hole.push(...holes.map((mark) => turned(mark, pieces.outside.height + width)));
  layers.mark.push(...cross([strap.fastening, width / 2]));
  const free = strap.reaches - strap.leaves;
  // The words of the direction stand on the outside: a strap has no room for them.
  layers.direction.push(
    ...directionMark(source, [strap.reaches - ARROW / 2, width / 2], 0.6 * width, Math.PI / 2).marks,
  );
  const sums = [strap.sum, cutSum('height', width, [], `width of the ${noun}`)];
  return letteredPiece(
    source,
    {
      id: 'strap',
      name: isFlap ? 'Closure flap' : 'Closure strap',
      count: 1,
      width: length,
      height: width,
      outline,
      layers,
      sums,
    },
    [sizeLine(strap.sum, print)],
    { x: strap.leaves + 2, y: 0.25 * width, width: free - 2 - ARROW, height: 0.7 * width },
  );
}

/** What the outside shows of the strap, seen from its grain side: its sewn end, its holes and the fastening. */
export function strapMarks(source: PatternSource, strap: Strap): NamedMarks {
  const { job, pieces } = source;
  const { width, height } = pieces.outside;
  const edge = width - backEdge(source);
  const [low, high] = [height / 2 - strap.width / 2, height / 2 + strap.width / 2];
  const end = edge + strap.leaves;
  const onFront = backEdge(source) - (job.construction.strap?.reach_mm ?? 0) / pieces.growth;
  const tab = strap.tab === null ? { marks: [], words: [] } : buckleTabMarks(source, strap.tab);
  return {
    marks: [
      line([edge, low], [end, low]),
      line([end, low], [end, high]),
      line([end, high], [edge, high]),
      ...cross([onFront, height / 2]),
      ...tab.marks,
    ],
    words: [
      [named(job).noun, [end + 5, height / 2], 2.5, 0, 'mark'],
      ['fastening', [onFront, height / 2 + 5], 2.5, 0, 'mark'],
      ...tab.words,
    ],
  };
}

/** What the job's closure is called. */
function named({ construction }: PatternSource['job']): { readonly isFlap: boolean; readonly noun: string } {
  const isFlap = construction.strap?.shape === 'flap';
  return { isFlap, noun: isFlap ? 'flap' : 'strap' };
}

/** Turns a mark upside down: on the strap the outside's direction is reversed while the grain stays up. */
function turned(mark: Segment, height: number): Segment {
  const over = ([x, y]: Vec2): Vec2 => [x, height / 2 - y];
  if (mark.kind === 'arc') return { ...mark, centre: over(mark.centre) };
  return { ...mark, from: over(mark.from), to: over(mark.to) };
}

const cross = ([x, y]: Vec2): Entity[] => [line([x - 3, y], [x + 3, y]), line([x, y - 3], [x, y + 3])];
