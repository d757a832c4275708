import type { NeedsOverRange } from '../allowance/needs.ts';
import type { Job } from '../job/jobSchema.ts';
import type { Contour } from '../math/contour.ts';
import type { Vec2 } from '../math/vec2.ts';
import type { EvenPitch } from './evenPitch.ts';
import type { Pieces } from './pieces.ts';

/** A job with its cut pieces: what every part of the pattern is drawn from. */
export interface PatternSource {
  readonly job: Job;
  readonly pieces: Pieces;
  readonly needs: NeedsOverRange;
  /** Cut from card for a trial: it has no grain, and no direction on a hide. */
  readonly isCard?: boolean;
}

/** Names of the sides of the cover, at the start of a sentence. */
export const SEAM_SIDES = {
  tail: 'Tail',
  backForeEdge: 'Back fore-edge',
  head: 'Head',
  frontForeEdge: 'Front fore-edge',
} as const;
type SeamSide = keyof typeof SEAM_SIDES;

/** Name of a side within a sentence. */
export const sideName = (side: SeamSide): string => SEAM_SIDES[side].toLowerCase();

/** Names of the layers that the seam goes through, within a sentence. */
export const SEAM_LAYERS = {
  outside: 'outside',
  frontPocket: 'front pocket',
  backPocket: 'back pocket',
  lining: 'lining',
  frontTurnedEnd: 'front turned end',
  backTurnedEnd: 'back turned end',
} as const;
export type SeamLayer = keyof typeof SEAM_LAYERS;

/** One stitching hole or lacing slit, in the frame of the outside: x from its front cut edge, y from its tail cut edge. */
export interface SeamHole {
  readonly at: Vec2;
  /** Direction of the seam there, radians; at a corner midway between its two sides. */
  readonly heading: number;
  readonly side: SeamSide;
  readonly isCorner: boolean;
  readonly layers: readonly SeamLayer[];
}

/** The holes of one side, spaced along the seam line. In a closed seam the far corner is the next row's first. */
export interface SeamRow extends EvenPitch {
  readonly side: SeamSide;
  readonly length: number;
  readonly holes: readonly SeamHole[];
}

/** Where a layer ends across the seam: the edge of a pocket mouth, turned end or lining. */
export interface SeamStep {
  readonly layer: SeamLayer;
  /** x in the frame of the outside. */
  readonly x: number;
}

export interface Seam {
  /** Round the whole cover; false for turned ends, which have a row at head and one at tail. */
  readonly isClosed: boolean;
  /** The seam line; one contour a row where it is open. */
  readonly lines: readonly Contour[];
  readonly rows: readonly SeamRow[];
  readonly starts: readonly SeamHole[];
  readonly finishes: readonly SeamHole[];
  readonly steps: readonly SeamStep[];
  /** What the maker must know: sides too short for the pitch, holes left out of a layer, pockets that meet. */
  readonly notes: readonly string[];
}

/** What a hole of the seam looks like. */
export interface HoleShape {
  /** Diameter, or length of a slit, mm. */
  readonly size: number;
  /** Angle from slit to seam line, radians; null for a round hole. */
  readonly slant: number | null;
}

/** A hole as the job's iron makes it; without one, as the job says. Usual slant: see `slitAngle`. */
export function holeShape(job: Job): HoleShape {
  const { construction, seam } = job;
  if (seam.iron !== null)
    return { size: seam.iron.tooth_mm, slant: seam.iron.kind === 'drive punch' ? null : slitAngle(job) };
  return seam.method === 'stitching'
    ? { size: construction.hole_mm, slant: null }
    : { size: construction.slitWidth_mm, slant: slitAngle(job) };
}

/** Angle from slit to seam line, radians: the iron's, else the job's. Usual: 45 degrees for whip lacing, else 0. Common practice, no source. */
export function slitAngle({ construction, seam }: Job): number {
  const angle = seam.iron?.angle_deg ?? construction.slitAngle_deg ?? (seam.style === 'whip' ? 45 : 0);
  return (angle * Math.PI) / 180;
}

/**
 * Middle of the fold of a turned end, from the cut edge: D + turn / 2 once the cover is made. Places mirrored in it meet when it is
 * folded.
 */
export const turnAxis = ({ pieces, needs }: PatternSource): number =>
  (pieces.pocketDepth + needs.thick.foreEdge.turn / 2) / pieces.growth;
