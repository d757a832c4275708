import type { Vec2 } from '../math/vec2.ts';
import type { Photograph } from './photograph.ts';
import { type PrintScale, type Scene, type SceneTrouble, solveScene } from './scene.ts';

/** What a photograph of something flat beside or under a sheet says of lengths in it. */
export interface PlaneScale {
  readonly scene: Scene;
  /** Standard uncertainty of a length over all of it, as a share, and the part of that which the print has. */
  readonly u: number;
  readonly uPrint: number;
}

/** A point is meant to about this, pixels. */
const POINT_PX = 1;

/**
 * Solves one photograph of a flat thing, such as a hide, with pages of a sheet on it, and says how sure its lengths are.
 *
 * @param rim places at the rim of the thing, pixels: at least two
 */
export function planeScale(photograph: Photograph, print: PrintScale, rim: readonly Vec2[]): PlaneScale | SceneTrouble {
  const points = rim.map((seen, point) => ({ point, seen, u: POINT_PX }));
  const scene = solveScene([{ ...photograph, points }], print, {
    heightOf: rim.map(() => 0),
    heights: [{ value: 0, u: 1 }],
  });
  if (!scene.ok) return scene;
  if (scene.points.some((point) => point === null)) return { ok: false, code: 'unsolved' };
  const pairs = rim.flatMap((_, i) => rim.slice(0, i).map((__, k) => [i, k] as const));
  const { figures } = scene.figures(
    pairs.map(([i, k]) => (found) => {
      const [a, b] = [found[i]!, found[k]!];
      return Math.hypot(a[0] - b[0], a[1] - b[1]);
    }),
  );
  const longest = figures.reduce((best, figure) => (figure.value > best.value ? figure : best));
  return { scene, u: longest.u / longest.value, uPrint: longest.uPrint / longest.value };
}
