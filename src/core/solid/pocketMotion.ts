import type { CoverDesign } from '../fold/coverDesign.ts';
import type { HalfSection } from '../fold/section/halfSection.ts';
import { type SeatCurve, swung } from '../fold/section/seatCurve.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { findLevel } from '../math/findLevel.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import type { CoverHalf } from './coverGrid.ts';
import type { PocketPlace } from './pocketMesh.ts';
import { type Staging, step } from './staging.ts';
import type { Standing } from './standing.ts';

/** How far a pocket leans out of the way of the boards beyond the line on which they come down, radians (10 degrees). */
const LEAN = (10 * Math.PI) / 180;
/** Room left between moving parts, mm. */
const PLAY = 0.1;
/** Distance between a pocket and the outside on the bench, and how high it is lifted on the way, mm. Free choice. */
const BESIDE = 15;
const LIFT = 60;
/** Turn of both folds of a turned end when its pocket lies on the board, radians. */
const UPRIGHT = Math.PI / 2;

/** A piece on its way from the bench: sideways distance left (1 to 0) and height, 1 at the top of the way. */
export function laidAway(laid: number): { readonly lateral: number; readonly up: number } {
  return { lateral: 1 - step(laid, 0.2, 0.8), up: step(laid, 0, 0.3) * (1 - step(laid, 0.7, 1)) };
}

/** Angle between a pocket's leaf and the outside it is joined to, and with turned ends the two folds that give it. */
export interface PocketLeaf {
  readonly angle: number;
  readonly turnedFolds: readonly [number, number];
}

/**
 * Direction in which the boards come down, as seen from the back board's seam: angle from inward, at least upright.
 * At an opening of pi it is upright; in a cover that opens less the boards come down along its slope.
 */
const wayDown = (direction: number): number => Math.max(Math.PI / 2, Math.PI - direction);

/** The leaf's angle at a stage: resting on what lies under it, swung open for the boards, swung down onto them. */
export function pocketLeaf(design: CoverDesign, point: RangePoint, stage: Staging, standing: Standing): PocketLeaf {
  const { book, leathers } = design.needs[point];
  const turned = design.needs[point].foreEdgeSeat === null;
  const open = Math.min(wayDown(standing.direction) + LEAN, Math.PI - 0.05);
  const radius = turned ? 0 : leathers.pocket.seatRadius + leathers.pocket.thickness / 2;
  const resting =
    stage.swungOpen < 1
      ? restingAngle(standing.front, leathers.outside.neutral, radius, turned ? book.board : 0) * stage.pocketsLaid
      : 0;
  const angle = stage.swungOpen < 1 ? resting + (open - resting) * stage.swungOpen : open * (1 - stage.swungDown);
  // The first fold turns from flat (0) to upright, the second lays the leaf down.
  const folded = turned ? stage.pocketsLaid : 1;
  const first = Math.PI - Math.max(angle, UPRIGHT);
  const second = UPRIGHT - Math.min(angle, UPRIGHT);
  return { angle, turnedFolds: [first * folded, second * folded] };
}

/** Angle at which a leaf that starts at height `from` clears the lining's edge that lies under it on the flat outside. */
function restingAngle(half: HalfSection, neutral: number, radius: number, from: number): number {
  const heightAt = ([lining, outside]: readonly [number, number]): number => lining + neutral * outside;
  let start = 0;
  let level = 0;
  const bumps: (readonly [u: number, h: number])[] = [];
  for (const piece of half.pieces) {
    start += piece.length;
    if (start > half.toSeam + TOLERANCE.length) break;
    level = heightAt([piece.lining[1], piece.outside[1]]);
    bumps.push([half.toSeam - start, level]);
  }
  let angle = 0;
  for (const [u, height] of bumps) {
    const rise = height - level - from;
    if (rise <= 0 || u <= 0) continue;
    // Flesh side of the leaf at u: radius (1 - cos) + (u - radius sin) tan.
    const leafAt = (x: number): number => u * Math.tan(x) - radius * (1 / Math.cos(x) - 1);
    angle = Math.max(angle, findLevel(leafAt, rise + PLAY, 0, 1.2));
  }
  return angle;
}

/** Where one pocket is at a stage: on the bench, on the outside, swung open, or on its board. */
export function pocketPlace(
  design: CoverDesign,
  point: RangePoint,
  stage: Staging,
  standing: Standing,
  end: CoverHalf,
  angle: number,
): PocketPlace {
  const closed = end.field.foreEdge!;
  const { lateral, up } = laidAway(stage.pocketsLaid);
  const { outside } = design.needs[point].leathers;
  const last = end.half.pieces[end.half.pieces.length - 1]!;
  const rest = stage.swungOpen * (1 - stage.swungDown);
  return {
    curve: leafCurve(closed, angle, stage),
    out:
      lateral * (design.pieces.pocket.width + BESIDE) +
      rest * setBack(closed, end.half.toSeam - end.half.toTip, design.needs[point].book.board, standing.direction),
    above: up * LIFT - lateral * (outside.thickness + last.lining[0]),
  };
}

/**
 * The fore-edge curve of a leaf at an angle. Swung open it is one arc; coming down over the board the arc stays at the
 * curve's own angle once it is there, and the second arc lays the leaf level. Every stage on the way lies above the last.
 */
function leafCurve(closed: SeatCurve, angle: number, stage: Staging): SeatCurve {
  if (stage.swungDown === 0) return swung(closed, angle, 0);
  const up = Math.max(closed.up, angle);
  return swung(closed, up, up - angle);
}

/**
 * How far the pocket, not yet sewn down, is set back toward the cut edge while the boards come down past its bend: the
 * bend stands r (1 - cos a) into their way, measured square to it, the nearer corner of the board D sin a - b cos a at most.
 */
function setBack(closed: SeatCurve, room: number, board: number, direction: number): number {
  const way = wayDown(direction);
  const bend = closed.seamRadius * (1 - Math.cos(way));
  const corner = room * Math.sin(way) + Math.min(0, -board * Math.cos(way));
  return Math.max(0, (bend + PLAY - corner) / Math.sin(way));
}
