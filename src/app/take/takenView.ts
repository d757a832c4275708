import type { Pose, RangePoint } from '../../core/index.ts';
import type { PictureHandle } from '../scene/PictureTaker.tsx';

/** A view that pictures and films are taken of. */
export interface TakenView {
  /** Tells it from the others, as `closed`; '' for the only one. */
  readonly name: string;
  readonly pose: Pose;
  readonly point: RangePoint;
  /** The scene once it is drawn; null where there is none. */
  readonly scene: () => Promise<PictureHandle | null>;
}
