import type { CoverDesign } from '../../fold/coverDesign.ts';
import { changeOf } from '../../leather/changeOf.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { convexChain } from '../../math/convexChain.ts';
import { findLevel } from '../../math/findLevel.ts';
import { remembered } from '../../math/remembered.ts';
import { addScaled, dot, subtract, type Vec2 } from '../../math/vec2.ts';
import { turnAxis } from '../../pattern/seam.ts';
import { type Strap, strapOf } from '../../pattern/strap.ts';
import { openingRange } from '../openingRange.ts';
import { standingAt } from '../standing.ts';
import { type BentPath, bentLength, bentTurn, bentUpTo, pathOverPegs } from './bentPath.ts';
import { type FasteningShape, fasteningShape } from './fasteningShape.ts';
import { alongLine, lineAt, lineOfHalves, type SectionLine, type SectionPlace } from './sectionLine.ts';

/** A strap or flap as it is made: lengths of the finished piece, along it from its sewn end, mm. */
export interface Closure {
  readonly strap: Strap;
  readonly thickness: number;
  readonly neutral: number;
  readonly length: number;
  readonly anchor: number;
  /** From its sewn end to its fastening, and from there to its free end. */
  readonly fastening: number;
  readonly end: number;
  /** Front and back edge of the finished cover on the pattern of the outside. */
  readonly edges: readonly [front: number, back: number];
  readonly shape: FasteningShape;
  /** Pocket between the cut edges at each fore-edge, 0 where the end is turned. */
  readonly pocket: number;
  /** Where the fastening is set on the front, mm from its edge: where the strap of the closed cover has it. */
  readonly reach: number;
  /** Angle between the fastened strap at its fastening and the front under it, radians. */
  readonly slope: number;
  /** Bends of the fastened strap, as stretches of its length. */
  readonly bends: readonly { readonly from: number; readonly to: number; readonly turn: number }[];
}

/** What is laid face to face is drawn this far apart, mm: less than it counts as touching, so that neither shows through. */
const APART = 0.05;

/** Radius of the neutral line about a peg. The pattern takes the edges as sharp. */
const neutralRadius = ({ neutral, thickness }: Closure): number => APART + neutral * thickness;

/** The closure of a finished cover, null where it has none; worked out once for every design. */
export const closureOf = remembered(makeClosure);

function makeClosure(design: CoverDesign, point: RangePoint): Closure | null {
  const { job, pieces, needs } = design;
  const strap = strapOf(design);
  const wanted = job.construction.strap;
  if (strap === null || wanted === null) return null;
  const { thickness, neutral } = needs[point].leathers.outside;
  const turned = pieces.pocket.count === 0 ? turnAxis(design) : 0;
  const length = (strap.sum.total * (1 + changeOf(job).across)) / pieces.growth;
  const flat: Closure = {
    strap,
    thickness,
    neutral,
    length,
    anchor: strap.leaves,
    fastening: length - wanted.end_mm,
    end: wanted.end_mm,
    edges: [turned, pieces.outside.width - turned],
    shape: fasteningShape(wanted),
    pocket: turned > 0 ? 0 : needs[point].leathers.pocket.thickness,
    reach: wanted.reach_mm,
    slope: 0,
    bends: [],
  };
  const range = openingRange(design, point);
  if (range === null) return flat;
  const { front, back } = standingAt(design, point, range.least);
  const line = lineOfHalves(front, back);
  const closed = { ...flat, reach: fastenedReach(flat, line) };
  const path = tautPath(closed, line, closed.reach);
  const [wayX, wayY] = alongLine(frontPlace(closed, line, closed.reach));
  const lean = Math.atan2(wayY, wayX) - path.heading - bentTurn(path);
  const slope = Math.atan2(Math.sin(lean), Math.cos(lean));
  let from = 0;
  const bends = path.pieces.flatMap(({ length: along, turn }) => {
    from += along;
    return turn > 0 ? [{ from: from - along, to: from, turn }] : [];
  });
  return { ...closed, slope, bends };
}

/** Reach on the front at which the strap, drawn taut, has its fastening over that of the front, mm from the front edge. */
const fastenedReach = (closure: Closure, line: SectionLine): number =>
  findLevel(
    (reach) => bentLength(tautPath(closure, line, reach)) - closure.shape.beyond,
    closure.fastening,
    closure.shape.before + 1,
    Math.max(closure.shape.before + 2, (closure.edges[1] - closure.edges[0]) / 2 - closure.shape.beyond),
  );

/** Neutral line of a strap that is drawn taut over back, edges and front, up to its fastening `reach` mm from the front edge. */
function tautPath(closure: Closure, line: SectionLine, reach: number): BentPath {
  const { edges, shape } = closure;
  const foot = frontPlace(closure, line, reach);
  const way = alongLine(foot);
  // What the end lies over beyond the fastening, as the step to a lining, lifts the strap too.
  const over = line.filter(({ s, lift }) => lift < 1 && s >= edges[0] + reach && s < edges[0] + reach + closure.end);
  const lifted = Math.max(shape.height, ...over.map(({ grain }) => dot(subtract(grain, foot.grain), foot.out)));
  const shoulder = (by: number): Vec2 => addScaled(addScaled(foot.grain, foot.out, lifted), way, by);
  const front = line.filter(({ s, lift }) => lift < 1 && s < edges[0] + reach);
  const pegs = [
    ...backPegs(closure, line),
    ...stackPegs(closure, line),
    ...front.map(({ grain }) => grain),
    shoulder(-shape.before),
    shoulder(shape.beyond),
  ];
  return overPegs(closure, pegs);
}

const overPegs = (closure: Closure, pegs: readonly Vec2[]): BentPath =>
  pathOverPegs(
    convexChain(pegs).map((i) => pegs[i]!),
    neutralRadius(closure),
  );

/** The back's grain side from the sewn end to the fold of a turned end, or to its cut edge. */
function backPegs({ edges, anchor }: Closure, line: SectionLine): Vec2[] {
  const from = edges[1] - anchor;
  return [lineAt(line, from).grain, ...line.filter(({ s, lift }) => s > from && lift < 1).map(({ grain }) => grain)];
}

/** Corners of the layers that meet at the two cut edges. */
function stackPegs({ pocket }: Closure, line: SectionLine): Vec2[] {
  if (pocket === 0) return [];
  const corner = ({ inner, out }: SectionPlace): Vec2 => addScaled(inner, out, -pocket);
  return [corner(line.at(-1)!), corner(line[0]!)];
}

/** Where a fastening `reach` mm from the front edge stands: on what is highest under it. */
export function frontPlace({ edges, shape }: Closure, line: SectionLine, reach: number): SectionPlace {
  const middle = edges[0] + reach;
  const place = lineAt(line, middle);
  const [from, to] = [middle - shape.radius, middle + shape.radius];
  const under = [lineAt(line, from), ...line.filter(({ s }) => s > from && s < to), lineAt(line, to)];
  const rise = Math.max(0, ...under.map(({ grain }) => dot(subtract(grain, place.grain), place.out)));
  return { ...place, grain: addScaled(place.grain, place.out, rise) };
}

/** The strap as it lies, and how far from the front edge its fastening stands on the front. */
export interface ClosureLie {
  readonly path: BentPath;
  readonly reach: number;
}

/**
 * The strap on a cover: on the back, then free, or round the closed fore-edge as far as it is fastened.
 *
 * A strap that is let go unrolls: it lies taut up to where it has turned its share, and goes on straight from there. Free
 * it goes on in the plane of the back, raised from the bench by what is set in it.
 * @param fastened 0 free to 1 on its fastening
 * @param benchTurn turn that brings the section to the bench, radians
 */
export function closureLie(closure: Closure, line: SectionLine, fastened: number, benchTurn: number): ClosureLie {
  const onBack = overPegs(closure, backPegs(closure, line));
  const edge = bentLength(onBack);
  const { low } = closure.shape;
  const raised = low > 0 ? Math.asin(Math.min(0.5, low / Math.max(1, closure.fastening - edge))) : 0;
  const tilt = onBack.heading + bentTurn(onBack) + benchTurn;
  const free = bentTurn(onBack) + raised + Math.max(0, -Math.atan2(Math.sin(tilt), Math.cos(tilt)));
  if (fastened === 0) {
    const turn = free - bentTurn(onBack);
    const bend = { length: turn * neutralRadius(closure), turn };
    return { path: { ...onBack, pieces: [...onBack.pieces, bend] }, reach: closure.reach };
  }
  const reach = closure.reach + (fastenedReach(closure, line) - closure.reach) * fastened;
  const taut = tautPath(closure, line, reach);
  const whole = bentTurn(taut);
  return { path: bentUpTo(taut, Math.min(whole, free + (whole - free) * fastened)), reach };
}
