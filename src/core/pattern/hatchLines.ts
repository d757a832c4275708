import type { Line } from '../math/contour.ts';
import { addScaled, cross, heading, leftOf, subtract, type Vec2 } from '../math/vec2.ts';
import type { Hatch } from './drawing.ts';

const dot = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];

/** The lines that fill a hatched area, by the even-odd rule; they lie at whole multiples of the spacing from the origin. */
export function hatchLines({ boundary, angle, spacing }: Hatch): Line[] {
  const along = heading(angle);
  const across = leftOf(along);
  const offsets = boundary.map((point) => dot(point, across));
  const lines: Line[] = [];
  const last = Math.max(...offsets);
  for (let i = Math.ceil(Math.min(...offsets) / spacing); i * spacing <= last; i++) {
    const foot: Vec2 = addScaled([0, 0], across, i * spacing);
    const hits = boundary
      .flatMap((from, k) => {
        const edge = subtract(boundary[(k + 1) % boundary.length]!, from);
        const slope = cross(edge, along);
        const share = cross(subtract(foot, from), along) / slope;
        return slope !== 0 && share >= 0 && share < 1 ? [dot(addScaled(from, edge, share), along)] : [];
      })
      .sort((a, b) => a - b);
    for (let k = 0; k + 1 < hits.length; k += 2)
      lines.push({ kind: 'line', from: addScaled(foot, along, hits[k]!), to: addScaled(foot, along, hits[k + 1]!) });
  }
  return lines;
}
