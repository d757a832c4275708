import type { FoldedHole, Job } from '../../../core/index.ts';
import type { CoverMaterials, Look } from '../material/coverMaterials.ts';

/** What a seam is drawn from, stitched or laced. */
export interface SeamProps {
  readonly seam: readonly FoldedHole[];
  /** False while only the holes are there. */
  readonly sewn: boolean;
  readonly job: Job;
  readonly look: Look;
  readonly materials: CoverMaterials;
}
