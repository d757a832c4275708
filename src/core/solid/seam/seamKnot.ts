/**
 * A knot of a strand's middle line, in the seam's own measure, so that it is worked out once for every position of the
 * cover: `u` counts the stations along the row, `y` and `z` are mm from the slit on the grain side, out of it and toward
 * the cut edge.
 */
export interface SeamKnot {
  readonly u: number;
  readonly y: number;
  readonly z: number;
  /** Way out of the leather under the strand, radians from the grain side's over the edge's to the flesh side's. */
  readonly turn: number;
  /** How far that way turns from the edge's toward the seam's in a hole or slit, radians; 0 elsewhere. */
  readonly twist: number;
  /** Move of the needle that lays this knot. */
  readonly move: number;
  /** Whether it lies inside the leather or under other strands. */
  readonly isInside: boolean;
  /** The station whose hole the strand goes through here, on its axis; null elsewhere. */
  readonly pass: number | null;
}
