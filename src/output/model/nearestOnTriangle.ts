/**
 * How far a point lies off a triangle in a space of many poses: at the nearest place of the triangle there, the largest
 * distance in any one pose of three coordinates (the last group may have fewer).
 * @param places coordinates of all points, `size` each
 */
export function nearestOnTriangle(
  places: Float64Array,
  size: number,
  point: number,
  a: number,
  b: number,
  c: number,
): number {
  const [p, q, r, s] = [point * size, a * size, b * size, c * size];
  let [bb, bc, cc, bp, cp] = [0, 0, 0, 0, 0];
  for (let k = 0; k < size; k++) {
    const from = places[q + k]!;
    const [x, y, z] = [places[r + k]! - from, places[s + k]! - from, places[p + k]! - from];
    bb += x * x;
    bc += x * y;
    cc += y * y;
    bp += x * z;
    cp += y * z;
  }
  const [u, v] = nearestShares(bb, bc, cc, bp, cp);
  let furthest = 0;
  for (let k = 0; k < size; k += 3) {
    let sum = 0;
    for (let i = k; i < Math.min(k + 3, size); i++) {
      const from = places[q + i]!;
      const off = places[p + i]! - from - u * (places[r + i]! - from) - v * (places[s + i]! - from);
      sum += off * off;
    }
    furthest = Math.max(furthest, sum);
  }
  return Math.sqrt(furthest);
}

/** Shares of the edges from `a` to the nearest place, from the products of both edges and the way to the point. */
function nearestShares(bb: number, bc: number, cc: number, bp: number, cp: number): [number, number] {
  const area = bb * cc - bc * bc;
  if (area > 0) {
    const [u, v] = [(cc * bp - bc * cp) / area, (bb * cp - bc * bp) / area];
    if (u >= 0 && v >= 0 && u + v <= 1) return [u, v];
  }
  const within = (value: number): number => Math.max(0, Math.min(1, value || 0));
  const alongB = within(bp / bb);
  const alongC = within(cp / cc);
  const alongFar = within((cp - bp + bb - bc) / (bb - 2 * bc + cc));
  let best: [number, number] = [0, 0];
  let least = Number.POSITIVE_INFINITY;
  for (const [u, v] of [
    [alongB, 0],
    [0, alongC],
    [1 - alongFar, alongFar],
  ] as const) {
    const squared = u * u * bb + 2 * u * v * bc + v * v * cc - 2 * (u * bp + v * cp);
    if (squared >= least) continue;
    least = squared;
    best = [u, v];
  }
  return best;
}
