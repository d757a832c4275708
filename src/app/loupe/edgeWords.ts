import { type CoverDesign, type Edge, type EdgeSection, isForeEdge, type RangePoint } from '../../core/index.ts';

export const POINT_NAMES: Readonly<Record<RangePoint, string>> = { thin: 'thin', nominal: 'middle', thick: 'thick' };

/** What must be known of a section to read it right, in a sentence. */
export function sectionNote({ job }: CoverDesign, edge: Edge, { place, gap }: EdgeSection): string {
  if (gap === null) return 'No pocket here: nothing stops the board.';
  if (gap < 0) return 'Too small: board and stop overlap.';
  if (place === 'corner') return 'Near the corner: this edge by itself.';
  if (!isForeEdge(edge)) return 'Head and tail share the spare height.';
  return job.seating === 'spine' ? 'Drawn tight: spare wrap is at the spine.' : 'The spare wrap is pushed home.';
}
