import { type Contour, flattened } from '../math/contour.ts';
import { distance, type Vec2 } from '../math/vec2.ts';
import { type Entity, pictureFrame } from './drawing.ts';
import { hatchLines } from './hatchLines.ts';
import { type Box, boxOf, textBox } from './textBox.ts';

/** Largest number of raster cells over a piece, and their smallest size, mm. */
const CELLS = 20_000;
const LEAST_CELL = 0.5;

/** Distance kept between words and lines, mm; at least one cell. */
const CLEAR = 0.7;

/** Finds room on a piece that nothing is drawn on, by a raster with the sums of its taken cells (a summed-area table). */
export class FreeRoom {
  private readonly cell: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly taken: Uint8Array;
  private sums: Int32Array | null = null;

  /** @param drawn everything to keep clear of besides the outline */
  constructor(outline: Contour, width: number, height: number, drawn: readonly Entity[]) {
    this.cell = Math.max(LEAST_CELL, Math.sqrt((width * height) / CELLS));
    this.columns = Math.ceil(width / this.cell);
    this.rows = Math.ceil(height / this.cell);
    this.taken = new Uint8Array(this.columns * this.rows);
    this.takeLine(flattened(outline, this.cell / 8));
    this.takeOutside();
    for (const entity of drawn) this.takeEntity(entity);
  }

  /** Middle of the free box of this size nearest to a place; null where there is none. */
  nearest(width: number, height: number, near: Vec2): Vec2 | null {
    const { cell, columns, rows } = this;
    const clear = Math.max(1, Math.ceil(CLEAR / cell));
    const [wide, high] = [Math.ceil(width / cell) + 2 * clear, Math.ceil(height / cell) + 2 * clear];
    if (wide > columns || high > rows) return null;
    this.sums ??= this.summed();
    const { sums } = this;
    const across = columns + 1;
    const [i0, j0] = [near[0] / cell - wide / 2, near[1] / cell - high / 2];
    let [bestI, bestJ] = [-1, -1];
    let least = Number.POSITIVE_INFINITY;
    for (let j = 0; j + high <= rows; j++) {
      const [low, top] = [j * across, (j + high) * across];
      for (let i = 0; i + wide <= columns; i++) {
        if (sums[top + i + wide]! - sums[top + i]! - sums[low + i + wide]! + sums[low + i]! > 0) continue;
        const off = (i - i0) ** 2 + (j - j0) ** 2;
        if (off < least) [least, bestI, bestJ] = [off, i, j];
      }
    }
    return bestI < 0 ? null : [(bestI + wide / 2) * cell, (bestJ + high / 2) * cell];
  }

  take({ x, y, width, height }: Box): void {
    for (let j = Math.floor(y / this.cell); j * this.cell < y + height; j++)
      for (let i = Math.floor(x / this.cell); i * this.cell < x + width; i++) this.mark(i, j);
  }

  /** Takes the cells outside the outline (rounded corners, scooped mouths): a flood fill from the edge of the box. */
  private takeOutside(): void {
    const { columns, rows, taken } = this;
    const open: number[] = [];
    const reach = (i: number, j: number): void => {
      if (i < 0 || j < 0 || i >= columns || j >= rows || taken[j * columns + i] === 1) return;
      taken[j * columns + i] = 1;
      open.push(j * columns + i);
    };
    for (let i = 0; i < columns; i++) for (const j of [0, rows - 1]) reach(i, j);
    for (let j = 0; j < rows; j++) for (const i of [0, columns - 1]) reach(i, j);
    for (let cell = open.pop(); cell !== undefined; cell = open.pop()) {
      const [i, j] = [cell % columns, Math.floor(cell / columns)];
      reach(i - 1, j);
      reach(i + 1, j);
      reach(i, j - 1);
      reach(i, j + 1);
    }
  }

  private takeEntity(entity: Entity): void {
    if (entity.kind === 'text') this.take(textBox(entity));
    else if (entity.kind === 'picture') this.take(boxOf(pictureFrame(entity)));
    else if (entity.kind === 'hatch') for (const line of hatchLines(entity)) this.takeLine([line.from, line.to]);
    else this.takeLine(flattened(entity.kind === 'path' ? entity.segments : [entity], this.cell / 8));
  }

  private takeLine(points: readonly Vec2[]): void {
    for (let k = 1; k < points.length; k++) {
      const [from, to] = [points[k - 1]!, points[k]!];
      const steps = Math.max(1, Math.ceil((4 * distance(from, to)) / this.cell));
      for (let s = 0; s <= steps; s++) {
        const at = (axis: 0 | 1): number =>
          Math.floor((from[axis] + ((to[axis] - from[axis]) * s) / steps) / this.cell);
        this.mark(at(0), at(1));
      }
    }
  }

  private mark(i: number, j: number): void {
    // A point on the far edge of the box belongs to the last cell.
    const [column, row] = [Math.min(i, this.columns - 1), Math.min(j, this.rows - 1)];
    if (column < 0 || row < 0) return;
    this.taken[row * this.columns + column] = 1;
    this.sums = null;
  }

  /** Taken cells below and left of each corner of the raster. */
  private summed(): Int32Array {
    const across = this.columns + 1;
    const sums = new Int32Array(across * (this.rows + 1));
    for (let j = 0; j < this.rows; j++)
      for (let i = 0; i < this.columns; i++)
        sums[(j + 1) * across + i + 1] =
          this.taken[j * this.columns + i]! +
          sums[j * across + i + 1]! +
          sums[(j + 1) * across + i]! -
          sums[j * across + i]!;
    return sums;
  }
}
