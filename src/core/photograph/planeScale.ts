import { cross, distance, subtract, type Vec2 } from '../math/vec2.ts';
import type { Vec3 } from '../math/vec3.ts';
import type { Prior } from './adjust.ts';
import type { Photograph } from './photograph.ts';
import { PRINT_DOUBTS } from './printScale.ts';
import { type PrintScale, type Scene, type SceneFigure, type SceneTrouble, solveScene } from './scene.ts';

/** What a photograph of something flat beside or under a sheet says of lengths in it. */
export interface PlaneScale {
  readonly scene: Scene;
  /** Standard uncertainty of a length over all of it, as a share, and the part of that which the print has. */
  readonly u: number;
  readonly uPrint: number;
}

/** A point that is set by hand is meant to about this, pixels. */
const POINT_PX = 1;

/** Solves one photograph with points at one height over the sheet; null where the photograph does not show a point there. */
function withPoints(
  photograph: Photograph,
  print: PrintScale,
  pixels: readonly Vec2[],
  height: Prior,
  lengths: readonly { readonly from: number; readonly to: number; readonly length: Prior }[] = [],
): Scene | SceneTrouble {
  const points = pixels.map((seen, point) => ({ point, seen, u: POINT_PX }));
  const heightOf = pixels.map(() => 0);
  const scene = solveScene([{ ...photograph, points }], print, { heightOf, heights: [height], lengths });
  return scene.ok && scene.points.some((point) => point === null) ? { ok: false, code: 'unsolved' } : scene;
}

/** Distance on the plane, mm. */
const apart = (a: Vec3 | null | undefined, b: Vec3 | null | undefined): number =>
  distance([a![0], a![1]], [b![0], b![1]]);

/**
 * Solves one photograph of a flat thing, such as a hide, with pages of a sheet on it, and says how sure its lengths are.
 *
 * @param rim places at the rim of the thing, pixels: at least two
 */
export function planeScale(photograph: Photograph, print: PrintScale, rim: readonly Vec2[]): PlaneScale | SceneTrouble {
  const scene = withPoints(photograph, print, rim, { value: 0, u: 1 });
  if (!scene.ok) return scene;
  const pairs = rim.flatMap((_, i) => rim.slice(0, i).map((__, k) => [i, k] as const));
  const { figures } = scene.figures(
    pairs.map(
      ([i, k]) =>
        (found) =>
          apart(found[i], found[k]),
    ),
  );
  const longest = figures.reduce((best, figure) => (figure.value > best.value ? figure : best));
  return { scene, u: longest.u / longest.value, uPrint: longest.uPrint / longest.value };
}

/** A length that is known between two places of a photograph, such as two strokes of a ruler that lies on the page. */
export interface KnownLength {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly length: Prior;
}

/** A print may be of any size until it was measured. */
const ANY_SIZE: PrintScale = {
  size: { value: 1, u: 0.05 },
  difference: PRINT_DOUBTS.difference,
  across: null,
  along: null,
};

/**
 * Size of a print, across and along the page, by known lengths that lie on it in a photograph: what a printer does to every page.
 *
 * @param height of the known lengths over the page, mm, such as the thickness of the ruler
 */
export function printByLengths(
  photograph: Photograph,
  known: readonly KnownLength[],
  height: Prior,
): Scene['print'] | SceneTrouble {
  const scene = withPoints(
    photograph,
    ANY_SIZE,
    known.flatMap(({ from, to }) => [from, to]),
    height,
    known.map(({ length }, i) => ({ from: 2 * i, to: 2 * i + 1, length })),
  );
  return scene.ok ? scene.print : scene;
}

/**
 * How far outside of one line another runs, at one height over the sheet: the gap between the edge of a book's board and the seam line of a
 * card round it. The middle of the sheet counts as inside.
 *
 * @param edge two places on the line that counts as 0, pixels
 * @param line two places on the other
 */
export function gapBetween(
  photograph: Photograph,
  print: PrintScale,
  {
    edge,
    line,
    height,
  }: { readonly edge: readonly [Vec2, Vec2]; readonly line: readonly [Vec2, Vec2]; readonly height: Prior },
): SceneFigure | SceneTrouble {
  const seen = photograph.marks.flatMap((mark) => mark.seen);
  if (seen.length === 0) return { ok: false, code: 'noMarks' };
  const middle: Vec2 = [
    seen.reduce((sum, [x]) => sum + x, 0) / seen.length,
    seen.reduce((sum, [, y]) => sum + y, 0) / seen.length,
  ];
  const scene = withPoints(photograph, print, [...edge, ...line, middle], height);
  if (!scene.ok) return scene;
  const flat = (point: Vec3 | null | undefined): Vec2 => [point![0], point![1]];
  const { figures } = scene.figures([
    (found) => {
      const [a, b, p, q, inside] = found.map(flat) as [Vec2, Vec2, Vec2, Vec2, Vec2];
      const along = subtract(b, a);
      const off = (point: Vec2): number => cross(along, subtract(point, a)) / Math.hypot(...along);
      return (-Math.sign(off(inside)) * (off(p) + off(q))) / 2;
    },
  ]);
  return figures[0]!;
}
