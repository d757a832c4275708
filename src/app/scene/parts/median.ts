/** Middle value of a list; 1 for an empty one. */
export const median = (values: readonly number[]): number =>
  values.length === 0 ? 1 : values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
