import { type Box3, Plane, Vector3 } from 'three';
import type { FoldedCover } from '../../../core/index.ts';
import type { Slice } from '../slice.ts';
import { benchMatrix, boundsOnBench } from './assembly.ts';

/** Where the assembly is cut: what lies on the plane's negative side is taken away. */
export interface SlicePlane {
  /** In the frame of the meshes. */
  readonly assembly: Plane;
  /** On the bench, as the renderer clips. */
  readonly bench: Plane;
}

/** Plane of a slice, moved with the book: its ends are the ends of the cover, or of the board in the back pocket. */
export function slicePlane(cover: FoldedCover, { axis, at }: Slice): SlicePlane {
  const bench = axis === 'acrossSpine' ? planeAcrossSpine(cover, at) : planeThroughPocket(cover, at);
  return { bench, assembly: bench.clone().applyMatrix4(benchMatrix(cover.benchTurn).invert()) };
}

/** Takes the tail side away: on the bench the tail is toward +z. */
function planeAcrossSpine(cover: FoldedCover, at: number): Plane {
  const { min, max } = boundsOnBench(cover);
  return new Plane(new Vector3(0, 0, -1), max.z + (min.z - max.z) * at);
}

/** Takes the fore-edge side away: on the bench the back board's fore-edge is toward +x. */
function planeThroughPocket(cover: FoldedCover, at: number): Plane {
  const board = boundsOnBench(cover, ({ part }) => part === 'backBoard');
  const outside = boundsOnBench(cover, ({ part }) => part === 'outside');
  const [from, to] = board.isEmpty() ? [0, outside.max.x] : [board.min.x, board.max.x];
  return new Plane(new Vector3(-1, 0, 0), from + (to - from) * at);
}

/** What a cut leaves of a box on the bench, to at most the given depth behind the cut. */
export function behindCut(box: Box3, { bench }: SlicePlane, depth = Number.POSITIVE_INFINITY): Box3 {
  const left = box.clone();
  const axis = bench.normal.x < 0 ? 'x' : 'z';
  left.max[axis] = Math.max(left.min[axis], Math.min(left.max[axis], bench.constant));
  left.min[axis] = Math.max(left.min[axis], left.max[axis] - depth);
  return left;
}
