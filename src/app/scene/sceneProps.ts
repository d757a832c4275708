import type { CoverDesign } from '../../core/fold/coverDesign.ts';
import type { Pose } from '../../core/fold/mesh/pose.ts';
import type { RangePoint } from '../../core/leather/leatherModel.ts';
import type { Look } from './material/coverMaterials.ts';
import type { Slice } from './slice.ts';
import type { Viewpoint } from './viewpoints.ts';

export interface CoverSceneProps {
  readonly design: CoverDesign;
  readonly pose: Pose;
  readonly point: RangePoint;
  readonly slice: Slice | null;
  readonly units: 'mm' | 'in';
  /** `light` draws without shadows, reflections and smoothed edges, for slow machines. */
  readonly look: Look;
  /** Stretch of the outside's pattern to light up, mm from its left edge. */
  readonly highlight?: { readonly from: number; readonly to: number } | null;
  readonly viewpoint: Viewpoint;
  readonly onViewpointChange: (viewpoint: Viewpoint) => void;
  /** Called once when the first frames take too long. */
  readonly onSlowFrames: () => void;
  /** Called with the reason when there is no 3D to show, and with null when it is back. */
  readonly onUnavailable: (reason: 'noWebGl' | 'contextLost' | null) => void;
  readonly colourScheme: 'light' | 'dark';
  readonly formatLength: (mm: number) => string;
  /** What the picture shows, in words. */
  readonly describe: string;
}
