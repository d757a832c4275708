import type { Vec2 } from '../../math/vec2.ts';
import { columnPlaces } from '../gridSolid.ts';
import type { Closure } from './closurePath.ts';
import type { FlatMesh } from './flatMesh.ts';

/** Rows across the strap: its two edges, one row inside each, and five over the square round the fastening. */
const ROWS = 9;
/** First and last row of the square. */
const [LOW, HIGH] = [2, 6];
/** Sides of the square, in columns and in rows. */
const CELLS = HIGH - LOW;
/** Spacing of columns: along the strap, where it follows the back, and about a bend on either side of it, mm. */
const APART = 6;
const ON_BACK = 2;
const FINE = 0.5;
const BESIDE = 4;
/** Turn from which bends have columns beside them too, radians: from cover to cover they move along the strap. */
const SHARP = 0.1;
/** Columns over the round of a corner. */
const CORNER_STEPS = 7;

/** The strap's flat pattern, and the points of its hole, or of the round of a hidden disc, with its middle. */
export interface StrapFlat extends FlatMesh {
  readonly ring: readonly number[];
}

/** Half the width of the strap at a distance from its end: both corners are round. */
function halfWidth({ strap: { width, corner } }: Closure, fromEnd: number): number {
  const rest = Math.max(0, corner - Math.max(0, fromEnd));
  return Math.max(0.04 * width, width / 2 - corner + Math.sqrt(Math.max(0, corner * corner - rest * rest)));
}

/** Columns along the strap, mm from its sewn end, and the first of those over the square. */
function columns(closure: Closure): { readonly at: readonly number[]; readonly first: number } {
  const { length, fastening, anchor, shape, strap, bends } = closure;
  const places = [0, anchor];
  // Where it leaves the back it bends when it is free. Bends that follow closely, as on a fold, share their columns.
  const stretches: { from: number; to: number; turn: number }[] = [];
  for (const bend of [...bends, { from: anchor, to: anchor, turn: SHARP }].sort((a, b) => a.from - b.from)) {
    const last = stretches.at(-1);
    if (last !== undefined && bend.from - FINE <= last.to + FINE) {
      last.to = Math.max(last.to, bend.to);
      last.turn += Math.abs(bend.turn);
    } else stretches.push({ ...bend, turn: Math.abs(bend.turn) });
  }
  for (const { turn, ...bend } of stretches.filter(({ turn }) => turn > 0.02)) {
    const beside = turn >= SHARP ? BESIDE : FINE;
    const [from, to] = [bend.from - beside, bend.to + beside];
    const count = Math.ceil((to - from) / FINE);
    for (let i = 0; i <= count; i++) places.push(from + ((to - from) * i) / count);
  }
  for (let i = 1; i <= CORNER_STEPS; i++)
    places.push(length - strap.corner * (1 - Math.cos((i * Math.PI) / 2 / CORNER_STEPS)));
  const clear = (at: number): boolean => Math.abs(at - fastening) > shape.square + 0.1 && at >= 0 && at < length;
  const coarse = columnPlaces(places.filter(clear), 0, length);
  const spread = coarse.flatMap((at, i) => {
    const next = coarse[i + 1];
    const parts = next === undefined ? 1 : Math.max(1, Math.ceil((next - at) / (at < anchor ? ON_BACK : APART)));
    return Array.from({ length: parts }, (_, k) => at + (((next ?? at) - at) * k) / parts);
  });
  const square = Array.from({ length: CELLS + 1 }, (_, k) => fastening + shape.square * ((2 * k) / CELLS - 1));
  const at = [...spread.filter(clear), length, ...square].sort((a, b) => a - b);
  return { at, first: at.indexOf(square[0]!) };
}

/**
 * The strap cut flat: x from its sewn end, y from its lower edge; with a hole of a radius at its fastening, or with the
 * round of a hidden disc.
 */
export function strapFlat(closure: Closure, hole: number): StrapFlat {
  const { shape, strap, length, fastening } = closure;
  const { at, first } = columns(closure);
  const middle = strap.width / 2;
  const grid: Vec2[] = at.flatMap((x): Vec2[] => {
    const half = halfWidth(closure, length - x);
    const inner = Math.min(shape.square, 0.9 * half);
    const side = [half, (half + inner) / 2, inner, inner / 2];
    return [...side.map((y) => -y), 0, ...side.toReversed()].map((y) => [x, middle + y]);
  });
  const index = (i: number, k: number): number => i * ROWS + k;
  const isWithin = (i: number, k: number): boolean => i > first && i < first + CELLS && k > LOW && k < HIGH;
  const kept = new Map<number, number>();
  const points: Vec2[] = [];
  for (let i = 0; i < at.length; i++)
    for (let k = 0; k < ROWS; k++) {
      if (isWithin(i, k)) continue;
      kept.set(index(i, k), points.length);
      points.push(grid[index(i, k)]!);
    }
  const of = (i: number, k: number): number => kept.get(index(i, k))!;
  const triangles: number[] = [];
  const quad = (a: number, b: number, c: number, d: number): void => {
    triangles.push(a, b, c, a, c, d);
  };
  for (let i = 0; i + 1 < at.length; i++)
    for (let k = 0; k + 1 < ROWS; k++) {
      if (i >= first && i < first + CELLS && k >= LOW && k < HIGH) continue;
      quad(of(i, k), of(i + 1, k), of(i + 1, k + 1), of(i, k + 1));
    }
  // Round the square counterclockwise, and the ring opposite its points.
  const steps = Array.from({ length: CELLS }, (_, k) => k);
  const square = [
    ...steps.map((k) => of(first + k, LOW)),
    ...steps.map((k) => of(first + CELLS, LOW + k)),
    ...steps.map((k) => of(first + CELLS - k, HIGH)),
    ...steps.map((k) => of(first, HIGH - k)),
  ];
  const isHole = shape.hole > 0;
  const radius = isHole ? hole : shape.radius;
  const ring = square.map((corner) => {
    const [x, y] = points[corner]!;
    const size = Math.hypot(x - fastening, y - middle);
    points.push([fastening + ((x - fastening) * radius) / size, middle + ((y - middle) * radius) / size]);
    return points.length - 1;
  });
  square.forEach((corner, k) => {
    const next = (k + 1) % square.length;
    quad(corner, square[next]!, ring[next]!, ring[k]!);
  });
  const outline = [
    ...at.map((_, i) => of(i, 0)),
    ...Array.from({ length: ROWS - 2 }, (_, k) => of(at.length - 1, k + 1)),
    ...at.map((_, i) => of(at.length - 1 - i, ROWS - 1)),
    ...Array.from({ length: ROWS - 2 }, (_, k) => of(0, ROWS - 2 - k)),
  ];
  if (isHole) return { points, triangles, loops: [outline, ring.toReversed()], ring: [] };
  points.push([fastening, middle]);
  const centre = points.length - 1;
  ring.forEach((from, k) => {
    triangles.push(from, ring[(k + 1) % ring.length]!, centre);
  });
  return { points, triangles, loops: [outline], ring: [...ring, centre] };
}
