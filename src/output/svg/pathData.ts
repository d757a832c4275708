import { arcPoint, type Contour, type Segment, segmentEnd, segmentStart, type Vec2 } from '../../core/index.ts';

/** A number to a millionth of a mm, without trailing zeros. */
export const svgNumber = (value: number): string => String(Math.round(value * 1e6) / 1e6);

/**
 * SVG path data of connected segments; a whole circle becomes two halves.
 * @param place maps a point of the drawing, y up, to the picture, whose y runs down
 */
export function pathData(segments: Contour, place: (point: Vec2) => Vec2): string {
  if (segments.length === 0) return '';
  const point = (at: Vec2): string => place(at).map(svgNumber).join(' ');
  const draw = (segment: Segment): string => {
    if (segment.kind === 'line') return `L${point(segment.to)}`;
    const { radius, sweep } = segment;
    const size = svgNumber(radius);
    // Counterclockwise with y up is against the sweep of SVG, whose y runs down.
    const way = sweep > 0 ? 0 : 1;
    const isWhole = Math.abs(sweep) > Math.PI * 1.999;
    const half = isWhole ? `A${size} ${size} 0 0 ${way} ${point(arcPoint(segment, 0.5))}` : '';
    const isLarge = !isWhole && Math.abs(sweep) > Math.PI ? 1 : 0;
    return `${half}A${size} ${size} 0 ${isLarge} ${way} ${point(segmentEnd(segment))}`;
  };
  return `M${point(segmentStart(segments[0]!))}${segments.map(draw).join('')}`;
}
