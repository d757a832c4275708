import type { Vec2 } from '../../math/vec2.ts';
import { combine3, cross3, dot3, unit3, type Vec3 } from '../../math/vec3.ts';
import type { MeshData } from '../meshData.ts';

/** A place to build on: `up` out of the surface, `way` and `side` in it; way, side, up are right-handed unit vectors. */
export interface Stand {
  readonly at: Vec3;
  readonly way: Vec3;
  readonly side: Vec3;
  readonly up: Vec3;
}

/** A place given along the directions of a stand, mm. */
export const onStand = ({ at, way, side, up }: Stand, [a, b, c]: Vec3): Vec3 =>
  combine3(combine3(at, 1, way, a), 1, combine3(side, b, up, c), 1);

/** Sides of a turned body and of a wire. */
const SEGMENTS = 20;
const WIRE_SIDES = 8;
/** Two faces of a profile that turn by less than this are shaded as one, radians. */
const CREASE = 0.7;

/** Gathers closed solids of metal into one mesh. */
export class MetalSolid {
  readonly #positions: number[] = [];
  readonly #normals: number[] = [];
  readonly #indices: number[] = [];

  #point(at: Vec3, normal: Vec3): number {
    this.#positions.push(...at);
    this.#normals.push(...normal);
    return this.#positions.length / 3 - 1;
  }

  #triangle(a: number, b: number, c: number): void {
    this.#indices.push(a, b, c);
  }

  /**
   * A body turned about `up`.
   * @param profile distance from the axis and height, from the axis round to the axis again, the body on its left
   */
  turned(stand: Stand, profile: readonly Vec2[]): void {
    const ways = profile.slice(1).map((to, i): Vec2 => [to[0] - profile[i]![0], to[1] - profile[i]![1]]);
    const outward = ways.map(([dr, dc]): Vec2 => [dc / Math.hypot(dr, dc), -dr / Math.hypot(dr, dc)]);
    const ring = ([r, c]: Vec2, [nr, nc]: Vec2): number[] =>
      Array.from({ length: r === 0 ? 1 : SEGMENTS }, (_, k) => {
        const angle = (2 * Math.PI * k) / SEGMENTS;
        const [x, y] = [Math.cos(angle), Math.sin(angle)];
        const normal = r === 0 ? stand.up : combine3(combine3(stand.way, x * nr, stand.side, y * nr), 1, stand.up, nc);
        return this.#point(
          onStand(stand, [r * x, r * y, c]),
          r === 0 ? combine3(stand.up, Math.sign(nc), stand.up, 0) : unit3(normal),
        );
      });
    ways.forEach((_, i) => {
      const own = outward[i]!;
      const shade = (other: Vec2 | undefined): Vec2 =>
        other !== undefined && Math.acos(Math.min(1, own[0] * other[0] + own[1] * other[1])) < CREASE
          ? [own[0] + other[0], own[1] + other[1]]
          : own;
      const low = ring(profile[i]!, shade(outward[i - 1]));
      const high = ring(profile[i + 1]!, shade(outward[i + 1]));
      for (let k = 0; k < SEGMENTS; k++) {
        const next = (k + 1) % SEGMENTS;
        const [a, b] = [low[k % low.length]!, low[next % low.length]!];
        const [c, d] = [high[next % high.length]!, high[k % high.length]!];
        if (low.length > 1) this.#triangle(a, b, high.length > 1 ? c : d);
        if (high.length > 1) this.#triangle(a, c, d);
      }
    });
  }

  /** A round wire along a line of the plane square to `normal`, mitred at its corners; joined to a ring where it is closed. */
  wire(line: readonly Vec3[], normal: Vec3, radius: number, isClosed: boolean): void {
    const count = line.length;
    const way = (from: number, to: number): Vec3 => unit3(combine3(line[to]!, 1, line[from]!, -1));
    const rings = line.map((at, i) => {
      const before = isClosed || i > 0 ? way((i + count - 1) % count, i) : way(i, i + 1);
      const after = isClosed || i + 1 < count ? way(i, (i + 1) % count) : before;
      const along = unit3(combine3(before, 1, after, 1));
      const beside = cross3(normal, along);
      const mitre = 1 / Math.max(0.3, dot3(along, after));
      return Array.from({ length: WIRE_SIDES }, (_, k) => {
        const angle = (2 * Math.PI * k) / WIRE_SIDES;
        const round = combine3(beside, Math.cos(angle), normal, Math.sin(angle));
        return this.#point(
          combine3(at, 1, combine3(beside, mitre * Math.cos(angle), normal, Math.sin(angle)), radius),
          round,
        );
      });
    });
    // Seen along the wire the rings run clockwise: beside, normal, along is left-handed.
    const band = (from: readonly number[], to: readonly number[]): void => {
      for (let k = 0; k < WIRE_SIDES; k++) {
        const next = (k + 1) % WIRE_SIDES;
        this.#triangle(from[k]!, to[next]!, to[k]!);
        this.#triangle(from[k]!, from[next]!, to[next]!);
      }
    };
    rings.forEach((ring, i) => {
      const next = rings[i + 1] ?? (isClosed ? rings[0] : undefined);
      if (next !== undefined) band(ring, next);
    });
    if (isClosed) return;
    const cap = (i: number, outward: Vec3, isEnd: boolean): void => {
      const corners = Array.from({ length: WIRE_SIDES }, (_, k) => {
        const from = 3 * rings[i]![k]!;
        return this.#point([this.#positions[from]!, this.#positions[from + 1]!, this.#positions[from + 2]!], outward);
      });
      for (let k = 1; k + 1 < WIRE_SIDES; k++)
        if (isEnd) this.#triangle(corners[0]!, corners[k]!, corners[k + 1]!);
        else this.#triangle(corners[0]!, corners[k + 1]!, corners[k]!);
    };
    cap(0, combine3(way(0, 1), -1, way(0, 1), 0), false);
    cap(count - 1, way(count - 2, count - 1), true);
  }

  /** The solids gathered so far. */
  mesh(): MeshData {
    return {
      part: 'fastening',
      positions: new Float32Array(this.#positions),
      normals: new Float32Array(this.#normals),
      uvs: new Float32Array((this.#positions.length / 3) * 2),
      indices: new Uint32Array(this.#indices),
      faces: [{ face: 'metal', start: 0, count: this.#indices.length }],
    };
  }
}
