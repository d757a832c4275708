import type { Vec2 } from '../../core/index.ts';

/** Affine map x' = a x + c y + e, y' = b x + d y + f, in the order of SVG's `matrix()`. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

export const translation = (x: number, y: number): Matrix => [1, 0, 0, 1, x, y];

export const scaling = (x: number, y: number): Matrix => [x, 0, 0, y, 0, 0];

/** First `inner`, then `outer`. */
export const composed = ([a, b, c, d, e, f]: Matrix, inner: Matrix): Matrix => [
  a * inner[0] + c * inner[1],
  b * inner[0] + d * inner[1],
  a * inner[2] + c * inner[3],
  b * inner[2] + d * inner[3],
  a * inner[4] + c * inner[5] + e,
  b * inner[4] + d * inner[5] + f,
];

export const mapped = ([a, b, c, d, e, f]: Matrix, [x, y]: Vec2): Vec2 => [a * x + c * y + e, b * x + d * y + f];

const CALL = /([a-zA-Z]+)\s*\(([^()]*)\)/g;

/** The map of a `transform` attribute (SVG 1.1, 7.6): the last of its list acts first. What is no such list changes nothing. */
export function transformOf(text: string): Matrix {
  let matrix = IDENTITY;
  for (const [, name, list] of text.matchAll(CALL)) {
    const next = called(name!, numbersOf(list!));
    if (next === undefined) return IDENTITY;
    matrix = composed(matrix, next);
  }
  return matrix;
}

function called(name: string, values: readonly number[]): Matrix | undefined {
  const [a = 0, b, c] = values;
  const tan = Math.tan((a * Math.PI) / 180);
  switch (name) {
    case 'matrix':
      return values.length === 6 ? (values as unknown as Matrix) : undefined;
    case 'translate':
      return translation(a, b ?? 0);
    case 'scale':
      return scaling(a, b ?? a);
    case 'rotate':
      return composed(composed(translation(b ?? 0, c ?? 0), rotation(a)), translation(-(b ?? 0), -(c ?? 0)));
    case 'skewX':
      return [1, 0, tan, 1, 0, 0];
    case 'skewY':
      return [1, tan, 0, 1, 0, 0];
    default:
      return undefined;
  }
}

function rotation(degrees: number): Matrix {
  const angle = (degrees * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle), -Math.sin(angle), Math.cos(angle), 0, 0];
}

const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g;

/** All numbers of a list, as `10,-20 3.5e2`. */
export const numbersOf = (text: string): number[] => Array.from(text.matchAll(NUMBER), ([number]) => Number(number));
