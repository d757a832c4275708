import type { FoldedHole } from '../meshData.ts';
import { laidStrands, type Strand } from './laidStrands.ts';
import type { SeamCourse, StrandCourse } from './seamCourse.ts';

/** Triangles of thread or lace, all strands in one; lengths in mm. */
export interface SeamMesh {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** Two per vertex, mm: across the strand, and along it. */
  readonly uvs: Float32Array;
  /** In the needle's order. */
  readonly indices: Uint32Array;
}

/** `fine` for a close look; `coarse` for slow machines and files: what lies hidden is left out, and lace has no underside. */
export type StrandDetail = 'fine' | 'coarse';

/** Strands to be swept along any position of their seam. */
export interface StrandSweep {
  readonly uvs: Float32Array;
  readonly indices: Uint32Array;
  /** Number of indices that show what is worked after each move of the needle, from none on. */
  readonly shownAfter: Uint32Array;
  lay(seam: readonly FoldedHole[]): Pick<SeamMesh, 'positions' | 'normals'>;
}

/** One corner of a cross-section: place in half widths and half thicknesses, and its normal. */
interface Rim {
  readonly across: number;
  readonly up: number;
  readonly normal: readonly [across: number, up: number];
}

interface SectionShape {
  readonly rims: readonly Rim[];
  /** Rims that a face joins, counterclockwise as seen against the strand's way. */
  readonly sides: readonly (readonly [number, number])[];
  /** Whether its borders go on where the strand turns back on itself; without an underside it begins anew. */
  readonly goesOn: boolean;
}

const round = (count: number): SectionShape => {
  const rims = Array.from({ length: count }, (_, i): Rim => {
    const angle = (2 * Math.PI * (i + 0.5)) / count + Math.PI / 2;
    const [across, up] = [Math.cos(angle), Math.sin(angle)];
    return { across, up, normal: [across, up] };
  });
  return { rims, sides: rims.map((_, i) => [i, (i + 1) % count] as const), goesOn: true };
};

/** How much the faces of lace round off toward their borders, as a share of the normal. Judged by eye. */
const ROUNDED = 0.4;

const corner = (across: number, up: number, [a, u]: readonly [number, number]): Rim => ({
  across,
  up,
  normal: [a / Math.hypot(a, u), u / Math.hypot(a, u)],
});

/** A rectangle with crisp borders. */
const FLAT: SectionShape = {
  rims: [
    corner(1, 1, [ROUNDED, 1]),
    corner(-1, 1, [-ROUNDED, 1]),
    corner(-1, 1, [-1, 0]),
    corner(-1, -1, [-1, 0]),
    corner(-1, -1, [-ROUNDED, -1]),
    corner(1, -1, [ROUNDED, -1]),
    corner(1, -1, [1, 0]),
    corner(1, 1, [1, 0]),
  ],
  sides: [
    [0, 1],
    [2, 3],
    [4, 5],
    [6, 7],
  ],
  goesOn: true,
};

/** A low roof without an underside. */
const ROOF: SectionShape = {
  rims: [corner(1, 0.4, [ROUNDED, 1]), corner(0, 1, [0, 1]), corner(-1, 0.4, [-ROUNDED, 1])],
  sides: [
    [0, 1],
    [1, 2],
  ],
  goesOn: false,
};

const SHAPES = {
  round: { fine: round(6), coarse: round(3) },
  flat: { fine: FLAT, coarse: ROOF },
  needle: { fine: round(8), coarse: round(3) },
} as const;

/** How far a left-out knot may lie off the way without it, mm. */
const TOLERANCES: Readonly<Record<StrandDetail, number>> = { fine: 0.03, coarse: 0.3 };

/**
 * Prepares the strands of a seam for drawing in any position: which knots are drawn, and the triangles between them.
 * `lay` then gives the vertices of one position.
 */
export function strandSweep(course: SeamCourse, detail: StrandDetail): StrandSweep {
  const { section } = course;
  const shape = SHAPES[section.kind][detail];
  const drawn = { ...course, strands: course.strands.map((strand) => drawnKnots(strand, detail)) };
  const size = shape.rims.length;
  const count = size * drawn.strands.reduce((sum, { knots }) => sum + knots.length, 0);
  const uvs = new Float32Array(2 * count);
  const segments: { readonly at: number; readonly move: number }[] = [];
  let vertex = 0;
  for (const { knots, row, starts } of drawn.strands) {
    let along = 0;
    knots.forEach((knot, k) => {
      const before = knots[k - 1];
      if (before) along += Math.hypot((knot.u - before.u) * row.pitch, knot.y - before.y, knot.z - before.z);
      if (before && !starts.has(k)) segments.push({ at: vertex, move: knot.move });
      for (const { across } of shape.rims) {
        uvs[2 * vertex] = (across * section.width) / 2;
        uvs[2 * vertex + 1] = along;
        vertex++;
      }
    });
  }
  segments.sort((a, b) => a.move - b.move);
  const indices = new Uint32Array(6 * segments.length * shape.sides.length);
  const shownAfter = new Uint32Array(course.moves + 1);
  let n = 0;
  for (const { at, move } of segments) {
    for (const [p, q] of shape.sides) {
      const [a, b, c, d] = [at - size + p, at - size + q, at + p, at + q];
      indices[n] = indices[n + 3] = a;
      indices[n + 1] = indices[n + 5] = d;
      indices[n + 2] = b;
      indices[n + 4] = c;
      n += 6;
    }
    shownAfter[move] = n;
  }
  for (let move = 1; move <= course.moves; move++)
    shownAfter[move] = Math.max(shownAfter[move]!, shownAfter[move - 1]!);
  return {
    uvs,
    indices,
    shownAfter,
    lay(seam) {
      const laid = { positions: new Float32Array(3 * count), normals: new Float32Array(3 * count) };
      let first = 0;
      laidStrands(drawn, seam).forEach((strand, i) => {
        sweep(strand, drawn.strands[i]!.starts, shape, laid, first);
        first += size * strand.points.length;
      });
      return laid;
    },
  };
}

/** Lays the rings of a strand, from a place in the lists of coordinates on. */
function sweep(
  { points, outward, section }: Strand,
  starts: ReadonlySet<number>,
  { rims, goesOn }: SectionShape,
  { positions, normals }: Pick<SeamMesh, 'positions' | 'normals'>,
  first: number,
): void {
  let v = first;
  let [px, py, pz] = [0, 0, 0];
  const last = points.length - 3;
  for (let at = 0; at <= last; at += 3) {
    // Tangent: the mean of the ways to here and from here.
    let [tx, ty, tz] = [0, 0, 0];
    for (let p = Math.max(0, at - 3); p < at + 3 && p < last; p += 3) {
      if (starts.has(p / 3 + 1)) continue;
      const dx = points[p + 3]! - points[p]!;
      const dy = points[p + 4]! - points[p + 1]!;
      const dz = points[p + 5]! - points[p + 2]!;
      const scale = 1 / (Math.sqrt(dx * dx + dy * dy + dz * dz) || 1);
      tx += scale * dx;
      ty += scale * dy;
      tz += scale * dz;
    }
    const [nx, ny, nz] = [outward[at]!, outward[at + 1]!, outward[at + 2]!];
    let sx = ty * nz - tz * ny;
    let sy = tz * nx - tx * nz;
    let sz = tx * ny - ty * nx;
    const wide = Math.sqrt(sx * sx + sy * sy + sz * sz);
    const isLost = wide < 1e-6;
    // A strand that turns back on itself shows its other face: its borders go on.
    const scale = (goesOn && !starts.has(at / 3) && px * sx + py * sy + pz * sz < 0 ? -1 : 1) / wide;
    sx = isLost ? px : scale * sx;
    sy = isLost ? py : scale * sy;
    sz = isLost ? pz : scale * sz;
    [px, py, pz] = [sx, sy, sz];
    let ux = sy * tz - sz * ty;
    let uy = sz * tx - sx * tz;
    let uz = sx * ty - sy * tx;
    const high = Math.sqrt(ux * ux + uy * uy + uz * uz) || 1;
    ux /= high;
    uy /= high;
    uz /= high;
    const size = section.kind === 'needle' && at === last ? 0.1 : 1;
    for (let r = 0; r < rims.length; r++) {
      const { across, up, normal } = rims[r]!;
      const w = (across * size * section.width) / 2;
      const h = (up * size * section.thickness) / 2;
      positions[v] = points[at]! + w * sx + h * ux;
      positions[v + 1] = points[at + 1]! + w * sy + h * uy;
      positions[v + 2] = points[at + 2]! + w * sz + h * uz;
      normals[v] = normal[0] * sx + normal[1] * ux;
      normals[v + 1] = normal[0] * sy + normal[1] * uy;
      normals[v + 2] = normal[0] * sz + normal[1] * uz;
      v += 3;
    }
  }
}

/** The knots of a strand that are drawn, and where a run of them starts. */
interface DrawnStrand extends StrandCourse {
  readonly starts: ReadonlySet<number>;
}

/**
 * The knots that are drawn, by Douglas and Peucker (Cartographica 10, 1973), in the measure of the flat seam. The middle of
 * a stitch stays: the seam may bend there. Coarse strands are drawn in runs, without what lies inside.
 */
function drawnKnots({ row, knots }: StrandCourse, detail: StrandDetail): DrawnStrand {
  const tolerance = TOLERANCES[detail];
  const isLeftOut = (i: number): boolean => detail === 'coarse' && knots[i]!.isInside;
  const isFixed = (i: number): boolean => {
    const [knot, next] = [knots[i]!, knots[i + 1]];
    if (i === 0 || next === undefined || isLeftOut(i) || isLeftOut(i - 1) || isLeftOut(i + 1)) return true;
    return knot.move !== next.move || knot.u - Math.floor(knot.u) === 0.5;
  };
  const isKept = knots.map((_, i) => isFixed(i));
  const split = (a: number, b: number): void => {
    const [q, r] = [knots[a]!, knots[b]!];
    const [wu, wy, wz] = [(r.u - q.u) * row.pitch, r.y - q.y, r.z - q.z];
    const squared = wu * wu + wy * wy + wz * wz || 1;
    let [worst, far] = [-1, tolerance];
    for (let i = a + 1; i < b; i++) {
      const p = knots[i]!;
      const [tu, ty, tz] = [(p.u - q.u) * row.pitch, p.y - q.y, p.z - q.z];
      const share = Math.max(0, Math.min(1, (wu * tu + wy * ty + wz * tz) / squared));
      const [du, dy, dz] = [tu - share * wu, ty - share * wy, tz - share * wz];
      const off = Math.sqrt(du * du + dy * dy + dz * dz);
      if (off > far) [worst, far] = [i, off];
    }
    if (worst < 0) return;
    isKept[worst] = true;
    split(a, worst);
    split(worst, b);
  };
  const fixed = knots.flatMap((_, i) => (isKept[i] ? [i] : []));
  for (let k = 1; k < fixed.length; k++) split(fixed[k - 1]!, fixed[k]!);
  const kept = knots.flatMap((_, i) => (isKept[i] && !isLeftOut(i) ? [i] : []));
  const starts = new Set(kept.flatMap((i, k) => (i === 0 || isLeftOut(i - 1) ? [k] : [])));
  return { row, knots: kept.map((i) => knots[i]!), starts };
}
