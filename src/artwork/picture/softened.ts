import type { Grey } from './grey.ts';

/** The mean of each value with its neighbours, weighted 1 2 1 along rows, then along columns; edges are repeated. */
export function softened({ width, height, values }: Grey): Grey {
  const across = weighted(values, (i) => [i % width === 0 ? i : i - 1, i % width === width - 1 ? i : i + 1]);
  const last = width * (height - 1);
  return {
    width,
    height,
    values: Uint8Array.from(
      weighted(across, (i) => [i < width ? i : i - width, i >= last ? i : i + width]),
      Math.round,
    ),
  };
}

function weighted(values: ArrayLike<number>, neighbours: (i: number) => readonly [number, number]): Float64Array {
  return Float64Array.from(values, (value, i) => {
    const [before, after] = neighbours(i);
    return (values[before]! + 2 * value + values[after]!) / 4;
  });
}
