import { type Fit, type Pose, printer, type RangePoint } from '../../core/index.ts';
import type { Slice } from '../scene/slice.ts';
import { VIEWPOINTS, type Viewpoint } from '../scene/viewpoints.ts';

/** What the scene shows; not kept when the page is left. */
export interface StageState {
  readonly pose: Pose;
  /** What the film shows there: its step in words, and how far the book is open, radians; null where no film is shown. */
  readonly film: { readonly words: string; readonly opening: number } | null;
  readonly point: RangePoint;
  readonly shape: 'taut' | 'settled';
  readonly slice: Slice | null;
  readonly viewpoint: Viewpoint;
  /** Whether the areas that can be tooled are drawn. */
  readonly showsAreas: boolean;
}

export const OPENING_STAGE: StageState = {
  pose: { kind: 'opening', angle: 0 },
  film: null,
  point: 'thick',
  shape: 'taut',
  slice: null,
  viewpoint: VIEWPOINTS[0],
  showsAreas: false,
};

/** The pose in words. */
export function poseWords({ pose, film }: Pick<StageState, 'pose' | 'film'>): string {
  if (pose.kind === 'sequence') return film?.words ?? 'being made';
  const degrees = Math.round((pose.angle * 180) / Math.PI);
  if (degrees === 0) return 'closed';
  return degrees === 180 ? 'open flat' : `open ${degrees} degrees`;
}

/** How far the book is open in a pose, in words; and whether the wrap keeps it from closing that far. */
export function openingWords(pose: Pose, { staysOpen }: Pick<Fit, 'staysOpen'>): string {
  if (staysOpen === null) return 'the boards do not go in';
  const asked: Pose = pose.kind === 'opening' ? pose : { kind: 'opening', angle: 0 };
  if (staysOpen <= asked.angle) return poseWords({ pose: asked, film: null });
  return `stays open ${printer('mm').angle(staysOpen)}`;
}

/** Opening of the book in a pose, radians, for the section that replaces the scene: flat until it is folded. */
export const openingOf = ({ pose, film }: Pick<StageState, 'pose' | 'film'>): number =>
  pose.kind === 'opening' ? pose.angle : (film?.opening ?? Math.PI);

/** Opening from which the inside of a cover shows, and the opening that is set to show it, radians. */
const SHOWS_INSIDE = Math.PI / 3;
const LOOKED_INTO = (2 * Math.PI) / 3;

/** Changes for a viewpoint: a book that is closed, or nearly, is opened to show its inside. */
export function lookFrom(stage: StageState, viewpoint: Viewpoint): Partial<StageState> {
  if (viewpoint !== 'inside' || openingOf(stage) >= SHOWS_INSIDE) return { viewpoint };
  return { viewpoint, pose: { kind: 'opening', angle: LOOKED_INTO }, film: null };
}
