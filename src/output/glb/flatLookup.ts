/** A point counts as inside a triangle when no barycentric share is lower: floating-point noise. */
const INSIDE = -1e-6;

/** Triangles on the flat pattern with a smaller doubled area, mm2, are skipped. */
const NO_AREA = 1e-9;

/** A point as shares of a triangle's corners. */
export interface FlatPlace {
  readonly corners: readonly [number, number, number];
  readonly shares: readonly [number, number, number];
}

/**
 * Finds points of a surface by their place on the flat pattern, through bins of few triangles each.
 * @param uvs two per vertex, mm
 * @param indices the triangles of one face; on the pattern they may not overlap
 * @returns a function from a point to its triangle and barycentric shares; beside the surface, to the triangle that the
 *   point is least outside of; null where there is no triangle
 */
export function flatLookup(uvs: Float32Array, indices: Uint32Array): (u: number, v: number) => FlatPlace | null {
  const corner = (i: number): readonly [number, number] => [uvs[2 * indices[i]!]!, uvs[2 * indices[i]! + 1]!];
  const count = indices.length / 3;
  const perSide = Math.max(1, Math.ceil(Math.sqrt(count)));
  const columnOf = evenBins(
    Float64Array.from(indices, (vertex) => uvs[2 * vertex]!),
    perSide,
  );
  const rowOf = evenBins(
    Float64Array.from(indices, (vertex) => uvs[2 * vertex + 1]!),
    perSide,
  );
  const bins = new Map<number, number[]>();
  for (let t = 0; t < count; t++) {
    const [[au, av], [bu, bv], [cu, cv]] = [corner(3 * t), corner(3 * t + 1), corner(3 * t + 2)];
    const columns = [au, bu, cu].map(columnOf);
    const rows = [av, bv, cv].map(rowOf);
    for (let i = Math.min(...columns); i <= Math.max(...columns); i++)
      for (let j = Math.min(...rows); j <= Math.max(...rows); j++) {
        const bin = bins.get(i * perSide + j);
        if (bin === undefined) bins.set(i * perSide + j, [t]);
        else bin.push(t);
      }
  }

  return (u, v) => {
    const [column, row] = [columnOf(u), rowOf(v)];
    let best: FlatPlace | null = null;
    let least = Number.NEGATIVE_INFINITY;
    // Goes past the neighbouring bins only while nothing is found: a coarse mesh can leave bins beside a fine one
    // empty.
    for (let reach = 0; reach <= perSide && (reach <= 1 || best === null); reach++)
      for (let i = column - reach; i <= column + reach; i++)
        for (let j = row - reach; j <= row + reach; j++)
          for (const t of bins.get(i * perSide + j) ?? []) {
            const shares = barycentric([u, v], corner(3 * t), corner(3 * t + 1), corner(3 * t + 2));
            if (shares === null || Math.min(...shares) <= least) continue;
            least = Math.min(...shares);
            best = { corners: [indices[3 * t]!, indices[3 * t + 1]!, indices[3 * t + 2]!], shares };
            if (least >= INSIDE) return best;
          }
    return best;
  };
}

/** Bins of about equally many values, narrow where a mesh is fine. Returns the bin of a value, 0 to count - 1. */
function evenBins(values: Float64Array, count: number): (value: number) => number {
  const sorted = values.sort();
  const bounds = Float64Array.from(
    { length: count - 1 },
    (_, i) => sorted[Math.floor(((i + 1) * sorted.length) / count)]!,
  );
  return (value) => {
    let [from, to] = [0, bounds.length];
    while (from < to) {
      const middle = (from + to) >> 1;
      if (bounds[middle]! <= value) from = middle + 1;
      else to = middle;
    }
    return from;
  };
}

type Point = readonly [number, number];

/** Shares of a, b and c in p = a x + b y + c z with x + y + z = 1; null for a triangle without area. */
function barycentric(p: Point, a: Point, b: Point, c: Point): [number, number, number] | null {
  const cross = (o: Point, q: Point, r: Point): number => (q[0] - o[0]) * (r[1] - o[1]) - (q[1] - o[1]) * (r[0] - o[0]);
  const area = cross(a, b, c);
  if (Math.abs(area) < NO_AREA) return null;
  const [x, y] = [cross(p, b, c) / area, cross(p, c, a) / area];
  return [x, y, 1 - x - y];
}
