import { type Fit, type Pose, printer, type RangePoint, SEQUENCE_STAGES } from '../../core/index.ts';
import type { Slice } from '../scene/slice.ts';
import { VIEWPOINTS, type Viewpoint } from '../scene/viewpoints.ts';

/** What the scene shows; not kept when the page is left. */
export interface StageState {
  readonly pose: Pose;
  readonly point: RangePoint;
  readonly shape: 'taut' | 'settled';
  readonly slice: Slice | null;
  readonly viewpoint: Viewpoint;
  /** Whether the areas that can be tooled are drawn. */
  readonly showsAreas: boolean;
}

export const OPENING_STAGE: StageState = {
  pose: { kind: 'opening', angle: 0 },
  point: 'thick',
  shape: 'taut',
  slice: null,
  viewpoint: VIEWPOINTS[0],
  showsAreas: false,
};

type StageId = (typeof SEQUENCE_STAGES)[number]['id'];

export const STAGE_WORDS: Readonly<Record<StageId, string>> = {
  pattern: 'flat pattern',
  pockets: 'pockets laid on',
  setIn: 'book set in',
  fold: 'folding',
  closed: 'closed',
};

/** The stage of the making that a place in the sequence belongs to. */
export const stageAt = (at: number): StageId => SEQUENCE_STAGES.findLast(({ from }) => at >= from)?.id ?? 'pattern';

/** Place at which each stage is shown: at its end, folding halfway. */
export const STAGE_STOPS: Readonly<Record<StageId, number>> = {
  pattern: 0,
  pockets: 0.34,
  setIn: 0.64,
  fold: 0.82,
  closed: 1,
};

/** The pose in words. */
export function poseWords(pose: Pose): string {
  if (pose.kind === 'sequence') return STAGE_WORDS[stageAt(pose.at)];
  const degrees = Math.round((pose.angle * 180) / Math.PI);
  if (degrees === 0) return 'closed';
  return degrees === 180 ? 'open flat' : `open ${degrees} degrees`;
}

/** How far the book is open in a pose, in words; and whether the wrap keeps it from closing that far. */
export function openingWords(pose: Pose, { staysOpen }: Pick<Fit, 'staysOpen'>): string {
  if (staysOpen === null) return 'the boards do not go in';
  const asked: Pose = pose.kind === 'opening' ? pose : { kind: 'opening', angle: 0 };
  if (staysOpen <= asked.angle) return poseWords(asked);
  return `stays open ${printer('mm').angle(staysOpen)}`;
}

/** Opening of the book in a pose, radians, for the section that replaces the scene: flat until it is folded. */
export function openingOf(pose: Pose): number {
  if (pose.kind === 'opening') return pose.angle;
  const fold = SEQUENCE_STAGES.find(({ id }) => id === 'fold')!.from;
  return Math.PI * Math.min(1, (1 - pose.at) / (1 - fold));
}

/** Opening from which the inside of a cover shows, and the opening that is set to show it, radians. */
const SHOWS_INSIDE = Math.PI / 3;
const LOOKED_INTO = (2 * Math.PI) / 3;

/** Changes for a viewpoint: a book that is closed, or nearly, is opened to show its inside. */
export function lookFrom({ pose }: StageState, viewpoint: Viewpoint): Partial<StageState> {
  if (viewpoint !== 'inside' || openingOf(pose) >= SHOWS_INSIDE) return { viewpoint };
  return { viewpoint, pose: { kind: 'opening', angle: LOOKED_INTO } };
}
