/**
 * A cut through the assembly that is shown: across the spine (at 0 the tail, at 1 the head), or parallel to the spine
 * through the back board in its pocket (at 0 the spine, at 1 the fore-edge).
 */
export interface Slice {
  readonly axis: 'acrossSpine' | 'throughPocket';
  readonly at: number;
}
