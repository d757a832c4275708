import {
  distance,
  handDrawn,
  meetingSides,
  OUTLINE_LIMITS,
  onGrid,
  polygonArea,
  type Vec2,
} from '../../../core/index.ts';
import type { ShapeName } from './hideShape.ts';

/** A shape that the job does not have: still being drawn, or closed with sides that meet. */
export interface HideDraft {
  /** What it becomes; a number past the last defect is a new one. */
  readonly name: ShapeName;
  readonly corners: readonly Vec2[];
  readonly isClosed: boolean;
}

/** Why a closed shape cannot go into the job; null where it can. */
export type ShapeFault = { readonly kind: 'few' } | { readonly kind: 'meet'; readonly sides: readonly number[] } | null;

export function shapeFault(corners: readonly Vec2[]): ShapeFault {
  if (corners.length < 3) return { kind: 'few' };
  const sides = meetingSides(corners);
  if (sides.length > 0) return { kind: 'meet', sides };
  return polygonArea(corners) === 0 ? { kind: 'few' } : null;
}

/** How near its first corner a line ends that closes the outline, px. */
export const CLOSING_PX = 22;

/** How far a line drawn by hand may lie from its corners, px: no hand is steadier. */
export const STRAY_PX = 2;

interface Drawn {
  /** px a millimetre. */
  readonly scale: number;
  /** mm. */
  readonly step: number;
}

/**
 * The draft with a corner set, or with the corners of a line drawn by hand. It is closed by a press on its first corner, or by
 * a line that ends there.
 * @param line one point for a press, mm
 */
export function drawnOn(draft: HideDraft, line: readonly Vec2[], { scale, step }: Drawn): HideDraft {
  const { corners: added } = handDrawn(line, { tolerance: STRAY_PX / scale, step });
  const first = draft.corners[0] ?? line[0]!;
  const px = (corner: Vec2): number => distance(corner, first) * scale;
  const all = withoutDoubles([...draft.corners, ...added]);
  const isBack = px(line.at(-1)!) <= CLOSING_PX && all.some((corner) => px(corner) > 2 * CLOSING_PX);
  if (!isBack) return { ...draft, corners: capped(all, step) };
  const round = all.slice(0, -1);
  if (round.length >= 3) return { ...draft, corners: capped(round, step), isClosed: true };
  return line.length === 1 ? draft : { ...draft, corners: all };
}

/** Closes a draft of three corners or more. */
export const closed = (draft: HideDraft): HideDraft => ({ ...draft, isClosed: draft.corners.length >= 3 });

const withoutDoubles = (corners: readonly Vec2[]): Vec2[] =>
  corners.filter(([x, y], i) => x !== corners[i - 1]?.[0] || y !== corners[i - 1]?.[1]);

const capped = (corners: readonly Vec2[], step: number): readonly Vec2[] =>
  corners.length <= OUTLINE_LIMITS.corners ? corners : handDrawn(corners, { tolerance: step, step }).corners;

/** A shape with one corner elsewhere, on a whole step. */
export const withCorner = (corners: readonly Vec2[], index: number, at: Vec2, step: number): Vec2[] =>
  corners.with(index, onGrid(at, step));
