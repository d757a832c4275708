import { RANGE_POINTS, type RangePoint } from '../../core/index.ts';

/** Least of a value over the weight range of the leather. */
export const leastOver = (of: (point: RangePoint) => number): number => Math.min(...RANGE_POINTS.map(of));

/** Most of a value over the weight range of the leather. */
export const mostOver = (of: (point: RangePoint) => number): number => Math.max(...RANGE_POINTS.map(of));
