import type { Vec2 } from '../../core/index.ts';
import type { Grey } from './grey.ts';

/**
 * The outlines of the dark areas of a picture, closed, in pixels from its upper left corner, y down: marching squares with the
 * crossing between two pixel centres by linear interpolation. Where two dark pixels touch at a corner only, the mean of the four
 * says whether they are joined. The picture is bordered by untouched leather, so that an area at its edge is closed too.
 *
 * It takes a time that grows as the number of pixels.
 * @param threshold values below it are dark, 1 to 255
 */
export function tracedOutlines({ width, height, values }: Grey, threshold: number): Vec2[][] {
  // A grid with one row and column of border all round.
  const [columns, rows] = [width + 2, height + 2];
  const at = (column: number, row: number): number =>
    column > 0 && row > 0 && column <= width && row <= height ? values[(row - 1) * width + column - 1]! : 255;
  /** From each edge of the grid that an outline crosses to the next, dark on its left. Edges: 2 i right of i, 2 i + 1 below i. */
  const next = new Int32Array(2 * columns * rows).fill(-1);
  for (let row = 0; row < rows - 1; row++)
    for (let column = 0; column < columns - 1; column++) {
      const corners = [at(column, row), at(column + 1, row), at(column + 1, row + 1), at(column, row + 1)];
      const isDark = corners.map((value) => value < threshold);
      if (isDark.every((dark) => dark === isDark[0])) continue;
      const i = row * columns + column;
      // Clockwise as seen: above, right, below, left.
      const edges = [2 * i, 2 * (i + 1) + 1, 2 * (i + columns), 2 * i + 1];
      const isJoined = corners.reduce((sum, value) => sum + value, 0) / 4 < threshold;
      for (let side = 0; side < 4; side++) {
        // An outline enters a cell where going clockwise leads from dark to light, and leaves where it leads from light to dark.
        if (!(isDark[side] && !isDark[(side + 1) % 4])) continue;
        const leavesAt = (step: number) => !isDark[(side + step) % 4] && isDark[(side + step + 1) % 4];
        const isSaddle = isDark[(side + 2) % 4] && !isDark[(side + 3) % 4];
        const steps = isSaddle ? (isJoined ? 1 : 3) : [1, 2, 3].find(leavesAt)!;
        next[edges[side]!] = edges[(side + steps) % 4]!;
      }
    }
  return loops(next).map((loop) => loop.map((edge) => crossing(edge)));

  function crossing(edge: number): Vec2 {
    const i = edge >> 1;
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const [a, b] = [at(column, row), edge % 2 === 0 ? at(column + 1, row) : at(column, row + 1)];
    const share = (threshold - 0.5 - a) / (b - a);
    // The centre of the first pixel is half a pixel from the corner; the border is one pixel wide.
    return edge % 2 === 0 ? [column - 0.5 + share, row - 0.5] : [column - 0.5, row - 0.5 + share];
  }
}

/** The closed chains of edges, each with its first edge again at its end. */
function loops(next: Int32Array): number[][] {
  const found: number[][] = [];
  for (let start = 0; start < next.length; start++) {
    if (next[start]! < 0) continue;
    const loop = [start];
    for (let edge = next[start]!; edge !== start; edge = next[edge]!) loop.push(edge);
    for (const edge of loop) next[edge] = -1;
    loop.push(start);
    found.push(loop);
  }
  return found;
}
