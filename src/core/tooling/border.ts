import type { ToolingDesign } from '../job/toolingSchema.ts';
import type { Box2 } from '../math/box2.ts';
import { type Contour, corneredContour, flattened, type Segment } from '../math/contour.ts';
import { SQUARE } from '../math/corner.ts';
import type { Vec2 } from '../math/vec2.ts';

type Border = Extract<ToolingDesign, { kind: 'border' }>;

/** How far the chords of a line may stray from its curve, mm. */
const CHORD = 0.005;

/**
 * The lines of a border round the clear part of an area, each closed, outer line first; a line that has no room is left out.
 *
 * The inner line runs parallel to the outer one at the gap: its radius is smaller by the gap, its notch as large.
 */
export function borderLines({ lines, corners, inset_mm, gap_mm, corner_mm }: Border, clear: Box2): Vec2[][] {
  return [0, gap_mm].slice(0, lines).flatMap((inward) => {
    const inset = inset_mm + inward;
    const [x, X, y, Y] = [clear.x[0] + inset, clear.x[1] - inset, clear.y[0] + inset, clear.y[1] - inset];
    const corner = corners === 'square' ? 0 : corners === 'rounded' ? Math.max(0, corner_mm - inward) : corner_mm;
    if (X - x <= 2 * corner || Y - y <= 2 * corner || X <= x || Y <= y) return [];
    return [flattened(corners === 'notched' ? notched(x, X, y, Y, corner) : rounded(x, X, y, Y, corner), CHORD)];
  });
}

function rounded(x: number, X: number, y: number, Y: number, size: number): Contour {
  const corner = size === 0 ? SQUARE : ({ style: 'rounded', size } as const);
  return corneredContour(
    (
      [
        [x, y],
        [X, y],
        [X, Y],
        [x, Y],
      ] as const
    ).map((at) => ({ at, corner })),
  );
}

/** A rectangle with a square of side `c` taken out of each corner. */
function notched(x: number, X: number, y: number, Y: number, c: number): Contour {
  const points: Vec2[] = [
    [x + c, y],
    [X - c, y],
    [X - c, y + c],
    [X, y + c],
    [X, Y - c],
    [X - c, Y - c],
    [X - c, Y],
    [x + c, Y],
    [x + c, Y - c],
    [x, Y - c],
    [x, y + c],
    [x + c, y + c],
  ];
  return points.map((from, i): Segment => ({ kind: 'line', from, to: points[(i + 1) % points.length]! }));
}
