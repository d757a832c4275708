import type { RangePoint } from '../leather/leatherModel.ts';
import type { CoverDesign } from './coverDesign.ts';
import { heightSegments, type SegmentId, stripSegments } from './segments.ts';

/** A band across the outside as cut, mm from its front cut edge (`width`) or from its head cut edge (`height`). */
export interface PatternZone {
  readonly axis: 'width' | 'height';
  readonly from: number;
  readonly to: number;
}

/** Where the stretch of a name lies on the outside, or null where the cover has none of that name. */
export function patternZone(design: CoverDesign, point: RangePoint, id: SegmentId): PatternZone | null {
  for (const [axis, segmentsOf] of [
    ['width', stripSegments],
    ['height', heightSegments],
  ] as const) {
    const found = segmentsOf(design, point).find((segment) => segment.id === id);
    if (found) return { axis, from: Math.min(found.from, found.to), to: Math.max(found.from, found.to) };
  }
  return null;
}
