import type { ModelMesh } from './modelParts.ts';
import { nearestOnTriangle } from './nearestOnTriangle.ts';

/** What is left of a mesh: numbers of its vertices, and triangles of them with their faces. */
export interface ThinnedMesh {
  /** The mesh's own number of each vertex that is left. */
  readonly vertices: Uint32Array;
  readonly indices: Uint32Array<ArrayBuffer>;
  readonly faces: ModelMesh['faces'];
}

/** Furthest that a place of the surface may move in any pose, mm: half of what a file may differ from the report by. */
const FURTHEST = 0.05;

/** Share of a shift on the pattern that counts like one in space: a texture may be off by ten times as much. */
const TEXTURE = 0.1;

/** Cosine up to which normals of corners at one place are one normal. */
const SAME_NORMAL = 0.995;

/** Doubled area below which a triangle has no side, mm2. */
const NO_AREA = 1e-7;

/** Least cosine by which a triangle keeps its side in a pose, and agrees with the normals that it is shaded by. */
const LEAST_AGREEMENT = 0.5;

type Triple = [number, number, number];

/** Passes over all points: each can take the neighbours of what the one before took. */
const PASSES = 6;

/**
 * Takes away the vertices that a surface does not need, by collapse of half edges: the surface through those left keeps
 * within 0.05 mm of every vertex taken away, in every pose given, and its texture within 0.5 mm. Edges between faces and
 * the outline of each face are kept by the same bound.
 *
 * A vertex is one point in the space of all poses; how far a vertex taken away lies off is measured at the nearest point
 * there, as the largest shift in any one pose, and what was shifted before is added. Triangles without area in the first pose, rounded to `step`, go first, at
 * whatever shift on the surface itself; one that cannot is left out, which opens a seam without width in that pose.
 * @param poses positions of all vertices, mm; the first is that of the file at rest
 * @param step of the coordinates of the file, mm
 */
export function thinnedMesh(mesh: ModelMesh, poses: readonly Float32Array[], step: number): ThinnedMesh {
  const count = mesh.positions.length / 3;
  const faceOf = new Uint8Array(mesh.indices.length / 3);
  for (const [face, { start, count }] of mesh.faces.entries()) faceOf.fill(face, start / 3, (start + count) / 3);
  const { pointOf, vertexOf } = welded(mesh, poses, faceOf);
  const corners = mesh.indices.map((vertex) => vertexOf[vertex]!);
  const size = 3 * poses.length + 2;
  const places = new Float64Array(count * size);
  const rounded = new Float64Array(3 * count);
  for (let v = 0; v < count; v++) {
    poses.forEach((pose, k) => {
      places.set(pose.subarray(3 * v, 3 * v + 3), v * size + 3 * k);
    });
    places.set([TEXTURE * mesh.uvs[2 * v]!, TEXTURE * mesh.uvs[2 * v + 1]!], (v + 1) * size - 2);
    for (let k = 0; k < 3; k++) rounded[3 * v + k] = Math.round(poses[0]![3 * v + k]! / step);
  }

  const around: number[][] = Array.from({ length: count }, () => []);
  const verticesAt = new Map<number, number[]>();
  /** How far what was there may lie off each triangle, mm: the sum of all collapses that made it. */
  const shifts = new Float64Array(faceOf.length);
  const gone = new Uint8Array(faceOf.length);
  const corner = (t: number, k: number): number => corners[3 * t + k]!;
  const hasPoint = (t: number, p: number): boolean => pointAt(t, 0) === p || pointAt(t, 1) === p || pointAt(t, 2) === p;
  const cornersOf = (t: number): Triple => [corner(t, 0), corner(t, 1), corner(t, 2)];
  const pointAt = (t: number, k: number): number => pointOf[corner(t, k)]!;
  for (let t = 0; t < faceOf.length; t++) {
    const [a, b, c] = [pointAt(t, 0), pointAt(t, 1), pointAt(t, 2)];
    if (a === b || b === c || c === a) gone[t] = 1;
    else for (let k = 0; k < 3; k++) around[corner(t, k)]!.push(t);
  }
  for (let v = 0; v < count; v++) {
    if (around[v]!.length === 0) continue;
    const there = verticesAt.get(pointOf[v]!);
    if (there === undefined) verticesAt.set(pointOf[v]!, [v]);
    else there.push(v);
  }

  const trianglesAt = (point: number): readonly number[] => {
    const there = verticesAt.get(point) ?? [];
    return there.length === 1 ? around[there[0]!]! : there.flatMap((v) => around[v]!);
  };
  const neighbours = (triangles: readonly number[]): Set<number> => {
    const found = new Set<number>();
    for (const t of triangles) for (let k = 0; k < 3; k++) found.add(pointAt(t, k));
    return found;
  };
  /** Doubled area of a triangle on the file's own grid; whole numbers, so that 0 is exact. */
  const gridArea = (a: number, b: number, c: number): number => length(crossOf(rounded, a, b, c, 3, 0));

  const normalOf = (v: number): Triple => [mesh.normals[3 * v]!, mesh.normals[3 * v + 1]!, mesh.normals[3 * v + 2]!];

  /** Least cosine between a triangle's own normal and those of its corners; 1 for one without area. */
  const agreement = (normal: Triple, ...at: Triple): number =>
    Math.min(cosine(normal, normalOf(at[0])), cosine(normal, normalOf(at[1])), cosine(normal, normalOf(at[2])));

  interface Collapse {
    readonly to: ReadonlyMap<number, number>;
    readonly removed: readonly number[];
    readonly moved: readonly number[];
    readonly shift: number;
  }

  /** How point `p` would go to its neighbour `q`; null where it may not, or would shift more than `most`. */
  const collapse = (p: number, q: number, most: number): Collapse | null => {
    const triangles = trianglesAt(p);
    const removed = triangles.filter((t) => hasPoint(t, q));
    const moved = triangles.filter((t) => !hasPoint(t, q));
    if (removed.length === 0 || moved.length === 0) return null;
    const to = new Map<number, number>();
    for (const v of verticesAt.get(p)!) {
      const beside = around[v]!.find((t) => hasPoint(t, q));
      if (beside === undefined) return null;
      to.set(v, corner(beside, [0, 1, 2].find((k) => pointAt(beside, k) === q)!));
      if (around[v]!.every((t) => hasPoint(t, q))) return null;
    }
    // Where they share more neighbours than triangles, two sheets would be sewn together.
    const besideP = neighbours(triangles);
    let shared = 0;
    for (const point of neighbours(trianglesAt(q))) if (point !== p && point !== q && besideP.has(point)) shared++;
    if (shared !== removed.length) return null;
    const after = (t: number, k: number): number => to.get(corner(t, k)) ?? corner(t, k);
    for (const t of moved) {
      const [a, b, c] = [after(t, 0), after(t, 1), after(t, 2)];
      if (gridArea(a, b, c) === 0 && gridArea(...cornersOf(t)) > 0) return null;
      for (let k = 0; k < poses.length; k++) {
        const now = crossOf(places, a, b, c, size, 3 * k);
        const was = crossOf(places, ...cornersOf(t), size, 3 * k);
        if (cosine(now, was) < LEAST_AGREEMENT) return null;
        if (k === 0 && agreement(now, a, b, c) < Math.min(LEAST_AGREEMENT, agreement(was, ...cornersOf(t))))
          return null;
      }
    }
    let furthest = 0;
    for (const v of to.keys()) {
      let nearest = Number.POSITIVE_INFINITY;
      for (const t of moved)
        if (faceOf[t] === faceOf[around[v]![0]!])
          nearest = Math.min(nearest, nearestOnTriangle(places, size, v, after(t, 0), after(t, 1), after(t, 2)));
      furthest = Math.max(furthest, nearest);
    }
    furthest += Math.max(...triangles.map((t) => shifts[t]!));
    if (furthest > most) return null;
    return { to, removed, moved, shift: furthest };
  };

  const perform = (p: number, { to, removed, moved, shift }: Collapse): void => {
    for (const t of removed) {
      gone[t] = 1;
      for (let k = 0; k < 3; k++) around[corner(t, k)] = around[corner(t, k)]!.filter((other) => other !== t);
    }
    for (const t of moved) {
      shifts[t] = shift;
      for (let k = 0; k < 3; k++) {
        const next = to.get(corner(t, k));
        if (next === undefined) continue;
        corners[3 * t + k] = next;
        around[next]!.push(t);
      }
    }
    for (const v of to.keys()) around[v] = [];
    verticesAt.delete(p);
  };

  /** Takes a point away along the best of its edges; false where none will do. */
  const takeAway = (p: number, targets: Iterable<number>, most: number): boolean => {
    let best: Collapse | null = null;
    for (const q of targets) {
      if (q === p) continue;
      const found = collapse(p, q, best?.shift ?? most);
      if (found !== null && (best === null || found.shift < best.shift)) best = found;
      if (best?.shift === 0) break;
    }
    if (best !== null) perform(p, best);
    return best !== null;
  };

  const flattenDegenerate = (): void => {
    for (let again = true; again; ) {
      again = false;
      for (let t = 0; t < faceOf.length; t++) {
        if (gone[t] || gridArea(...cornersOf(t)) > 0) continue;
        const own = [pointAt(t, 0), pointAt(t, 1), pointAt(t, 2)];
        if (own.some((p) => takeAway(p, own, Number.POSITIVE_INFINITY))) again = true;
      }
    }
  };
  flattenDegenerate();
  let changed: ReadonlySet<number> = new Set(verticesAt.keys());
  for (let pass = 0; pass < PASSES && changed.size > 0; pass++) {
    // Whether a point may go hangs on its neighbours and on theirs: where none of them changed it stays, as it did before.
    const next = new Set<number>();
    for (const p of changed) {
      if (!verticesAt.has(p)) continue;
      const beside = neighbours(trianglesAt(p));
      if (!takeAway(p, beside, FURTHEST)) continue;
      for (const q of beside) for (const r of neighbours(trianglesAt(q))) next.add(r);
    }
    changed = next;
  }
  flattenDegenerate();
  return compact(mesh, corners, (t) => !gone[t] && gridArea(...cornersOf(t)) > 0);
}

/**
 * Points of the surface, by the vertices that lie on one another in every pose; and for each vertex the one that stands
 * for it, which has its face, texture and, nearly, its normal.
 */
function welded({ uvs, normals, indices }: ModelMesh, poses: readonly Float32Array[], faceOf: Uint8Array) {
  const count = uvs.length / 2;
  const faces = new Uint8Array(count);
  indices.forEach((vertex, i) => {
    faces[vertex] = faceOf[Math.floor(i / 3)]!;
  });
  const pointOf = new Uint32Array(count);
  const vertexOf = new Uint32Array(count);
  const points = new Map<string, number[]>();
  for (let v = 0; v < count; v++) {
    const key = poses.map((pose) => pose.subarray(3 * v, 3 * v + 3).join()).join();
    const there = points.get(key);
    pointOf[v] = there?.[0] ?? v;
    if (there === undefined) points.set(key, [v]);
    const dot = (a: number): number =>
      normals[3 * a]! * normals[3 * v]! +
      normals[3 * a + 1]! * normals[3 * v + 1]! +
      normals[3 * a + 2]! * normals[3 * v + 2]!;
    const own = there?.find(
      (a) =>
        faces[a] === faces[v] &&
        Math.hypot(uvs[2 * a]! - uvs[2 * v]!, uvs[2 * a + 1]! - uvs[2 * v + 1]!) < FURTHEST &&
        dot(a) > SAME_NORMAL,
    );
    vertexOf[v] = own ?? v;
    if (own === undefined) there?.push(v);
  }
  return { pointOf, vertexOf };
}

/** Cross product of two edges of a triangle, in three of the coordinates of its corners. */
function crossOf(places: Float64Array, a: number, b: number, c: number, size: number, at: number): Triple {
  const edge = (to: number, k: number): number => places[to * size + at + k]! - places[a * size + at + k]!;
  return [
    edge(b, 1) * edge(c, 2) - edge(b, 2) * edge(c, 1),
    edge(b, 2) * edge(c, 0) - edge(b, 0) * edge(c, 2),
    edge(b, 0) * edge(c, 1) - edge(b, 1) * edge(c, 0),
  ];
}

/** `Math.hypot` takes several times as long, and nothing here is near the ends of the range. */
const length = ([x, y, z]: Triple): number => Math.sqrt(x * x + y * y + z * z);

/** Cosine between two normals; 1 where one is that of a triangle without area. */
function cosine(a: Triple, b: Triple): number {
  const lengths = length(a) * length(b);
  return lengths < NO_AREA ? 1 : (a[0] * b[0] + a[1] * b[1] + a[2] * b[2]) / lengths;
}

/** The triangles that are left, face by face, with vertices numbered as they come. */
function compact({ faces }: ModelMesh, corners: Uint32Array, isLeft: (triangle: number) => boolean): ThinnedMesh {
  const numbers = new Map<number, number>();
  const indices: number[] = [];
  const runs = faces.map(({ face, start, count }) => {
    const from = indices.length;
    for (let t = start / 3; t < (start + count) / 3; t++) {
      if (!isLeft(t)) continue;
      for (const vertex of corners.subarray(3 * t, 3 * t + 3)) {
        const number = numbers.get(vertex) ?? numbers.size;
        numbers.set(vertex, number);
        indices.push(number);
      }
    }
    return { face, start: from, count: indices.length - from };
  });
  return {
    vertices: Uint32Array.from(numbers.keys()),
    indices: Uint32Array.from(indices),
    faces: runs.filter(({ count }) => count > 0),
  };
}
