import type { Job } from '../../job/jobSchema.ts';
import type { Vec2 } from '../../math/vec2.ts';

/** A piece of leather to cut from, in its own coordinates, mm. */
export interface Hide {
  readonly outline: readonly Vec2[];
  readonly defects: readonly (readonly Vec2[])[];
  /** Direction of the backbone line from the x axis, radians. */
  readonly backbone: number;
}

/** How close pieces may lie, mm. */
export interface Clearance {
  /** From piece to piece. */
  readonly spacing: number;
  /** From the edge of the leather, and from defects. */
  readonly edge: number;
}

/** The hide that a job describes: its outline, or the rectangle of a sheet. */
export function hideOf(owned: NonNullable<Job['hides']['outside']>): Hide {
  const { width_mm: width, height_mm: height } = owned;
  const sheet: Vec2[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  return {
    outline: owned.outline ?? sheet,
    defects: owned.defects,
    backbone: (owned.backbone_deg * Math.PI) / 180,
  };
}

export const clearanceOf = ({ spacing_mm: spacing, edge_mm: edge }: Job['hides']): Clearance => ({ spacing, edge });
