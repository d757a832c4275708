import { type LengthUnit, type Printer, parseLength, type Reading, refusal, type Vec2 } from '../../../core/index.ts';

/** Corners as text, `x; y`, one a line: without a unit if it is the default one. */
export const polygonText = (polygon: readonly Vec2[], { size, units }: Printer): string =>
  polygon.map((corner) => corner.map((value) => size(value).replace(` ${units}`, '')).join('; ')).join('\n');

/** A corner may lie left of or below the origin. */
const EITHER_SIDE = { min: -10_000, max: 10_000 };

/**
 * Reads the corners of an outline, one a line: two numbers set apart by a semicolon, spaces or a tab; a minus is read.
 *
 * Two lines are the opposite corners of a rectangle. Crossing sides are refused by the job.
 * @param unit of figures that carry none
 */
export function readPolygon(text: string, unit: LengthUnit): Reading<Vec2[]> {
  const corners: Vec2[] = [];
  for (const line of text.split('\n').filter((each) => each.trim() !== '')) {
    const figures = line.trim().split(line.includes(';') ? /\s*;\s*/ : /\s+/);
    const read = figures.map((figure) => parseLength(figure, { defaultUnit: unit, range: EITHER_SIDE }));
    if (figures.length !== 2 || !read.every((each) => each.ok))
      return refusal(line, 'a corner', 'Write one corner a line, as 120; 80 for 120 from the left and 80 from below.');
    corners.push([read[0]!.value, read[1]!.value]);
  }
  const [a, b] = corners;
  if (corners.length === 2 && a !== undefined && b !== undefined) {
    const [left, right] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
    const [low, high] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
    const rectangle: Vec2[] = [
      [left, low],
      [right, low],
      [right, high],
      [left, high],
    ];
    return { ok: true, value: rectangle, understood: 'a rectangle' };
  }
  if (corners.length < 2)
    return refusal(text, 'an outline', 'Give the two opposite corners of a rectangle, or three corners or more.');
  return { ok: true, value: corners, understood: `${corners.length} corners` };
}
