import { ROW_STRIDE } from './bandedLdl.ts';

/** Everything one solve writes to, allocated once per resolution; it also carries the last solution for a warm start. */
export interface StripWorkspace {
  readonly segments: number;
  /** Nodes: one more than edges, and one edge more than segments, since a clamp lies in the middle of an edge. */
  readonly count: number;
  /** Positions x0 y0 x1 y1 ... */
  readonly nodes: Float64Array;
  readonly trial: Float64Array;
  readonly gradient: Float64Array;
  /** Gradient before ends are held, so that reactions can be read. */
  readonly force: Float64Array;
  readonly step: Float64Array;
  readonly band: Float64Array;
  readonly factors: Float64Array;
  readonly load: Float64Array;
  readonly restTurn: Float64Array;
  /** 1 where a coordinate is held; for a sliding node coordinate 0 runs along its line and 1 across. */
  readonly held: Uint8Array;
  /** Contact force and outline edge of every node. */
  readonly nodeForce: Float64Array;
  readonly nodeEdge: Int32Array;
  /** Contact force and nearest strip node of every outline vertex; replaced when the outline changes size. */
  vertexForce: Float64Array;
  vertexNode: Int32Array;
  /** How far the polygon cuts inside the smooth strip at every vertex, and at the start and end; see sag.ts. */
  vertexSag: Float64Array;
  readonly endSag: Float64Array;
  /** Force of the floor on every node. */
  readonly floorForce: Float64Array;
  /** Force of the two slide stops at start and end: start min, start max, end min, end max. */
  readonly stopForce: Float64Array;
  /** Rest length of an edge. */
  spacing: number;
  /** True once `nodes` holds a solution that a warm start may begin from. */
  solved: boolean;
}

/** @param segments whole number from 4: segments between the two clamp planes */
export function createStripWorkspace(segments: number): StripWorkspace {
  const count = segments + 2;
  const size = 2 * count;
  return {
    segments,
    count,
    nodes: new Float64Array(size),
    trial: new Float64Array(size),
    gradient: new Float64Array(size),
    force: new Float64Array(size),
    step: new Float64Array(size),
    band: new Float64Array(size * ROW_STRIDE),
    factors: new Float64Array(size * ROW_STRIDE),
    load: new Float64Array(size),
    restTurn: new Float64Array(count),
    held: new Uint8Array(size),
    nodeForce: new Float64Array(count),
    nodeEdge: new Int32Array(count),
    vertexForce: new Float64Array(0),
    vertexNode: new Int32Array(0),
    vertexSag: new Float64Array(0),
    endSag: new Float64Array(2),
    floorForce: new Float64Array(count),
    stopForce: new Float64Array(4),
    spacing: 0,
    solved: false,
  };
}
