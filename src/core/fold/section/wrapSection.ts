import { endNeed, type Needs } from '../../allowance/needs.ts';
import type { BookModel } from '../../book/bookModel.ts';
import type { Job } from '../../job/jobSchema.ts';
import { type LeatherModel, SKIVE_RUNOUT } from '../../leather/leatherModel.ts';
import { findLevel } from '../../math/findLevel.ts';
import { TOLERANCE } from '../../math/tolerance.ts';
import type { Pieces } from '../../pattern/pieces.ts';
import { mm } from '../../units/mm.ts';
import { type InnerPath, innerPath, type Skew } from './innerPath.ts';

/**
 * One stretch of half the cover, with everything measured on the neutral line of the outside.
 *
 * `angle` is the turn of the inner face over the stretch, `slope` the constant angle at which the neutral line closes on
 * that face where layers thin out.
 */
export interface SectionPiece {
  readonly length: number;
  readonly angle: number;
  readonly slope: number;
  /** Length on the inner face. */
  readonly faceLength: number;
  /** Length of the lining's own neutral line here. */
  readonly liningLength: number;
  /** Lining and outside thickness where the stretch begins and ends, mm. */
  readonly lining: readonly [number, number];
  readonly outside: readonly [number, number];
  /** Set where the stretch belongs to the turned end: 1 first fold, 2 second; 0 elsewhere. */
  readonly fold: 0 | 1 | 2;
}

/** Half of the section of a cover on its book, from the middle of the spine to a cut edge. */
export interface WrapSection {
  readonly opening: number;
  /** Spine to board tip; the ends are added by `halfSection`. */
  readonly pieces: readonly SectionPiece[];
  /** Neutral length from the middle to the board tip. */
  readonly toTip: number;
  /** Neutral length from the middle to where the folds over the spine are done. */
  readonly toFoldEnd: number;
  /** x of the inner face at the middle of the spine. */
  readonly middle: number;
  readonly skew: Skew | undefined;
  /** How far from the tip the cover lies on the board and leaves it from there, mm; undefined where it lies on it as far as it can. */
  readonly held: number | undefined;
  /** Spare length between the two board tips and their seats; negative where the cover is too short here. */
  readonly slack: number;
  /** Length on both sides that layers which thin out have cost, against the model's own wrap. */
  readonly slanted: number;
  /** Half length of the lining on the outside's neutral line; 0 without a lining. */
  readonly toLiningEnd: number;
}

/** Length over which a lining is thinned toward its end, mm. Common practice, no source. */
const TAPER = 8;
/** Length over which the outside comes down from the lining's edge to the board, mm. */
const LINING_RELEASE = 2;
/** Room for the turn at which the cover leaves the board, beyond the thinned end of the lining, mm. */
const TURN_ROOM = 8;
/** Thickness left at the very end of a lining, mm; a knife leaves no less. */
const LINING_EDGE = 0.1;

/** Largest turn of one arc on which a layer thins out, radians (2 degrees). */
const SPIRAL_TURN = Math.PI / 90;

type Knot = readonly [at: number, value: number];

function interpolate(knots: readonly Knot[], x: number): number {
  let next = 0;
  while (next < knots.length && knots[next]![0] <= x) next++;
  if (next === knots.length) return knots[next - 1]![1];
  if (next === 0) return knots[0]![1];
  const [x0, y0] = knots[next - 1]!;
  const [x1, y1] = knots[next]!;
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

/**
 * Section of the cover over the book at one opening.
 *
 * The neutral line runs at z = lining + K t outside the inner face: straight stretches keep their length, bends gain
 * angle z, and where a layer thins out by dz over a length l the line slants, sqrt(l^2 + dz^2).
 * @param opening radians, 0 to pi
 * @param book the book, where it is not the needs' own
 * @param settled inner face that the elastic strip has found; without it the taut path is taken
 */
export function wrapSection(
  job: Job,
  cut: Pieces,
  needs: Needs,
  opening: number,
  { book = needs.book, settled }: { readonly book?: BookModel; readonly settled?: InnerPath | undefined } = {},
): WrapSection {
  const { outside, lining } = needs.leathers;
  const turned = job.pockets.construction === 'turned';
  const pathHeld = (from: number) => settled ?? innerPath(book, opening, Math.max(2, Math.min(from, book.width - 2)));
  const ownReach = (path: InnerPath): number =>
    lining && cut.lining ? liningReach(path, lining, cut.lining.width / 2) : Number.NaN;
  let path = pathHeld(cut.pocketDepth - needs.foreEdge.seat + 2);
  const thinned = total(path) - ownReach(path) + TAPER;
  // A lining is thinned out on the board, not on the turn where the cover leaves it.
  if (path.pieces.some(({ angle }) => angle < 0) && thinned > TAPER)
    path = pathHeld(Math.max(cut.pocketDepth - needs.foreEdge.seat + 2, thinned + TURN_ROOM));
  const reach = ownReach(path);
  let sum = 0;
  const ends = path.pieces.map(({ length }) => {
    sum += length;
    return sum;
  });
  const tip = ends[ends.length - 1]!;
  const foldEnd = path.firstBeyondFold === 0 ? 0 : ends[path.firstBeyondFold - 1]!;
  const firstLine = (ends[path.firstBeyondFold] ?? tip) - foldEnd;
  const ramp = Math.min(SKIVE_RUNOUT, firstLine / 3);

  const outsideKnots: Knot[] = [
    [foldEnd, outside.foldThickness],
    [foldEnd + ramp, outside.thickness],
  ];
  // A lining that goes on beyond the board ends with the cover; one that ends on the board is thinned out there.
  const liningEnd = reach >= tip && !turned ? Number.POSITIVE_INFINITY : Math.min(reach, tip - LINING_RELEASE - 0.5);
  const liningKnots = lining ? thinning(lining, foldEnd, ramp, liningEnd) : [];
  const liningAt = (x: number): number => (liningKnots.length > 0 ? Math.max(0, interpolate(liningKnots, x)) : 0);

  const layersAt = (at: number): number => liningAt(at) + interpolate(outsideKnots, at);
  const places = [...outsideKnots, ...liningKnots].map(([at]) => at).filter((at) => at > 0 && at < tip);
  const pieces: SectionPiece[] = [];
  let x = 0;
  let toTip = 0;
  let slanted = 0;
  let toFoldEnd = 0;
  let toLiningEnd = 0;
  for (const { length, angle } of path.pieces) {
    const from = x;
    const stops = [x + length];
    for (const at of places) if (at > x + TOLERANCE.length && at < x + length - TOLERANCE.length) stops.push(at);
    // A layer that thins out on a turn runs in a spiral, which short arcs follow.
    const thins = angle !== 0 && layersAt(from) !== layersAt(from + length);
    const parts = thins ? Math.ceil(Math.abs(angle) / SPIRAL_TURN) : 1;
    for (let i = 1; i < parts; i++) stops.push(from + (length * i) / parts);
    if (stops.length > 1) stops.sort((a, b) => a - b);
    for (const stop of stops) {
      // Just inside the stretch, so that the step at a lining's end falls between two stretches.
      const l0 = liningAt(x + TOLERANCE.length);
      const l1 = liningAt(stop - TOLERANCE.length);
      const t0 = interpolate(outsideKnots, x);
      const t1 = interpolate(outsideKnots, stop);
      const run = stop - x;
      const part = stops.length > 1 ? (angle * run) / length : angle;
      const fall = l0 + outside.neutral * t0 - l1 - outside.neutral * t1;
      const offset = (l0 + l1) / 2 + (outside.neutral * (t0 + t1)) / 2;
      const bent = run + part * offset;
      const own = fall === 0 ? Math.abs(bent) : Math.hypot(bent, fall);
      pieces.push({
        length: own,
        angle: part,
        slope: fall === 0 ? 0 : Math.atan2(fall, bent),
        faceLength: run,
        liningLength: run + part * (lining?.neutralDepth ?? 0),
        lining: [l0, l1],
        outside: [t0, t1],
        fold: 0,
      });
      toTip += own;
      slanted += 2 * (own - Math.abs(bent));
      x = stop;
      if (x <= foldEnd + TOLERANCE.length) toFoldEnd = toTip;
      if (x <= liningEnd + TOLERANCE.length) toLiningEnd = toTip;
    }
    x = from + length;
  }
  const between = cut.outside.width - 2 * (endNeed(needs) + (turned ? cut.pocketDepth : 0));
  return {
    opening,
    pieces,
    toTip,
    toFoldEnd,
    middle: path.middle,
    skew: path.skew,
    held: path.held,
    slack: between - 2 * toTip,
    slanted,
    toLiningEnd,
  };
}

const total = ({ pieces }: InnerPath): number => pieces.reduce((sum, { length }) => sum + length, 0);

/** How far along the inner face a lining of this half width reaches, by its own neutral line. */
function liningReach(path: InnerPath, lining: LeatherModel, half: number): number {
  let x = 0;
  let left = half;
  for (const { length, angle } of path.pieces) {
    const own = length + angle * lining.neutralDepth;
    if (own >= left) return x + (own > 0 ? (length * left) / own : 0);
    left -= own;
    x += length;
  }
  return x;
}

function thinning(lining: LeatherModel, foldEnd: number, ramp: number, end: number): Knot[] {
  const edge = Math.min(LINING_EDGE, lining.thickness / 4);
  const full: Knot[] = [
    [foldEnd, lining.foldThickness],
    [foldEnd + ramp, lining.thickness],
  ];
  if (end === Number.POSITIVE_INFINITY) return full;
  // A lining too short to leave the folds ends in them, as thin as it is there.
  if (end <= foldEnd + ramp + TOLERANCE.length)
    return [
      [Math.max(0, end - TAPER), lining.foldThickness],
      [end, edge],
      [end + LINING_RELEASE, 0],
    ];
  const begin = end - TAPER;
  const thinned: Knot[] = [
    [end, edge],
    [end + LINING_RELEASE, 0],
  ];
  return begin > foldEnd + ramp + TOLERANCE.length
    ? [...full, [begin, lining.thickness], ...thinned]
    : [...full, ...thinned];
}

/** Steps of the search for the bow; the length left over goes to the ends, so a coarse answer does no harm. */
const BOW_TOLERANCE = 1e-4;

/**
 * The section with its slack taken up behind the spine: the back is given the rise that consumes it, as far as one can.
 * @param share share of the slack that is taken up, 0 to 1
 */
export function bowedSection(job: Job, cut: Pieces, needs: Needs, straight: WrapSection, share = 1): WrapSection {
  if (straight.slack * share <= BOW_TOLERANCE) return straight;
  const left = straight.slack * (1 - share);
  let best = straight;
  findLevel(
    (rise) => {
      const section = wrapSection(job, cut, needs, straight.opening, { book: { ...needs.book, rise: mm(rise) } });
      if (section.slack >= left && section.slack < best.slack) best = section;
      return Math.abs(section.slack - left) < BOW_TOLERANCE ? 0 : left - section.slack;
    },
    0,
    needs.book.rise,
    needs.book.thickness / 2,
  );
  return best;
}
