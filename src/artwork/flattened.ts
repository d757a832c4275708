import type { Vec2 } from '../core/index.ts';

/**
 * The points of a Bezier curve of second or third degree after its first, so close that no chord strays farther from the curve
 * than `tolerance`.
 *
 * n equal steps of the parameter suffice for n^2 >= d (d - 1) / (8 tolerance) times the largest second difference of the control
 * points, d being the degree (Wang's formula; Goldman, Pyramid Algorithms, 2003, 5.6.3, citing Wang 1984).
 * @param control 3 or 4 control points
 * @param most steps at most, where the numbers are huge
 */
export function flattened(control: readonly Vec2[], tolerance: number, most = 1000): Vec2[] {
  const degree = control.length - 1;
  let bend = 0;
  for (let i = 2; i <= degree; i++) {
    const [a, b, c] = [control[i - 2]!, control[i - 1]!, control[i]!];
    bend = Math.max(bend, Math.hypot(a[0] - 2 * b[0] + c[0], a[1] - 2 * b[1] + c[1]));
  }
  const wanted = Math.ceil(Math.sqrt((degree * (degree - 1) * bend) / (8 * tolerance)));
  const steps = Math.max(1, Math.min(most, wanted));
  return Array.from({ length: steps }, (_, i) =>
    i === steps - 1 ? control[degree]! : pointAt(control, (i + 1) / steps),
  );
}

/** The point of a Bezier curve at a parameter, by de Casteljau's construction. */
function pointAt(control: readonly Vec2[], t: number): Vec2 {
  let points = control;
  while (points.length > 1)
    points = points.slice(1).map(([x, y], i): Vec2 => {
      const [fromX, fromY] = points[i]!;
      return [fromX + t * (x - fromX), fromY + t * (y - fromY)];
    });
  return points[0]!;
}
