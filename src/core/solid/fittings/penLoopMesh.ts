import type { CoverDesign } from '../../fold/coverDesign.ts';
import { isStepTaken } from '../../job/stepTaken.ts';
import { leastChange } from '../../leather/changeOf.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { findLevel } from '../../math/findLevel.ts';
import { remembered } from '../../math/remembered.ts';
import { addScaled, dot, heading, leftOf, type Vec2 } from '../../math/vec2.ts';
import { combine3, type Vec3 } from '../../math/vec3.ts';
import { penLoopOf } from '../../pattern/penLoop.ts';
import { seamHoles } from '../../pattern/seamHoles.ts';
import type { CoverGrid } from '../coverGrid.ts';
import { coverSampler } from '../coverSampler.ts';
import { gridOf, gridSolid } from '../gridSolid.ts';
import type { MeshData } from '../meshData.ts';
import { type BentPath, bentPlaces } from './bentPath.ts';

/** Radius of the bends at the neck, on the neutral line, as a share of the loop's. Free choice. */
const NECK = 0.35;
/** Both ends together are drawn so thick in the seam, mm: they are skived there. Common practice, no source. */
const SKIVED = 0.02;
/** Over so much beyond the cut edge they reach their whole thickness, mm. */
const SKIVE = 5;
/** How far beyond the head of the cover the loop lies before it is fitted, mm. Free choice. */
const BESIDE = 25;
/** Where head or tail may curve under the ends, these have columns so near, and rows as the cover has, no nearer than this, mm. */
const FOLLOWS = 0.5;
const LEAST_APART = 0.01;
/** Between loop and pocket, mm. */
const CLEAR = 0.05;
/** Most by which a loop is bent at its neck, radians, and over how much of its skived ends, mm. */
const MOST_LEAN = 1;
const CREASE = 0.01;
/** Turn of a facet, radians (7 degrees). */
const FACET = (7 * Math.PI) / 180;

/**
 * Neutral line of a loop from its neck round to its neck, x away from the cover's edge, y out of the front.
 *
 * Two bends of radius q at the neck turn the halves away from each other by b, and the loop of radius R closes them:
 * cos b = (q + h) / (q + R), h half the way between the two at the neck, and 2 (q b + R (pi / 2 + b)) is its length.
 */
export function loopPath(length: number, gap: number): BentPath {
  const round = length / (2 * Math.PI);
  const neck = NECK * round;
  const away = (radius: number): number => Math.acos(Math.min(1, (neck + gap / 2) / (neck + radius)));
  const half = (radius: number): number => neck * away(radius) + radius * (Math.PI / 2 + away(radius));
  const radius = findLevel(half, length / 2, 0.1 * round, round);
  const turn = away(radius);
  return {
    start: [0, -gap / 2],
    heading: 0,
    pieces: [
      { length: neck * turn, turn: -turn },
      { length: radius * (Math.PI + 2 * turn), turn: Math.PI + 2 * turn },
      { length: neck * turn, turn: -turn },
    ],
  };
}

const loopOf = remembered((design: CoverDesign) => penLoopOf(design, seamHoles(design)));

/**
 * The pen loop: both ends between outside and pocket of the front fore-edge, the loop standing out from it; null where the
 * cover has none.
 *
 * The ends lie on what is there when fittings are put on: the outside, or a lining that is laid in before. They follow it where
 * it curves toward head or tail.
 * @param away 1 beside the cover, 0 in its seam
 * @param bench direction up from it, and its height along that, mm
 */
export function penLoopMesh(
  design: CoverDesign,
  point: RangePoint,
  grid: CoverGrid,
  away: number,
  bench: { readonly up: Vec2; readonly level: number },
): MeshData | null {
  const loop = loopOf(design);
  if (loop === null) return null;
  const { thickness, neutral } = design.needs[point].leathers.outside;
  const length = loop.sum.total * (1 + leastChange(design.job));
  const end = 2 * design.job.seam.edgeMargin_mm;
  const path = loopPath(length - 2 * end, SKIVED);
  const isLaidOver = !isStepTaken(design.job, 'line');
  const place = coverSampler(grid, isLaidOver ? 'flesh' : 'inner');
  const edge = place(0, loop.middle);
  // In the section: away from the edge, and out of the front.
  const x: Vec2 = [-edge.alongS[0], -edge.alongS[1]];
  const y: Vec2 = [edge.out[0], edge.out[1]];
  const aside = away * (grid.rows.height - loop.middle + BESIDE + loop.width / 2);
  // A loop that would reach below the bench is bent up at its neck, where its ends are thin; else the cover stands on it.
  const [, round] = path.pieces;
  const radius = round!.length / round!.turn + (1 - neutral) * thickness;
  const toMiddle =
    bentPlaces(path, [path.pieces[0]!.length + round!.length / 2])[0]!.at[0] - round!.length / round!.turn;
  const height = dot([edge.at[0], edge.at[1]], bench.up) - bench.level;
  const lean = findLevel((turn) => height + toMiddle * dot(rotated(x, y, -turn), bench.up), radius, 0, MOST_LEAN);
  const above = design.needs[point].leathers.pocket.thickness + (isLaidOver ? grid.columns[0]!.lining : 0);
  const clear = mostLean(toMiddle, radius, above);
  const leant = height + toMiddle * dot(x, bench.up) >= radius ? 0 : -Math.min(lean, clear);
  const whole: BentPath = {
    start: [-end, path.start[1]],
    heading: 0,
    pieces: [
      { length: end - CREASE, turn: 0 },
      { length: CREASE, turn: leant },
      ...path.pieces,
      { length: CREASE, turn: -leant },
      { length: end - CREASE, turn: 0 },
    ],
  };
  const rows = rowsOf(grid, loop.middle - loop.width / 2, loop.middle + loop.width / 2);
  const stops = columnsOf(whole, length, end, rows.length > 2 ? FOLLOWS : end);
  const outer = gridOf(stops.length, rows.length);
  const inner = gridOf(stops.length, rows.length);
  const normals = new Float64Array(3 * rows.length * stops.length);
  const uvs = new Float64Array(2 * rows.length * stops.length);
  bentPlaces(whole, stops).forEach(({ at, heading: angle }, i) => {
    const right = addScaled([0, 0], leftOf(heading(angle)), -1);
    const fromEdge = Math.min(stops[i]!, length - stops[i]!) - end;
    const share = Math.max(0, Math.min(1, fromEdge / SKIVE));
    const thick = SKIVED / 2 + (thickness - SKIVED / 2) * share;
    const inSeam = Math.max(0, -fromEdge);
    rows.forEach((v, j) => {
      const k = i * rows.length + j;
      const under = place(inSeam, v);
      const up: Vec3 = inSeam > 0 ? under.out : [...y, 0];
      const section: Vec3 = [...addScaled([under.at[0], under.at[1]], x, at[0] + inSeam), under.at[2] + aside];
      const normal = combine3([...x, 0], right[0], up, right[1]);
      const middle = combine3(section, 1, up, at[1]);
      outer.points.set(combine3(middle, 1, normal, (1 - neutral) * thick), 3 * k);
      inner.points.set(combine3(middle, 1, normal, -neutral * thick), 3 * k);
      normals.set(normal, 3 * k);
      uvs.set([stops[i]!, v - rows[0]!], 2 * k);
    });
  });
  return gridSolid({
    part: 'penLoop',
    outer,
    inner,
    normals,
    uvs,
    faces: { outer: 'grain', inner: 'flesh', edge: 'cutEdge' },
  });
}

/**
 * How far a loop can be bent up before it meets the cut edges of the layers on its ends, radians: its round of radius R about a
 * middle d off the edge, turned by a, is as far from their corner, t up the edge, as d^2 + t^2 - 2 d t sin a, or touches below it.
 */
function mostLean(toMiddle: number, radius: number, layers: number): number {
  const free = toMiddle ** 2 - (radius + CLEAR) ** 2;
  if (free <= 0) return 0;
  const up = Math.min(layers, Math.sqrt(free));
  return Math.asin(Math.min(1, (free + up ** 2) / (2 * toMiddle * up)));
}

/** The direction x turned toward y. */
const rotated = (x: Vec2, y: Vec2, by: number): Vec2 => [
  x[0] * Math.cos(by) + y[0] * Math.sin(by),
  x[1] * Math.cos(by) + y[1] * Math.sin(by),
];

/** Heights on the pattern of the rows across the loop: its edges, and more where the cover may curve under it. */
function rowsOf({ rows: { height, near } }: CoverGrid, low: number, high: number): number[] {
  const curved = [...near, ...near.map((fromHead) => height - fromHead)];
  return [low, ...curved.filter((v) => v > low + LEAST_APART && v < high - LEAST_APART).sort((a, b) => a - b), high];
}

/**
 * Columns along the loop, mm: ends, bends, and where the skived ends have their whole thickness.
 * @param apart how near columns are on the ends
 */
function columnsOf({ pieces }: BentPath, length: number, end: number, apart: number): number[] {
  const stops = [end + SKIVE / 2, end + SKIVE, length - end - SKIVE, length - end - SKIVE / 2];
  for (let at = 0; at < end - CREASE; at += apart) stops.push(at, length - at);
  let from = 0;
  for (const piece of pieces) {
    const count = Math.max(1, Math.ceil(Math.abs(piece.turn) / FACET));
    for (let i = 1; i <= count; i++) stops.push(from + (piece.length * i) / count);
    from += piece.length;
  }
  stops[stops.length - 1] = length;
  return stops.sort((a, b) => a - b).filter((at, i, all) => i === 0 || at - all[i - 1]! > 1e-6);
}
