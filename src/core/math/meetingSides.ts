import { meetings } from './simplePolygon.ts';
import type { Vec2 } from './vec2.ts';

/** Sides of a closed polygon that cross or touch another, or double back; each by the index of its first corner, in order. */
export const meetingSides = (polygon: readonly Vec2[]): number[] =>
  [...new Set([...meetings(polygon)].flat())].sort((a, b) => a - b);
