import type { ToolingFace } from '../job/toolingSchema.ts';
import type { Box2 } from '../math/box2.ts';
import type { Vec2 } from '../math/vec2.ts';
import type { PieceId } from '../pattern/drawing.ts';

/** A hole, corner, strap or the like that an area keeps off, on the finished face. */
export interface Obstacle extends Box2 {
  readonly bound: Bound;
}

export const SIDES = ['left', 'right', 'bottom', 'top'] as const;
export type Side = (typeof SIDES)[number];

/** What ends a face at one side, or lies on it. */
export type Bound =
  | 'board edge'
  | 'seam'
  | 'spine fold'
  | 'mouth'
  | 'strap'
  | 'strap edge'
  | 'fastening'
  | 'corner'
  | 'fore-edge';

/**
 * A face of the cover that can be tooled, mm on the finished cover. The frame is that of the piece as drawn: grain side up,
 * head at the top, lower left corner of its box at the origin. A reader of the finished cover sees the face the same way up.
 */
export interface ToolingArea {
  readonly face: ToolingFace;
  readonly piece: PieceId;
  /** Width and height of the finished piece. */
  readonly size: Vec2;
  /** Seen flat on the closed book, a pocket on the open one, at every thickness of the leather. */
  readonly flat: Box2;
  /** The same before holes, corners and strap took from it. */
  readonly whole: Box2;
  readonly obstacles: readonly Obstacle[];
  /** The flat part less the margins; null where they leave nothing. */
  readonly clear: Box2 | null;
  /** Where the centre lines cross: the middle of the face as it is seen. */
  readonly centre: Vec2;
  /** What ends the whole flat part at each side. */
  readonly bounds: Readonly<Record<Side, Bound>>;
  readonly margins: Readonly<Record<Side, number>>;
  /** Finished over cut length, along x and y. */
  readonly growth: Vec2;
  /** Whether the pattern of the piece lies half a turn from this frame: a back pocket, cut from that of the front, or a strap. */
  readonly isTurned: boolean;
}

/** A place of a face on the piece as it is cut, in the frame of its pattern. */
export function onCutPiece({ size, growth, isTurned }: ToolingArea, [x, y]: Vec2): Vec2 {
  const [across, along] = isTurned ? [size[0] - x, size[1] - y] : [x, y];
  return [across / growth[0], along / growth[1]];
}

/** A place on the piece as it is cut, on the finished face: the inverse of `onCutPiece`. */
export function onFinishedFace({ size, growth, isTurned }: ToolingArea, [x, y]: Vec2): Vec2 {
  const [across, along] = [x * growth[0], y * growth[1]];
  return isTurned ? [size[0] - across, size[1] - along] : [across, along];
}
