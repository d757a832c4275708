import { Clipper, FillRule } from 'clipper2-ts';
import { isInside, outlineDistance } from '../../math/polygonDistance.ts';
import { distance, type Vec2 } from '../../math/vec2.ts';
import { type PieceOutline, polygonArea } from '../pieceOutline.ts';
import type { Clearance, Hide } from './hide.ts';
import type { Layout, PlacedPiece } from './layout.ts';
import { toGrid } from './noFit.ts';
import { QUARTERS, turned } from './shape.ts';

/** Smaller differences, mm, are rounding of the grid and far below what a knife can do. */
const TOLERANCE = 0.01;

/**
 * The rules that a layout breaks, as sentences; empty for a sound one.
 *
 * Each piece is laid once, in its own shape, turned only as allowed, by the edge clearance inside the leather and off
 * its defects, and by the spacing from other pieces. Distances are measured between the true outlines and overlaps by a
 * polygon library, independently of the search in `layOut`.
 */
export function layoutFaults(
  layout: Layout,
  outlines: readonly PieceOutline[],
  hide: Hide,
  clearance: Clearance,
): string[] {
  const { placed, unplaced } = layout;
  const faults: string[] = [];
  for (const { name, count } of outlines) {
    const found = [...placed.map((piece) => piece.name), ...unplaced].filter((other) => other === name).length;
    if (found !== count) faults.push(`${name}: ${found} laid or left over of ${count}`);
  }
  placed.forEach((piece, i) => {
    const outline = outlines.find(({ name }) => name === piece.name);
    if (outline === undefined) faults.push(`${piece.name} is not a piece of this cover`);
    else if (!isLaidAs(piece, outline, hide)) faults.push(`${piece.name} is not laid along its direction`);
    faults.push(...leatherFaults(piece, hide, clearance.edge));
    for (const other of placed.slice(i + 1)) {
      if (overlaps(piece.polygon, other.polygon)) faults.push(`${piece.name} overlaps ${other.name}`);
      const gap = outlineDistance(piece.polygon, other.polygon);
      if (gap < clearance.spacing - TOLERANCE)
        faults.push(`${piece.name} lies ${gap.toFixed(3)} mm from ${other.name}, under the spacing`);
    }
  });
  return faults;
}

function leatherFaults({ name, polygon }: PlacedPiece, { outline, defects }: Hide, edge: number): string[] {
  const faults: string[] = [];
  const inside = shared(polygon, outline);
  const off = outlineDistance(polygon, outline);
  if (polygonArea(polygon) - inside > sliver(polygon)) faults.push(`${name} reaches off the leather`);
  if (off < edge - TOLERANCE) faults.push(`${name} lies ${off.toFixed(3)} mm from the edge of the leather`);
  defects.forEach((defect, i) => {
    const gap = isInside(defect[0]!, polygon) ? 0 : outlineDistance(polygon, defect);
    if (gap < edge - TOLERANCE || overlaps(polygon, defect))
      faults.push(`${name} lies ${gap.toFixed(3)} mm from defect ${i + 1}`);
  });
  return faults;
}

/** Area that two polygons share, mm2. */
const shared = (first: readonly Vec2[], second: readonly Vec2[]): number =>
  Math.abs(Clipper.areaPaths(Clipper.intersect([toGrid(first)], [toGrid(second)], FillRule.NonZero))) / 1e6;

/** Area of a band as wide as the tolerance along an outline: the most that rounding alone makes two areas share. */
const sliver = (polygon: readonly Vec2[]): number =>
  TOLERANCE * polygon.reduce((sum, point, i) => sum + distance(point, polygon[(i + 1) % polygon.length]!), 0);

const overlaps = (first: readonly Vec2[], second: readonly Vec2[]): boolean =>
  shared(first, second) > Math.min(sliver(first), sliver(second));

/** Whether a piece is its outline turned by its quarters from the backbone and shifted, in an allowed turn. */
function isLaidAs({ polygon, quarters }: PlacedPiece, outline: PieceOutline, hide: Hide): boolean {
  if (!QUARTERS[outline.lies].includes(quarters)) return false;
  const expected = turned(outline.polygon, hide.backbone - Math.PI / 2 + (quarters * Math.PI) / 2);
  const [dx, dy] = [polygon[0]![0] - expected[0]![0], polygon[0]![1] - expected[0]![1]];
  return (
    polygon.length === expected.length &&
    expected.every(([x, y], i) => distance([x + dx, y + dy], polygon[i]!) < TOLERANCE)
  );
}
