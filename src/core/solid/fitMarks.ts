import type { CoverDesign } from '../fold/coverDesign.ts';
import type { FitDoubt } from '../fold/fitDoubt.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { addScaled, dot, heading, leftOf, subtract, type Vec2 } from '../math/vec2.ts';
import { tripleAt, type Vec3 } from '../math/vec3.ts';
import { type BoardEdge, boardEdges, boardEnds, boardTip } from './boardEdges.ts';
import type { CoverGrid } from './coverGrid.ts';
import { placeSampler } from './coverSampler.ts';
import type { EdgeBand, FitMark } from './meshData.ts';
import type { OpeningRange } from './openingRange.ts';
import type { Staging } from './staging.ts';
import { boardDirection, openingOf } from './standing.ts';

/** What the marks of one pose are found on. */
export interface MarkedPose extends Staging {
  readonly grid: CoverGrid;
  /** Gaps of the cover as it is cut, with their doubt. */
  readonly gaps: FitDoubt['gaps'];
}

/** Lengths below this are not marked, mm. */
const NOTHING = 1e-6;
/** Spare wrap behind the spine below this is not marked, mm: it would print as 0.0. */
const LEAST_BOW = 0.05;
/** Leather closer to a board's face than this is not marked as off it, mm: it would print as 0.1 or less. */
const LEAST_OFF = 0.2;
/** An opening is the smallest one within this, radians. */
const AT_LEAST = 0.02;

/**
 * Dimension marks of the fit, each where it is: gap at an edge on the cover, overrun of a book that does not go in on the
 * book itself. Values are those of the fit; a fore-edge gap is the one at the opening shown, the fit's own when closed.
 */
export function fitMarks(design: CoverDesign, point: RangePoint, pose: MarkedPose): FitMark[] {
  const { range, isLoaded, jam, bookShown } = pose;
  if (!isLoaded && (range !== null || jam === null || bookShown < 1)) return [];
  const marks = range === null ? overrunMarks(design, point, pose) : gapMarks(design, point, pose, range);
  return marks.map((mark) => ({
    ...mark,
    spare: mark.value < 0 ? null : spareAt(design, mark.edge, pose.isSettled),
    isLoose: isLoose(design, pose.gaps, mark.edge),
  }));
}

type Mark = Omit<FitMark, 'isLoose' | 'spare'>;

/** Boards that sit at the spine are drawn with the spare wrap behind it, and so neither way. */
function spareAt({ job }: CoverDesign, edge: FitMark['edge'], isSettled: boolean): FitMark['spare'] {
  if (edge !== 'frontForeEdge' && edge !== 'backForeEdge') return null;
  if (isSettled) return 'asItLies';
  return job.seating === 'spine' ? null : 'pushedHome';
}

/** The checks' rule: a gap is too loose where it is more likely so than not; a fore-edge is judged by half the spare wrap. */
function isLoose({ job: { loosest } }: CoverDesign, gaps: FitDoubt['gaps'], edge: FitMark['edge']): boolean {
  const name =
    edge === 'head' || edge === 'tail' ? edge : edge === 'frontForeEdge' || edge === 'backForeEdge' ? 'foreEdge' : null;
  return name !== null && gaps[name].mean > loosest[`${name}_mm`] + NOTHING;
}

function gapMarks(design: CoverDesign, point: RangePoint, pose: MarkedPose, range: OpeningRange): Mark[] {
  const { grid, standing } = pose;
  const { book, headTail, foreEdgeSeat } = design.needs[point];
  const fit = design.fits[point];
  const place = placeSampler(grid, 'inner');
  const { tail, head } = boardEnds(design, point);
  const marks = boardEdges(design, point, standing, 0).map((boardEdge): Mark => {
    const { edge, side } = boardEdge;
    const half = side === 1 ? standing.front : standing.back;
    const onPattern = (inward: number): number => standing.front.length - side * (half.toTip - inward);
    if (edge === 'head' || edge === 'tail') {
      const [end, way] = edge === 'head' ? [head, 1] : [tail, -1];
      const leather = (along: number, by: number) => place(onPattern(along), end + way * by);
      return edgeMark(boardEdge, fit[edge], { leather, reach: headTail.needed + fit[edge], isSewn: true });
    }
    // Closed and taut, the fit's own figure: the drawn one differs by the hundredths that thinned layers cost.
    const isFit = !fit.closes || (!pose.isSettled && openingOf(standing) <= range.least);
    const value = isFit ? fit.foreEdge[side === 1 ? 'front' : 'back'] : half.gap;
    const leather = (along: number, by: number) => place(onPattern(-by), tail + along);
    return edgeMark(boardEdge, value, { leather, reach: half.toSeam - half.toTip, isSewn: foreEdgeSeat !== null });
  });

  const { front } = standing;
  // A cover that does not close pulls on its seats: what its leather is stretched by there is not to spare.
  const bowed = fit.closes ? standing.bowed : Math.min(standing.bowed, standing.spare);
  if (bowed > LEAST_BOW) {
    // Where it can be seen: at the end of the back.
    const end = -design.pieces.outside.height / 2;
    marks.push({
      edge: 'spine',
      value: bowed,
      from: [-book.rise, 0, end],
      to: [front.middle, 0, end],
      out: [0, 0, -1],
      band: null,
    });
  }
  const isClosed = openingOf(standing) < range.least + AT_LEAST;
  // Over a rounded back that lies open, leather bridges from board to back, spare or not.
  if (pose.isSettled && isClosed)
    for (const [edge, side] of [
      ['frontBoard', 1],
      ['backBoard', -1],
    ] as const) {
      const off = offBoard(design, point, pose, side);
      if (off.value >= LEAST_OFF) marks.push({ edge, ...off, band: null });
    }
  if (!fit.closes && isClosed) {
    const at = (side: 1 | -1): Vec3 => spatial(boardTip(design, point, standing, side, 0), 0);
    marks.push({ edge: 'gape', value: fit.gape, from: at(1), to: at(-1), out: [1, 0, 0], band: null });
  }
  return marks;
}

/** Rungs of a band, closer together at its ends, where the leather bends round the corner of the board. */
const RUNGS = 48;
/** How far a band goes beyond its first and last line, so that they are drawn in full, mm. */
const ROOM = 1.5;
/** Points of a rung over the seat, on which the leather bends. */
const SEAT_STEPS = 8;

/**
 * A mark in the middle of an edge: the gap in the plane of the board, the seat on the leather beyond.
 * @param seat the leather's face at a place along the edge and so far beyond it; how far it reaches, to the seam where the
 *   end is sewn, mm. Null on a book that is not in its cover
 */
function edgeMark(
  { edge, length, span, board, out, at }: BoardEdge,
  value: number,
  seat: { leather(along: number, by: number): Vec3; readonly reach: number; readonly isSewn: boolean } | null,
): Mark {
  const [low, high] = [Math.min(0, value), Math.max(0, value)];
  const onBoard = [low - ROOM, low, ...(high - low < NOTHING ? [] : [high])];
  const steps = Array.from(
    { length: SEAT_STEPS },
    (_, k) => high + (((seat?.reach ?? 0) - high) * (k + 1)) / SEAT_STEPS,
  );
  const onLeather = seat ? [...steps, seat.reach + ROOM] : [];
  const bare = seat ? [] : [high + ROOM];
  const rungs = Array.from({ length: RUNGS + 1 }, (_, k) => {
    const along = (length * (1 - Math.cos((Math.PI * k) / RUNGS))) / 2;
    return [...[...onBoard, ...bare].map((by) => at(along, by)), ...onLeather.map((by) => seat!.leather(along, by))];
  });
  const band: EdgeBand = {
    across: [...onBoard, ...bare, ...onLeather],
    seam: seat?.isSewn ? seat.reach : null,
    rungs,
    span,
    board,
  };
  return { edge, value, from: at(length / 2, 0), to: at(length / 2, value), out, band };
}

/** Where the leather stands farthest off the outer face of a board, seen at the tail. */
function offBoard(
  design: CoverDesign,
  point: RangePoint,
  { grid: { inner }, standing }: MarkedPose,
  side: 1 | -1,
): Pick<Mark, 'value' | 'from' | 'to' | 'out'> {
  const { width } = design.needs[point].book;
  const along = heading(boardDirection(design, point, standing, side === 1 ? 'front' : 'back'));
  const out = addScaled([0, 0], leftOf(along), side);
  const tip = boardTip(design, point, standing, side, 0);
  const middle = inner.rows >> 1;
  let [value, at] = [0, tip];
  for (let i = 0; i < inner.columns; i++) {
    const [x, y] = tripleAt(inner.points, i * inner.rows + middle);
    const from = subtract([x, y], tip);
    const height = dot(from, out);
    if (height > value && dot(from, along) < 0 && dot(from, along) > -width) [value, at] = [height, [x, y]];
  }
  const end = -design.pieces.outside.height / 2;
  return { value, from: spatial(addScaled(at, out, -value), end), to: spatial(at, end), out: [0, 0, -1] };
}

const spatial = ([x, y]: Vec2, z: number): Vec3 => [x, y, z];

/** Overruns on the boards of a book that does not go in, on the face that looks out from the open book. */
function overrunMarks(design: CoverDesign, point: RangePoint, { standing }: MarkedPose): Mark[] {
  const { book } = design.needs[point];
  const { foreEdge, ...fit } = design.fits[point];
  const values = { ...fit, frontForeEdge: foreEdge.front, backForeEdge: foreEdge.back };
  return boardEdges(design, point, standing, book.board).map((edge) => edgeMark(edge, values[edge.edge], null));
}
