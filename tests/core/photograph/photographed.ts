import { normalDraw, randomDraws } from '../../../src/core/math/randomDraws.ts';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import type { Vec3 } from '../../../src/core/math/vec3.ts';
import { type Lens, pixelOf, rotationBy, type Standpoint, seenFrom } from '../../../src/core/photograph/camera.ts';
import { type MarkedPaper, markedPage } from '../../../src/core/photograph/markedSheet.ts';
import type { Photograph, SeenMark } from '../../../src/core/photograph/photograph.ts';
import { type Placement, placedOnSheet } from '../../../src/core/photograph/sceneStart.ts';

/** Uniform and normal numbers, the same ones again for the same seed. */
export function draws(seed: number) {
  const even = randomDraws(seed);
  const normal = (): number => normalDraw(even);
  const between = (a: number, b: number): number => a + (b - a) * even();
  return { even, normal, between };
}

export type Draws = ReturnType<typeof draws>;

/** A printed page as it truly lies. */
export interface TruePage {
  readonly paper: MarkedPaper;
  readonly page: number;
  readonly placement: Placement;
  /** True length over meant length. */
  readonly across: number;
  readonly along: number;
  /** Height of a point of the page over the table, from the middle of the page in mm. */
  readonly height: (at: Vec2, mark: number) => number;
}

export interface TrueScene {
  readonly lens: Lens;
  readonly standpoints: readonly Standpoint[];
  readonly pages: readonly TruePage[];
  readonly points: readonly Vec3[];
  /** Whether a point of the table is covered by the object. */
  readonly hides: (at: Vec2) => boolean;
  readonly width: number;
  readonly height: number;
  /** What the camera writes of its focal length; null for nothing. */
  readonly focal: number | null;
  readonly uMark: number;
  readonly uPoint: number;
}

/** What photographs of a scene show, by geometry alone: marks and points with noise. Marks outside the picture or hidden are not seen. */
export function photographed(scene: TrueScene, { normal }: Draws): Photograph[] {
  return scene.standpoints.map(({ turn, shift }) => {
    const rotation = rotationBy(turn);
    const shows = (point: Vec3, u: number): Vec2 => {
      const [x, y] = pixelOf(scene.lens, seenFrom(rotation, shift, point));
      return [x + u * normal(), y + u * normal()];
    };
    const isIn = ([x, y]: Vec2): boolean => x > 0 && y > 0 && x < scene.width && y < scene.height;
    const marks = scene.pages.flatMap((page): SeenMark[] =>
      markedPage(page.paper, page.page).marks.flatMap(({ id, corners }) => {
        const true3 = corners.map((corner): Vec3 => {
          const [x, y] = placedOnSheet(page.placement, [page.across * corner[0], page.along * corner[1]]);
          return [x, y, page.height(corner, id)];
        });
        if (true3.some(([x, y]) => scene.hides([x, y]))) return [];
        const seen = true3.map((point) => shows(point, scene.uMark));
        return seen.every(isIn)
          ? [{ page: `${page.paper} ${page.page + 1}`, mark: String(id), corners, seen, u: scene.uMark }]
          : [];
      }),
    );
    return {
      width: scene.width,
      height: scene.height,
      camera: 'telephone',
      focal: scene.focal,
      marks,
      points: scene.points.map((point, i) => ({ point: i, seen: shows(point, scene.uPoint), u: scene.uPoint })),
    };
  });
}

/** Standpoints round a table, all looking near its middle: the first almost straight down, the others slanted from different sides. */
export function standpointsRound(count: number, away: number, { between, normal }: Draws): Standpoint[] {
  const first = between(0, 2 * Math.PI);
  return Array.from({ length: count }, (_, i) => {
    const side = first + (i * 2 * Math.PI) / 3 + between(-0.3, 0.3);
    const slant = i === 0 ? between(0, 0.15) : between(0.35, 0.65);
    return {
      turn: [slant * Math.cos(side), slant * Math.sin(side), 0.1 * normal()],
      shift: [12 * normal(), 12 * normal(), away * between(0.9, 1.15)],
    };
  });
}
