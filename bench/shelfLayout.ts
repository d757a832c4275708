import type { Clearance, Hide } from '../src/core/materials/layout/hide.ts';
import type { PlacedPiece } from '../src/core/materials/layout/layout.ts';
import { turned } from '../src/core/materials/layout/shape.ts';
import type { PieceOutline } from '../src/core/materials/pieceOutline.ts';
import { isInside, outlineDistance } from '../src/core/math/polygonDistance.ts';
import type { Vec2 } from '../src/core/math/vec2.ts';
import { nth } from '../tests/nth.ts';

/** Step by which a piece is moved on until it lies clear, mm. */
const STEP = 2;

/**
 * The plain way to lay pieces out, to compare with: rows across the backbone, tallest pieces first, each piece as far left
 * in its row as it lies clear, the next row above the tallest piece of the last.
 */
export function shelfLayout(
  outlines: readonly PieceOutline[],
  hide: Hide,
  { spacing, edge }: Clearance,
): PlacedPiece[] {
  const upright = Math.PI / 2 - hide.backbone;
  const outer = turned(hide.outline, upright);
  const defects = hide.defects.map((defect) => turned(defect, upright));
  const clear = (box: readonly Vec2[]): boolean =>
    box.every((point) => isInside(point, outer)) &&
    outlineDistance(box, outer) >= edge - 1e-9 &&
    defects.every((defect) => !isInside(nth(defect, 0), box) && outlineDistance(box, defect) >= edge - 1e-9);
  const size = (outline: PieceOutline, axis: 0 | 1): number => Math.max(...outline.polygon.map((point) => point[axis]));
  const [xs, ys] = [outer.map(([x]) => x), outer.map(([, y]) => y)];
  const end = Math.max(...xs);
  const placed: PlacedPiece[] = [];
  let waiting = outlines
    .flatMap((outline) => Array.from({ length: outline.count }, () => outline))
    .sort((a, b) => size(b, 1) - size(a, 1));
  for (let y = Math.min(...ys) + edge; y < Math.max(...ys) && waiting.length > 0; ) {
    let x = Math.min(...xs) + edge;
    let tallest = 0;
    const left: PieceOutline[] = [];
    for (const outline of waiting) {
      const [width, height] = [size(outline, 0), size(outline, 1)];
      const boxAt = (from: number): Vec2[] => [
        [from, y],
        [from + width, y],
        [from + width, y + height],
        [from, y + height],
      ];
      let from = x;
      while (from + width <= end && !clear(boxAt(from))) from += STEP;
      if (from + width > end) left.push(outline);
      else {
        placed.push({ name: outline.name, quarters: 0, polygon: turned(boxAt(from), -upright) });
        x = from + width + spacing;
        tallest = Math.max(tallest, height);
      }
    }
    y += tallest === 0 ? STEP : tallest + spacing;
    waiting = left;
  }
  return placed;
}
