import { distance, isInside, listed, pointToSegment, type Vec2 } from '../../../core/index.ts';

/** What can be drawn of a piece of leather: its outline, a defect by its number from 0; or the two points that a picture is scaled by. */
export type ShapeName = 'outline' | number | 'scale';

/** What a pointer is on. */
export type Under =
  | { readonly kind: 'corner' | 'side'; readonly index: number }
  | { readonly kind: 'shape'; readonly name: ShapeName }
  | null;

/**
 * What lies under a point: a corner of the chosen shape, else one of its sides, else the shape that it lies in or near the edge of,
 * the last drawn first.
 * @param chosen corners of the chosen shape; its sides only count where it is closed
 * @param reach how far from it a line is still meant, mm
 */
export function under(
  point: Vec2,
  chosen: { readonly corners: readonly Vec2[]; readonly isClosed: boolean } | null,
  shapes: readonly { readonly name: ShapeName; readonly corners: readonly Vec2[] }[],
  reach: number,
): Under {
  const corners = chosen?.corners ?? [];
  const nearest = (far: readonly number[]): number => far.indexOf(Math.min(...far));
  const toCorners = corners.map((corner) => distance(corner, point));
  const corner = nearest(toCorners);
  if (corner >= 0 && toCorners[corner]! <= reach) return { kind: 'corner', index: corner };
  const toSides = chosen?.isClosed === true ? sideDistances(point, corners) : [];
  const side = nearest(toSides);
  if (side >= 0 && toSides[side]! <= reach) return { kind: 'side', index: side };
  const shape = shapes.findLast(
    (each) => isInside(point, each.corners) || Math.min(...sideDistances(point, each.corners)) <= reach,
  );
  return shape === undefined ? null : { kind: 'shape', name: shape.name };
}

const sideDistances = (point: Vec2, corners: readonly Vec2[]): number[] =>
  corners.map((corner, i) => pointToSegment(point, corner, corners[(i + 1) % corners.length]!));

/** The middle of the side that leaves a corner. */
export function sideMiddle(corners: readonly Vec2[], side: number): Vec2 {
  const [a, b] = [corners[side]!, corners[(side + 1) % corners.length]!];
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

/** Sides by number, as `sides 3 and 7`, the first few of many. */
export function sideWords(sides: readonly number[]): string {
  const numbers = sides.slice(0, 4).map((side) => String(side + 1));
  const rest = sides.length - numbers.length;
  return rest > 0 ? `${numbers.join(', ')} and ${rest} more` : listed(numbers);
}
