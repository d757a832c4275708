import { heading, type Vec2 } from '../core/index.ts';
import type { LevelGrid } from './levelGrid.ts';

/** A rectangle on a level plane, mm. */
export interface LevelRectangle {
  readonly middle: Vec2;
  /** Direction of its first side, radians counterclockwise from x. */
  readonly angle: number;
  readonly width: number;
  readonly height: number;
}

/** Turns that are tried, degrees apart, and cells of the grid that are taken together along each axis. */
const TURN = 2;
const TOGETHER = 2;

/**
 * The rectangle, at any turn, over which the values of a grid add up to the most (the greatest sum of a rectangle by the greatest of an
 * interval: Bentley 1984, Programming pearls: algorithm design techniques); null where every value is below zero.
 */
export function richestRectangle(values: Float32Array, grid: LevelGrid): LevelRectangle | null {
  let best: { sum: number; rectangle: LevelRectangle } | null = null;
  for (let degrees = 0; degrees < 90; degrees += TURN) {
    const turned = turnedSums(values, grid, (degrees * Math.PI) / 180);
    const found = richestUpright(turned);
    if (found.sum > (best?.sum ?? 0)) best = { sum: found.sum, rectangle: turned.rectangle(found) };
  }
  return best?.rectangle ?? null;
}

interface Block {
  readonly sum: number;
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

interface TurnedSums {
  readonly sums: Float32Array;
  readonly columns: number;
  readonly rows: number;
  readonly rectangle: (block: Block) => LevelRectangle;
}

/** Sums of the values over the cells of a coarser grid, turned about the middle. */
function turnedSums(values: Float32Array, { left, low, step, columns, rows }: LevelGrid, angle: number): TurnedSums {
  const [c, s] = heading(angle);
  const [midX, midY] = [(columns - 1) / 2, (rows - 1) / 2];
  const wide = Math.ceil((Math.abs(c) * columns + Math.abs(s) * rows) / TOGETHER) + 2;
  const tall = Math.ceil((Math.abs(s) * columns + Math.abs(c) * rows) / TOGETHER) + 2;
  const sums = new Float32Array(wide * tall);
  for (let row = 0, i = 0; row < rows; row++)
    for (let column = 0; column < columns; column++, i++) {
      const [x, y] = [column - midX, row - midY];
      const a = Math.floor((c * x + s * y) / TOGETHER + wide / 2);
      const b = Math.floor((c * y - s * x) / TOGETHER + tall / 2);
      sums[b * wide + a]! += values[i]!;
    }
  const cell = TOGETHER * step;
  return {
    sums,
    columns: wide,
    rows: tall,
    rectangle: (block) => {
      const a = ((block.left + block.right + 1 - wide) / 2) * cell;
      const b = ((block.low + block.high + 1 - tall) / 2) * cell;
      return {
        middle: [left + midX * step + c * a - s * b, low + midY * step + s * a + c * b],
        angle,
        width: (block.right - block.left + 1) * cell,
        height: (block.high - block.low + 1) * cell,
      };
    },
  };
}

function richestUpright({ sums, columns, rows }: Omit<TurnedSums, 'rectangle'>): Block {
  let best: Block = { sum: 0, left: 0, right: 0, low: 0, high: 0 };
  const column = new Float32Array(columns);
  for (let low = 0; low < rows; low++) {
    column.fill(0);
    for (let high = low; high < rows; high++) {
      let sum = 0;
      let left = 0;
      for (let i = 0; i < columns; i++) {
        column[i]! += sums[high * columns + i]!;
        if (sum <= 0) {
          sum = 0;
          left = i;
        }
        sum += column[i]!;
        if (sum > best.sum) best = { sum, left, right: i, low, high };
      }
    }
  }
  return best;
}
