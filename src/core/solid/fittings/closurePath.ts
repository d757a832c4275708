import type { CoverDesign } from '../../fold/coverDesign.ts';
import { changeOf, leastChange } from '../../leather/changeOf.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { convexChain } from '../../math/convexChain.ts';
import { findLevel } from '../../math/findLevel.ts';
import { remembered } from '../../math/remembered.ts';
import { TOLERANCE } from '../../math/tolerance.ts';
import { addScaled, dot, heading, leftOf, subtract, type Vec2 } from '../../math/vec2.ts';
import { turnAxis } from '../../pattern/seam.ts';
import { type Strap, strapOf } from '../../pattern/strap.ts';
import { openingRange } from '../openingRange.ts';
import { standingAt } from '../standing.ts';
import { type BentPath, type BentPlace, bentLength, bentPlaces, bentTurn, bentUpTo, pathOverPegs } from './bentPath.ts';
import { barHeight, roundOfTab, type TabLie, tabLie } from './buckleTabMesh.ts';
import { type FasteningShape, fasteningShape } from './fasteningShape.ts';
import { alongLine, lineAt, lineOfHalves, type SectionLine, type SectionPlace } from './sectionLine.ts';
import { strandPegs } from './strandPegs.ts';

/** A strap or flap as it is made: lengths of the finished piece, along it from its sewn end, mm. */
export interface Closure {
  readonly strap: Strap;
  readonly thickness: number;
  readonly neutral: number;
  readonly length: number;
  readonly anchor: number;
  /** Seam of the cover along both fore-edges, under the strap: its margin, and what stands there, from the seam line outward. */
  readonly seam: { readonly margin: number; readonly pegs: readonly Vec2[] };
  /** From its sewn end to its fastening, and from there to its free end. */
  readonly fastening: number;
  readonly end: number;
  /** Front and back edge of the finished cover on the pattern of the outside. */
  readonly edges: readonly [front: number, back: number];
  readonly shape: FasteningShape;
  /** What holds a buckle on the front. */
  readonly tab: TabLie | null;
  /** Pocket between the cut edges at each fore-edge, 0 where the end is turned. */
  readonly pocket: number;
  /** Where the fastening is set on the front, mm from its edge: where the strap of the closed cover has it. */
  readonly reach: number;
  /** Angle between the fastened strap at its fastening and the front under it, radians. */
  readonly slope: number;
  /** Height of the fastened strap's grain side over the front, where it is highest under the fastening's head, mm. */
  readonly top: number;
  /** Bends of the fastened strap, as stretches of its length. */
  readonly bends: readonly { readonly from: number; readonly to: number; readonly turn: number }[];
}

/** What is laid face to face is drawn this far apart, mm: less than it counts as touching, so that neither shows through. */
const APART = 0.05;

/** How much farther than its end a strap is kept off what it lies over, mm: lifted, it reaches a little farther. */
const BEYOND = 2;

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
  const length = (strap.sum.total * (1 + changeOf(job).width)) / pieces.growth;
  const tab = strap.tab && tabLie(strap.tab, strap.tab.sum.total * (1 + leastChange(job)), thickness, neutral);
  const flat: Closure = {
    strap,
    thickness,
    neutral,
    length,
    anchor: strap.leaves,
    seam: { margin: job.seam.edgeMargin_mm, pegs: strandPegs(design, point) },
    fastening: length - wanted.end_mm,
    end: wanted.end_mm,
    edges: [turned, pieces.outside.width - turned],
    shape: fasteningShape(wanted, tab),
    tab,
    pocket: turned > 0 ? 0 : needs[point].leathers.pocket.thickness,
    reach: wanted.reach_mm,
    slope: 0,
    top: 0,
    bends: [],
  };
  const range = openingRange(design, point);
  if (range === null) return flat;
  const { front, back } = standingAt(design, point, range.least);
  const line = lineOfHalves(front, back);
  const closed = { ...flat, reach: fastenedReach(flat, line) };
  const path = tautPath(closed, line, closed.reach);
  const foot = frontPlace(closed, line, closed.reach);
  const [wayX, wayY] = alongLine(foot);
  const lean = Math.atan2(wayY, wayX) - path.heading - bentTurn(path);
  const slope = Math.atan2(Math.sin(lean), Math.cos(lean));
  // Coming down from what stands along the edge it may lie at a slope there.
  const rim = [-closed.shape.radius, closed.shape.radius].map((by) => closed.fastening + by);
  const heights = bentPlaces(path, rim).map(({ at }) => dot(subtract(at, foot.grain), foot.out));
  const top = Math.max(...heights) + (1 - neutral) * thickness;
  let from = 0;
  const bends = path.pieces.flatMap(({ length: along, turn }) => {
    from += along;
    return turn === 0 ? [] : [{ from: from - along, to: from, turn }];
  });
  return { ...closed, slope, top, bends };
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
  const { edges, shape, tab } = closure;
  const foot = frontPlace(closure, line, reach);
  const way = alongLine(foot);
  const bar = addScaled(addScaled(foot.grain, foot.out, barHeight(closure.thickness)), way, shape.beyond);
  // What the end lies over from the fastening on, as the step to a lining or a seam near by, lifts the strap too.
  const middle = edges[0] + reach;
  const end = middle + closure.end + BEYOND;
  const onFront = line.filter((place) => place.s < end && (place.s >= middle || isOuter(place, foot)));
  const pegs = inOrder([...onFront.map(pegOf), ...seamPegs(closure, line, 0)]);
  const comes = pegs.filter(({ s }) => s < middle - shape.before);
  const over = [...pegs.slice(comes.length), pegOf(lineAt(line, end))];
  const sewn = sewnPegs(closure, line);
  const before = [...backPegs(closure, line), ...stackPegs(closure, line), ...comes.map(({ at }) => at)];
  let lifted = Math.max(shape.height, ...over.map(({ at }) => dot(subtract(at, foot.grain), foot.out)));
  for (let i = 0; ; i++) {
    const shoulder = (by: number): Vec2 => addScaled(addScaled(foot.grain, foot.out, lifted), way, by);
    const last = shoulder(shape.beyond);
    const path = overPegs(closure, sewn, [...before, shoulder(-shape.before), last]);
    // The end goes on as the strap comes to its fastening, which may be less steep than the front there.
    const right = addScaled([0, 0], leftOf(heading(path.heading + bentTurn(path))), -1);
    const overBar = tab === null ? 0 : roundOfTab(tab) - dot(subtract(last, bar), right);
    const still = Math.max(overBar, ...over.map(({ at }) => dot(subtract(at, last), right)));
    if (still < TOLERANCE.length || i === MOST_LIFTS) return path;
    lifted += still;
  }
}

/** How often the end of a strap is lifted off what it lies over: each time it rises by what was still under it. */
const MOST_LIFTS = 4;

/** Neutral line over pegs: taut as far as it is sewn down, and taut from there on. */
function overPegs(closure: Closure, sewn: readonly Vec2[], free: readonly Vec2[]): BentPath {
  const taut = (pegs: readonly Vec2[]): Vec2[] => convexChain(pegs).map((i) => pegs[i]!);
  const held = sewn.length > 1 ? taut(sewn) : sewn;
  const pegs = [...held.slice(0, -1), ...taut([...held.slice(-1), ...free])];
  return pathOverPegs(pegs, neutralRadius(closure), closure.thickness);
}

/** A place that a strap lies on, in its order along the cover's section. */
interface Peg {
  readonly s: number;
  readonly at: Vec2;
}

const pegOf = ({ s, grain }: SectionPlace): Peg => ({ s, at: grain });
const inOrder = (pegs: readonly Peg[]): Peg[] => [...pegs].sort((a, b) => a.s - b.s);

/** Thread or lace along the front edge (0) or the back edge (1). */
function seamPegs({ seam, edges }: Closure, line: SectionLine, edge: 0 | 1): Peg[] {
  const side = edge === 0 ? -1 : 1;
  const hole = lineAt(line, edges[edge] - side * seam.margin);
  const way = alongLine(hole);
  return seam.pegs.map(([x, y]): Peg => {
    return { s: hole.s + side * x, at: addScaled(addScaled(hole.grain, way, side * x), hole.out, y) };
  });
}

/** Slope at which a strap climbs to a seam of the cover that its last row of holes leaves no way to. Free choice. */
const CLIMB = 1 / 3;

/** Where the strap is free of the back, mm from the front edge: at its last row of holes; over no seam, at its sewn end. */
function freeFrom({ strap, seam, edges, anchor }: Closure): number {
  const end = edges[1] - anchor;
  const [first] = seam.pegs;
  if (first === undefined) return end;
  const climbs = edges[1] - seam.margin + first[0] - Math.abs(first[1]) / CLIMB;
  return Math.max(end, Math.min(climbs, Math.max(...strap.holes.map(({ at }) => at[0]))));
}

/** The back's grain side from the strap's end to where the strap is free: there it is sewn down. */
function sewnPegs(closure: Closure, line: SectionLine): Vec2[] {
  const [end, free] = [closure.edges[1] - closure.anchor, freeFrom(closure)];
  const onBack = line.filter(({ s }) => s > end && s < free).map(({ grain }) => grain);
  return [lineAt(line, end).grain, ...onBack, ...(free > end ? [lineAt(line, free).grain] : [])];
}

/** From there on the back's grain side and what stands on it, to the fold of a turned end, or to its cut edge. */
function backPegs(closure: Closure, line: SectionLine): Vec2[] {
  const { edges, anchor } = closure;
  const sewn = lineAt(line, edges[1] - anchor);
  const from = freeFrom(closure);
  const back = line.filter((place) => place.s > from && isOuter(place, sewn)).map(pegOf);
  return inOrder([...back, ...seamPegs(closure, line, 1).filter(({ s }) => s > from)]).map(({ at }) => at);
}

/** Whether a strap can lie on a place: not where the end of a turned cover lies on its pocket, or turns onto it. */
const isOuter = ({ lift, out }: SectionPlace, onBoard: SectionPlace): boolean =>
  lift < 1 || dot(out, onBoard.out) > -Math.SQRT1_2;

/** Turn of the back within which it counts as its plane, up to the fold of a turned end, radians. */
const IN_PLANE = 0.03;

/** As far as a free strap follows the back beyond where it is sewn: over the seam, or in the back's plane to the fold of a turned end. */
function followedPegs(closure: Closure, line: SectionLine): Vec2[] {
  const from = freeFrom(closure);
  const stand = seamPegs(closure, line, 1);
  if (stand.length > 0) {
    // Over what stands highest, and on in the back's plane.
    const { out } = lineAt(line, closure.edges[1] - closure.seam.margin);
    const top = stand.reduce((highest, peg) => (dot(subtract(peg.at, highest.at), out) > 0 ? peg : highest));
    const before = inOrder([...line.map(pegOf), ...stand]).filter(({ s }) => s > from && s <= top.s);
    return [...before.map(({ at }) => at), addScaled(top.at, leftOf(out), 1)];
  }
  if (closure.pocket > 0) return backPegs(closure, line);
  const sewn = lineAt(line, from);
  const inPlane = line.filter(
    ({ s, out }) => s > from && s < closure.edges[1] && dot(out, sewn.out) > Math.cos(IN_PLANE),
  );
  return inPlane.map(({ grain }) => grain);
}

/** Corners of the layers that meet at the two cut edges. */
function stackPegs({ pocket }: Closure, line: SectionLine): Vec2[] {
  if (pocket === 0) return [];
  const corner = ({ inner, out }: SectionPlace): Vec2 => addScaled(inner, out, -pocket);
  return [corner(line.at(-1)!), corner(line[0]!)];
}

/**
 * Where a fastening `reach` mm from the front edge stands: with both ends of its foot on the front, which may be bent between
 * them, or on what is highest there.
 */
export function frontPlace({ edges, shape }: Closure, line: SectionLine, reach: number): SectionPlace {
  const middle = edges[0] + reach;
  const [begins, ends] = shape.foot;
  const from = lineAt(line, middle + begins).grain;
  const chord = subtract(awayFrom(line, middle + begins, ends - begins), from);
  const way = addScaled([0, 0], chord, 1 / Math.hypot(...chord));
  const out = addScaled([0, 0], leftOf(way), -1);
  const at = addScaled(from, way, -begins);
  const under = lineAt(line, middle);
  const local = line
    .filter((near) => Math.abs(near.s - middle) < 3 * Math.max(...shape.foot) && isOuter(near, under))
    .map(({ grain }): Vec2 => [dot(subtract(grain, at), way), dot(subtract(grain, at), out)]);
  let rise = 0;
  local.slice(1).forEach(([toX, toY], i) => {
    const [x, y] = local[i]!;
    // As much of each stretch as is under it.
    for (const on of [x, toX, begins, ends])
      if (on >= begins && on <= ends && on >= Math.min(x, toX) && on <= Math.max(x, toX))
        rise = Math.max(rise, toX === x ? Math.max(y, toY) : y + ((toY - y) * (on - x)) / (toX - x));
  });
  return { ...under, out, grain: addScaled(at, out, rise) };
}

/** The first place on the grain side beyond `s` that is so far from the one at `s`, in a straight line. */
function awayFrom(line: SectionLine, s: number, far: number): Vec2 {
  const from = lineAt(line, s).grain;
  const away = (to: number): number => Math.hypot(...subtract(lineAt(line, to).grain, from));
  const next = line.findIndex((place) => place.s > s && away(place.s) >= far);
  if (next < 1) return lineAt(line, s + far).grain;
  return lineAt(line, findLevel(away, far, Math.max(s, line[next - 1]!.s), line[next]!.s)).grain;
}

/** Radius on which a free strap bends up by its own softness, past a board, mm. Judged by eye. */
const SOFT = 20;

/**
 * How far a board reaches beyond a strap's path, mm, where the strap, bent up by an angle at the path's end, would meet it; and
 * how far the strap has to turn down there to lie clear of it, radians.
 */
function boardBeyond(
  closure: Closure,
  path: BentPath,
  board: readonly Vec2[],
  free: number,
): { readonly past: number; readonly down: number } {
  const [{ at, heading: angle }] = bentPlaces(path, [bentLength(path)]) as [BentPlace];
  const way = heading(angle);
  const met = board
    .map((corner) => subtract(corner, at))
    .map((from): Vec2 => [dot(from, way), dot(from, leftOf(way))])
    .filter(([along, off]) => along > 0 && off < along * Math.tan(Math.min(free, 1.5)) + 2 * closure.thickness);
  const down = met.map(([along, off]) => (neutralRadius(closure) - off) / Math.max(along, SOFT));
  return { past: Math.max(0, ...met.map(([along]) => along)), down: Math.max(0, ...down) };
}

/** How a strap is held, and what is near it. */
export interface ClosureHold {
  /** 0 free to 1 on its fastening. */
  readonly fastened: number;
  /** 1 where a pocket or an end lies on the free strap, 0 where none does. */
  readonly covered: number;
  /** 0 as it is sewn on, flat on the back, 1 raised over the cover's seam. */
  readonly raised: number;
  /** Turn that brings the section to the bench, radians. */
  readonly benchTurn: number;
  /** Corners of the back board in section; empty while the book is away. */
  readonly board: readonly Vec2[];
}

/** A strap before the seam of the cover is worked: what it will lie over is there by a share. */
function raisedBy(closure: Closure, share: number): Closure {
  const { margin, pegs } = closure.seam;
  const raised = pegs.map(([x, y]): Vec2 => [x > margin ? margin + (x - margin) * share : x, y * share]);
  return { ...closure, seam: { margin, pegs: share === 0 ? [] : raised } };
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
 * it goes on in the plane of the back, raised from the bench by what is set in it. While pockets or turned ends that are not
 * folded lie on it, it goes on level, down by what stands out of its flesh side instead, and the cover stands on that.
 * A board that is not in its pocket yet may reach beyond the cover: the strap is bent up past its tip.
 */
export function closureLie(
  made: Closure,
  line: SectionLine,
  { fastened, covered, raised, benchTurn, board }: ClosureHold,
): ClosureLie {
  const closure = raised === 1 ? made : raisedBy(made, raised);
  const sewn = sewnPegs(closure, line);
  const onBack = overPegs(closure, sewn, followedPegs(closure, line));
  const followed = bentTurn(onBack);
  const room = Math.max(1, closure.fastening - bentLength(onBack));
  const { low, high, radius } = closure.shape;
  const upBy = low > 0 ? Math.asin(Math.min(0.5, low / room)) : 0;
  const downBy = high > 0 ? Math.asin(Math.min(0.5, (high + APART) / Math.max(1, room - radius))) : 0;
  const along = onBack.heading + followed + benchTurn;
  const tilt = Math.atan2(Math.sin(along), Math.cos(along));
  // What lies on it is level, also where the strap comes up a step of the back.
  const free = upBy * (1 - covered) - (downBy + Math.max(0, tilt)) * covered + Math.max(0, -tilt);
  if (fastened === 0) {
    // Bent up, by itself or where the back steps up, it goes past the tip of a board, or along a turned end and round its fold.
    const { past, down } = free > 0 ? boardBeyond(closure, onBack, board, free) : { past: 0, down: 0 };
    const ending = onBack.heading + followed + free;
    const taut = overPegs(closure, sewn, backPegs(closure, line));
    const round = free >= 0 && past === 0 ? bentUpTo(taut, Math.max(0, ending - taut.heading)) : onBack;
    const turn = ending + down - round.heading - bentTurn(round);
    const under = { length: down * neutralRadius(closure), turn: -down };
    const bend = { length: Math.abs(turn) * (neutralRadius(closure) + Math.min(SOFT, past)), turn };
    const pieces = [...round.pieces, under, { length: past, turn: 0 }, bend].filter(({ length }) => length > 0);
    return { path: { ...round, pieces }, reach: closure.reach };
  }
  const reach = closure.reach + (fastenedReach(closure, line) - closure.reach) * fastened;
  const taut = tautPath(closure, line, reach);
  const whole = bentTurn(taut);
  const from = followed + free;
  return { path: bentUpTo(taut, Math.min(whole, from + (whole - from) * fastened)), reach };
}
