import type { CoverDesign } from '../../fold/coverDesign.ts';
import { pieceCorner, seamCorner } from '../../pattern/pieceCorner.ts';

/** How lace fans over a corner of the cover from the one slit there. */
export interface CornerShape {
  /** Angle of the outer turns from the corner's diagonal, radians. */
  readonly fan: number;
  /** Distance from the slit to the cut edge at an angle from the diagonal, mm. */
  readonly reach: (angle: number) => number;
}

/**
 * The corner of a closed seam, margin m. Turns stand evenly along the edge, where the pitch is wider than on the seam line by
 * r / (r - m), and at most square to the two sides. Lace that goes straight over the edge meets side by side on a sharp tip,
 * which would else show. From its slit the straight edges are m / cos(45 degrees - |angle|) away, a clip
 * D / cos(angle), and the arc of a rounded corner of radius r, whose middle is d behind the slit on the diagonal,
 * sqrt(r^2 - d^2 sin^2) - d cos.
 * @param lace width of lace that goes straight over the edge, mm; null for a plait
 */
export function cornerShape({ job, pieces }: CoverDesign, lace: number | null): CornerShape {
  const margin = job.seam.edgeMargin_mm;
  const { corner } = pieceCorner(job, pieces);
  const seam = seamCorner(corner, margin);
  const step = (job.seam.pitch_mm * (seam.size + margin)) / seam.size;
  const even = seam.size === 0 ? Math.PI / 4 : Math.min(Math.PI / 4, Math.atan(step / (2 * margin)));
  const fan = lace === null || seam.size > 0 ? even : Math.min(even, lace / (Math.SQRT2 * margin));
  const square = (angle: number): number => margin / Math.cos(Math.PI / 4 - Math.abs(angle));
  if (corner.size === 0) return { fan, reach: square };
  if (corner.style === 'clipped') {
    const away = Math.max(margin, (2 * margin - corner.size) / Math.SQRT2);
    return { fan, reach: (angle) => Math.min(square(angle), away / Math.cos(angle)) };
  }
  const behind = seam.size > 0 ? seam.size : (corner.size - margin) * Math.SQRT2;
  return {
    fan,
    reach(angle) {
      const far = Math.sqrt(Math.max(0, corner.size ** 2 - (behind * Math.sin(angle)) ** 2));
      const arc = far - behind * Math.cos(angle);
      return seam.size > 0 ? arc : Math.min(square(angle), arc);
    },
  };
}
