import { jointSlide } from '../../book/bookOutline.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { addScaled, heading, type Vec2 } from '../../math/vec2.ts';
import type { CoverDesign } from '../coverDesign.ts';
import type { CoverGrid } from './coverGrid.ts';
import { type CoverPlace, coverSampler } from './coverSampler.ts';
import type { FitMark } from './meshData.ts';
import type { OpeningRange } from './openingRange.ts';
import type { Staging } from './staging.ts';
import type { Standing } from './standing.ts';
import type { Vec3 } from './vec3.ts';

/** What the marks of one pose are found on. */
export interface MarkedPose {
  readonly grid: CoverGrid;
  readonly standing: Standing;
  readonly stage: Staging;
  /** Null where the boards do not go in. */
  readonly range: OpeningRange | null;
  /** How far the book hovers, mm. */
  readonly lift: number;
}

/** Hatching lies this far off the surface, mm. */
const OFF = 0.15;
/** Lengths below this are not marked, mm. */
const NOTHING = 1e-6;
/** An opening is the smallest one within this, radians. */
const AT_LEAST = 0.02;

/**
 * Dimension marks of the fit, each where it is: gap at an edge on the cover, overrun of a book that does not go in on the
 * book itself. Values are those of the fit; a fore-edge gap is the one at the opening shown, the fit's own when closed.
 */
export function fitMarks(design: CoverDesign, point: RangePoint, pose: MarkedPose): FitMark[] {
  if (pose.stage.letDown < 1) return [];
  return pose.range === null ? overrunMarks(design, point, pose) : gapMarks(design, point, pose, pose.range);
}

function gapMarks(design: CoverDesign, point: RangePoint, pose: MarkedPose, range: OpeningRange): FitMark[] {
  const { grid, standing } = pose;
  const { book, headTail } = design.needs[point];
  const fit = design.fits[point];
  const place = coverSampler(grid);
  const { height } = design.pieces.outside;
  const margin = design.job.seam.edgeMargin_mm;
  // Pattern places of the board's edges: the seat is drawn in between them and the seam.
  const tailEdge = margin + headTail.needed + fit.tail;
  const headEdge = height - margin - headTail.needed - fit.head;
  const marks: FitMark[] = [];

  for (const [edge, half, way, overrun] of [
    ['frontForeEdge', standing.front, -1, fit.foreEdge.front],
    ['backForeEdge', standing.back, 1, fit.foreEdge.back],
  ] as const) {
    // Closed, the fit's own figure: the drawn one differs by the hundredths that thinned layers cost.
    const value = fit.closes && standing.opening > range.least ? half.gap : overrun;
    const tip = standing.front.length + way * half.toTip;
    const to = tip + way * value;
    const middle = (tailEdge + headEdge) / 2;
    const from = place(tip, middle);
    marks.push({
      edge,
      value,
      from: raised(from),
      to: raised(place(to, middle)),
      standOff: from.out,
      hatch: strip(place, value, tip, to, tailEdge, headEdge),
    });
  }

  const { front } = standing;
  const [tip, fold] = [front.length - front.toTip, front.length - front.toFoldEnd];
  for (const [edge, value, at, way] of [
    ['head', fit.head, headEdge, 1],
    ['tail', fit.tail, tailEdge, -1],
  ] as const) {
    const from = place((tip + fold) / 2, at);
    marks.push({
      edge,
      value,
      from: raised(from),
      to: raised(place((tip + fold) / 2, at + way * value)),
      standOff: from.out,
      hatch: strip(place, value, tip, fold, at, at + way * value),
    });
  }

  if (standing.bowed > NOTHING)
    marks.push({
      edge: 'spine',
      value: standing.bowed,
      from: [-book.rise, 0, 0],
      to: [front.middle, 0, 0],
      standOff: [0, 0, 1],
      hatch: [],
    });
  if (!fit.closes && standing.opening < range.least + AT_LEAST) {
    const at = (side: 1 | -1): Vec3 => spatial(boardTip(design, point, standing, side, 0), 0);
    marks.push({ edge: 'gape', value: fit.gape, from: at(1), to: at(-1), standOff: [1, 0, 0], hatch: [] });
  }
  return marks;
}

const raised = ({ at, out }: CoverPlace): Vec3 => [at[0] + OFF * out[0], at[1] + OFF * out[1], at[2] + OFF * out[2]];

function strip(
  place: (s: number, v: number) => CoverPlace,
  value: number,
  s0: number,
  s1: number,
  v0: number,
  v1: number,
): Vec3[] {
  if (Math.abs(value) < NOTHING) return [];
  return (
    [
      [s0, v0],
      [s1, v0],
      [s1, v1],
      [s0, v1],
    ] as const
  ).map(([s, v]) => raised(place(s, v)));
}

/** Outer edge of a board's fore-edge, moved along the board by `by`. */
function boardTip(design: CoverDesign, point: RangePoint, standing: Standing, side: 1 | -1, by: number): Vec2 {
  const { book } = design.needs[point];
  const along = heading(side * standing.direction);
  return addScaled([0, (side * book.thickness) / 2], along, book.width + jointSlide(book, standing.swing) + by);
}

const spatial = ([x, y]: Vec2, z: number): Vec3 => [x, y, z];

/** Overruns on the hovering book's boards, on the face that looks out from the open book. */
function overrunMarks(design: CoverDesign, point: RangePoint, { standing, lift }: MarkedPose): FitMark[] {
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
  const marks: FitMark[] = [];
  const half = book.height / 2;
  for (const [edge, value, side] of [
    ['frontForeEdge', fit.foreEdge.front, 1],
    ['backForeEdge', fit.foreEdge.back, -1],
  ] as const) {
    const hatch = [on(side, 0, -half), on(side, value, -half), on(side, value, half), on(side, 0, half)];
    marks.push({
      edge,
      value,
      from: on(side, 0, 0),
      to: on(side, value, 0),
      standOff: up(side),
      hatch: Math.abs(value) < NOTHING ? [] : hatch,
    });
  }
  for (const [edge, value, z, way] of [
    ['head', fit.head, half, 1],
    ['tail', fit.tail, -half, -1],
  ] as const) {
    const [near, far] = [-book.width / 4, -book.width / 2];
    const hatch = [on(1, 0, z), on(1, far, z), on(1, far, z + way * value), on(1, 0, z + way * value)];
    marks.push({
      edge,
      value,
      from: on(1, near, z),
      to: on(1, near, z + way * value),
      standOff: up(1),
      hatch: Math.abs(value) < NOTHING ? [] : hatch,
    });
  }
  return marks;
}
