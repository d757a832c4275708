import { jointSlide } from '../book/bookOutline.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { FitDoubt } from '../fold/fitDoubt.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { addScaled, dot, heading, leftOf, subtract, type Vec2 } from '../math/vec2.ts';
import { combine3, tripleAt, type Vec3 } from '../math/vec3.ts';
import type { CoverGrid } from './coverGrid.ts';
import { type CoverPlace, coverSampler } from './coverSampler.ts';
import type { FitMark } from './meshData.ts';
import type { OpeningRange } from './openingRange.ts';
import type { Staging } from './staging.ts';
import type { Standing } from './standing.ts';

/** What the marks of one pose are found on. */
export interface MarkedPose {
  readonly grid: CoverGrid;
  readonly standing: Standing;
  readonly stage: Staging;
  /** Null where the boards do not go in. */
  readonly range: OpeningRange | null;
  /** How far the book hovers, mm. */
  readonly lift: number;
  /** Whether the leather lies as the elastic strip found it. */
  readonly isSettled: boolean;
  /** Gaps of the cover as it is cut, with their doubt. */
  readonly gaps: FitDoubt['gaps'];
}

/** Hatching lies this far off the surface, mm. */
const OFF = 0.15;
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
  if (pose.stage.letDown < 1) return [];
  const marks = pose.range === null ? overrunMarks(design, point, pose) : gapMarks(design, point, pose, pose.range);
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
  const { book, headTail } = design.needs[point];
  const fit = design.fits[point];
  const place = coverSampler(grid);
  const { height } = design.pieces.outside;
  const margin = design.job.seam.edgeMargin_mm;
  // Pattern places of the board's edges: the seat is drawn in between them and the seam.
  const tailEdge = margin + headTail.needed + fit.tail;
  const headEdge = height - margin - headTail.needed - fit.head;
  const marks: Mark[] = [];

  for (const [edge, half, way, overrun] of [
    ['frontForeEdge', standing.front, -1, fit.foreEdge.front],
    ['backForeEdge', standing.back, 1, fit.foreEdge.back],
  ] as const) {
    // Closed and taut, the fit's own figure: the drawn one differs by the hundredths that thinned layers cost.
    const value = fit.closes && (pose.isSettled || standing.opening > range.least) ? half.gap : overrun;
    const tip = standing.front.length + way * half.toTip;
    const across = (v: number) => [place(tip, v), place(tip + way * value, v)] as const;
    marks.push(mark(edge, value, across, tailEdge, headEdge));
  }

  for (const [half, way] of [
    [standing.front, -1],
    [standing.back, 1],
  ] as const) {
    const [tip, fold] = [half.toTip, half.toFoldEnd].map((reach) => standing.front.length + way * reach);
    for (const [edge, value, at, up] of [
      ['head', fit.head, headEdge, 1],
      ['tail', fit.tail, tailEdge, -1],
    ] as const) {
      const across = (s: number) => [place(s, at), place(s, at + up * value)] as const;
      marks.push(mark(edge, value, across, tip!, fold!));
    }
  }

  const { front } = standing;
  // A cover that does not close pulls on its seats: what its leather is stretched by there is not to spare.
  const bowed = fit.closes ? standing.bowed : Math.min(standing.bowed, standing.spare);
  if (bowed > LEAST_BOW) {
    // Where it can be seen: at the end of the back.
    const end = -height / 2;
    marks.push({
      edge: 'spine',
      value: bowed,
      from: [-book.rise, 0, end],
      to: [front.middle, 0, end],
      out: [0, 0, -1],
      hatch: [],
    });
  }
  const isClosed = standing.opening < range.least + AT_LEAST;
  // Over a rounded back that lies open, leather bridges from board to back, spare or not.
  if (pose.isSettled && isClosed)
    for (const [edge, side] of [
      ['frontBoard', 1],
      ['backBoard', -1],
    ] as const) {
      const off = offBoard(design, point, pose, side);
      if (off.value >= LEAST_OFF) marks.push({ edge, ...off, hatch: [] });
    }
  if (!fit.closes && isClosed) {
    const at = (side: 1 | -1): Vec3 => spatial(boardTip(design, point, standing, side, 0), 0);
    marks.push({ edge: 'gape', value: fit.gape, from: at(1), to: at(-1), out: [1, 0, 0], hatch: [] });
  }
  return marks;
}

/** Rungs of a strip: close enough that it follows the surface where a pocket begins under it. */
const RUNGS = 48;

/**
 * A mark on the cover, dimensioned in the middle of its strip.
 * @param across where the board's edge lies and where it would seat, at a place along the edge
 */
function mark(
  edge: FitMark['edge'],
  value: number,
  across: (along: number) => readonly [CoverPlace, CoverPlace],
  start: number,
  end: number,
): Mark {
  const rung = (share: number): [Vec3, Vec3] => {
    const [from, to] = across(start + share * (end - start));
    return [raised(from), raised(to)];
  };
  const [from, to] = rung(1 / 2);
  const hatch = Math.abs(value) < NOTHING ? [] : Array.from({ length: RUNGS + 1 }, (_, k) => rung(k / RUNGS));
  return { edge, value, from, to, out: across((start + end) / 2)[0].out, hatch };
}

const raised = ({ at, out }: CoverPlace): Vec3 => combine3(at, 1, out, OFF);

/** Where the leather stands farthest off the outer face of a board, seen at the tail. */
function offBoard(
  design: CoverDesign,
  point: RangePoint,
  { grid: { inner }, standing }: MarkedPose,
  side: 1 | -1,
): Pick<Mark, 'value' | 'from' | 'to' | 'out'> {
  const { width } = design.needs[point].book;
  const along = heading(side * standing.direction);
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

/** Outer edge of a board's fore-edge, moved along the board by `by`. */
function boardTip(design: CoverDesign, point: RangePoint, standing: Standing, side: 1 | -1, by: number): Vec2 {
  const { book } = design.needs[point];
  const along = heading(side * standing.direction);
  return addScaled([0, (side * book.thickness) / 2], along, book.width + jointSlide(book, standing.swing) + by);
}

const spatial = ([x, y]: Vec2, z: number): Vec3 => [x, y, z];

/** Overruns on the hovering book's boards, on the face that looks out from the open book. */
function overrunMarks(design: CoverDesign, point: RangePoint, { standing, lift }: MarkedPose): Mark[] {
  const { book } = design.needs[point];
  const fit = design.fits[point];
  const { direction } = standing;
  const up = (side: 1 | -1): Vec3 => [Math.sin(direction), -side * Math.cos(direction), 0];
  const on = (side: 1 | -1, by: number, z: number): Vec3 => {
    const [x, y] = boardTip(design, point, standing, side, by);
    const n = up(side);
    const rise = book.board + OFF;
    return [x + lift + rise * n[0], y + rise * n[1], z];
  };
  const marks: Mark[] = [];
  const half = book.height / 2;
  for (const [edge, value, side] of [
    ['frontForeEdge', fit.foreEdge.front, 1],
    ['backForeEdge', fit.foreEdge.back, -1],
  ] as const) {
    const rung = (at: number): [Vec3, Vec3] => [on(side, 0, at), on(side, value, at)];
    marks.push({
      edge,
      value,
      from: on(side, 0, 0),
      to: on(side, value, 0),
      out: up(side),
      hatch: Math.abs(value) < NOTHING ? [] : [rung(-half), rung(half)],
    });
  }
  for (const [edge, value, z, way] of [
    ['head', fit.head, half, 1],
    ['tail', fit.tail, -half, -1],
  ] as const) {
    const [near, far] = [-book.width / 4, -book.width / 2];
    const rung = (by: number): [Vec3, Vec3] => [on(1, by, z), on(1, by, z + way * value)];
    const [from, to] = rung(near);
    marks.push({
      edge,
      value,
      from,
      to,
      out: up(1),
      hatch: Math.abs(value) < NOTHING ? [] : [rung(0), rung(far)],
    });
  }
  return marks;
}
