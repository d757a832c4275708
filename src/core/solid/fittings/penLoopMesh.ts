import type { CoverDesign } from '../../fold/coverDesign.ts';
import { changeOf } from '../../leather/changeOf.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { findLevel } from '../../math/findLevel.ts';
import { remembered } from '../../math/remembered.ts';
import { addScaled, dot, heading, leftOf, type Vec2 } from '../../math/vec2.ts';
import { penLoopOf } from '../../pattern/penLoop.ts';
import { seamHoles } from '../../pattern/seamHoles.ts';
import type { CoverPlace } from '../coverSampler.ts';
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
 * @param place of the pattern on the inner face of the outside
 * @param away 1 beside the cover, 0 in its seam
 * @param bench direction up from it, and its height along that, mm
 */
export function penLoopMesh(
  design: CoverDesign,
  point: RangePoint,
  place: (s: number, v: number) => CoverPlace,
  away: number,
  bench: { readonly up: Vec2; readonly level: number },
): MeshData | null {
  const loop = loopOf(design);
  if (loop === null) return null;
  const { thickness, neutral } = design.needs[point].leathers.outside;
  const { along, across } = changeOf(design.job);
  const length = loop.sum.total * (1 + Math.min(along, across));
  const end = 2 * design.job.seam.edgeMargin_mm;
  const path = loopPath(length - 2 * end, SKIVED);
  const edge = place(0, loop.middle);
  // In the section: away from the edge, and out of the front.
  const x: Vec2 = [-edge.alongS[0], -edge.alongS[1]];
  const y: Vec2 = [edge.out[0], edge.out[1]];
  const aside = away * (design.pieces.outside.height - loop.middle + BESIDE + loop.width / 2);
  // A loop that would reach below the bench is bent up at its neck, where its ends are thin; else the cover stands on it.
  const [, round] = path.pieces;
  const radius = round!.length / round!.turn + (1 - neutral) * thickness;
  const toMiddle =
    bentPlaces(path, [path.pieces[0]!.length + round!.length / 2])[0]!.at[0] - round!.length / round!.turn;
  const above = dot([edge.at[0], edge.at[1]], bench.up) - bench.level;
  const lean = findLevel((turn) => above + toMiddle * dot(rotated(x, y, -turn), bench.up), radius, 0, MOST_LEAN);
  const clear = mostLean(toMiddle, radius, design.needs[point].leathers.pocket.thickness);
  const leant = above + toMiddle * dot(x, bench.up) >= radius ? 0 : -Math.min(lean, clear);
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
  const stops = columnsOf(whole, length, end);
  const outer = gridOf(stops.length, 2);
  const inner = gridOf(stops.length, 2);
  const normals = new Float64Array(6 * stops.length);
  const uvs = new Float64Array(4 * stops.length);
  bentPlaces(whole, stops).forEach(({ at, heading: angle }, i) => {
    const right = addScaled([0, 0], leftOf(heading(angle)), -1);
    const fromEdge = Math.min(stops[i]!, length - stops[i]!) - end;
    const share = Math.max(0, Math.min(1, fromEdge / SKIVE));
    const thick = SKIVED / 2 + (thickness - SKIVED / 2) * share;
    const faces = [
      [outer, (1 - neutral) * thick],
      [inner, -neutral * thick],
    ] as const;
    for (const [grid, by] of faces) {
      const [a, b] = addScaled(at, right, by);
      const section = addScaled(addScaled([edge.at[0], edge.at[1]], x, a), y, b);
      for (const row of [0, 1])
        grid.points.set([section[0], section[1], edge.at[2] + aside + (row - 0.5) * loop.width], 3 * (2 * i + row));
    }
    const normal = addScaled(addScaled([0, 0], x, right[0]), y, right[1]);
    for (const row of [0, 1]) {
      normals.set([normal[0], normal[1], 0], 3 * (2 * i + row));
      uvs.set([stops[i]!, row * loop.width], 2 * (2 * i + row));
    }
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
 * How far a loop can be bent up before it meets the cut edge of the pocket, radians: its round of radius R about a middle d off
 * the edge, turned by a, is as far from the pocket's corner, t up the edge, as d^2 + t^2 - 2 d t sin a.
 */
function mostLean(toMiddle: number, radius: number, pocket: number): number {
  const room = toMiddle ** 2 + pocket ** 2 - (radius + CLEAR) ** 2;
  return Math.asin(Math.max(0, Math.min(1, room / (2 * toMiddle * pocket))));
}

/** The direction x turned toward y. */
const rotated = (x: Vec2, y: Vec2, by: number): Vec2 => [
  x[0] * Math.cos(by) + y[0] * Math.sin(by),
  x[1] * Math.cos(by) + y[1] * Math.sin(by),
];

/** Columns along the loop, mm: ends, bends, and where the skived ends have their whole thickness. */
function columnsOf({ pieces }: BentPath, length: number, end: number): number[] {
  const stops = [0, end + SKIVE / 2, end + SKIVE, length - end - SKIVE, length - end - SKIVE / 2];
  let from = 0;
  for (const piece of pieces) {
    const count = Math.max(1, Math.ceil(Math.abs(piece.turn) / FACET));
    for (let i = 1; i <= count; i++) stops.push(from + (piece.length * i) / count);
    from += piece.length;
  }
  stops[stops.length - 1] = length;
  return stops.sort((a, b) => a - b).filter((at, i, all) => i === 0 || at - all[i - 1]! > 1e-6);
}
