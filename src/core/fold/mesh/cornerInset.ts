import type { Corner } from '../../math/contour.ts';

/** Columns over one rounded corner. */
const STEPS = 6;

/** Distances from the cut edge at which a corner wants columns, mm. */
export function cornerStops({ style, size }: Corner): number[] {
  if (size === 0) return [];
  if (style === 'clipped') return [size];
  return Array.from({ length: STEPS }, (_, i) => size * (1 - Math.cos(((i + 1) * Math.PI) / 2 / STEPS)));
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
