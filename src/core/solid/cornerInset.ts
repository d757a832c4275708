import type { Corner } from '../math/contour.ts';

/** Columns over one rounded corner. */
const STEPS = 6;

/**
 * Distances from the cut edge at which a corner wants columns, mm: along its arc, and where the cut crosses a row.
 * @param rows distances of the rows near the edge from it, mm
 */
export function cornerStops(corner: Corner, rows: readonly number[]): number[] {
  const { style, size } = corner;
  if (size === 0) return [];
  const arc = Array.from({ length: STEPS }, (_, i) => size * (1 - Math.cos(((i + 1) * Math.PI) / 2 / STEPS)));
  // Both kinds of corner are symmetric in their diagonal.
  return [size, ...(style === 'rounded' ? arc : []), ...rows.map((v) => cornerInset(corner, v))];
}

/**
 * How far the end of a column stands in from the straight edge to follow the corner of the piece, mm.
 * @param fromEdge distance of the column from the cut edge it runs along, mm
 */
export function cornerInset({ style, size }: Corner, fromEdge: number): number {
  if (fromEdge >= size) return 0;
  const rest = size - Math.max(0, fromEdge);
  return style === 'clipped' ? rest : size - Math.sqrt(Math.max(0, size * size - rest * rest));
}
