import { MARKED_PAPERS, pixelOf, rotationBy, type Standpoint, seenFrom } from '../../src/core/index.ts';
import { type Draws, normalDraw, randomDraws } from '../../src/core/math/randomDraws.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { cross3, unit3, type Vec3 } from '../../src/core/math/vec3.ts';
import { turnOf } from '../../src/core/photograph/camera.ts';
import { nth } from '../nth.ts';
import type { CoverLook, TestBook } from './bookSolids.ts';
import { laidPoints } from './renderedScene.ts';
import type { LaidBook, LaidPage, TestCamera, TestScene } from './testScene.ts';

export interface Drawn {
  readonly kind: BookKind;
  readonly scene: TestScene;
  /** The same telephone in three places, unless told otherwise. */
  readonly cameras: readonly TestCamera[];
}

type BookKind = (typeof BOOK_KINDS)[number];
const BOOK_KINDS = ['thin', 'thick', 'small', 'usual', 'large'] as const;
const GROUNDS = ['wood', 'cloth', 'table'] as const;
const COVERS = ['dark', 'light', 'white', 'coloured'] as const;

export interface Wishes {
  readonly kind?: BookKind;
  readonly ground?: TestScene['ground'];
  readonly cover?: (typeof COVERS)[number];
  readonly pose?: LaidBook['pose'];
  /** Longer side of the pictures, pixels; 2016 makes 3 million of them. */
  readonly longSide?: number;
  readonly photographs?: number;
}

const between = (draws: Draws, low: number, high: number): number => low + (high - low) * draws();
const one = <T>(draws: Draws, list: readonly T[]): T => nth(list, Math.floor(draws() * list.length));

/** A scene and cameras drawn from what makers may have: the same for the same seed. */
export function drawnScene(seed: number, wishes: Wishes = {}): Drawn {
  const draws = randomDraws(seed * 7919 + 13);
  const kind = wishes.kind ?? one(draws, BOOK_KINDS);
  const book = drawnBook(draws, kind, wishes.cover ?? one(draws, COVERS));
  const pose = wishes.pose ?? 'lying';
  const pages = drawnPages(draws, book, pose);
  const ground = wishes.ground ?? one(draws, GROUNDS);
  const middle = nth(pages, 0).at.map(
    (_, k) => pages.reduce((sum, { at }) => sum + nth(at, k), 0) / pages.length,
  ) as unknown as Vec2;
  const azimuth = between(draws, 0, 2 * Math.PI);
  const slant = between(draws, 0.25, 1);
  const scene: TestScene = {
    seed,
    ground,
    groundColour: drawnGround(draws, ground),
    pages,
    print: { across: 1 + 0.001 * normalDraw(draws), along: 1 + 0.001 * normalDraw(draws) },
    scraps: [],
    book: {
      book,
      pose,
      at: [middle[0] + between(draws, -5, 5), middle[1] + between(draws, -5, 5)],
      angle: between(draws, -0.12, 0.12) + (draws() < 0.3 ? Math.PI : 0),
    },
    light: {
      sun: [slant * Math.cos(azimuth), slant * Math.sin(azimuth), 1],
      softness: between(draws, 0.03, 0.3),
      ambient: between(draws, 0.3, 0.7),
      falloff: between(draws, 0, 0.4),
    },
  };
  return { kind, scene, cameras: drawnCameras(draws, scene, wishes) };
}

function drawnBook(draws: Draws, kind: BookKind, cover: (typeof COVERS)[number]): TestBook {
  const sizes: Record<BookKind, readonly [width: Vec2, thickness: Vec2]> = {
    thin: [
      [105, 150],
      [4, 12],
    ],
    thick: [
      [105, 150],
      [35, 60],
    ],
    small: [
      [60, 95],
      [8, 30],
    ],
    usual: [
      [110, 160],
      [12, 35],
    ],
    large: [
      [180, 230],
      [18, 55],
    ],
  };
  const [width, thickness] = sizes[kind];
  const wide = between(draws, ...width);
  const thick = between(draws, ...thickness);
  const isHard = draws() < 0.7;
  const isRounded = isHard && thick > 15 && draws() < 0.5;
  return {
    width: wide,
    height: wide * between(draws, 1.35, 1.55),
    thicknessAtSpine: thick,
    thicknessAtForeEdge: thick + between(draws, -0.04, 0.04) * thick,
    board: isHard ? between(draws, 2, Math.min(3.2, thick / 3)) : 0.4,
    squares: isHard ? between(draws, 2, 4) : 0,
    rise: isRounded ? thick * between(draws, 0.12, 0.3) : 0,
    corner: isHard ? between(draws, 0, 2) : between(draws, 0, 1),
    cover: drawnCover(draws, cover),
  };
}

function drawnCover(draws: Draws, cover: (typeof COVERS)[number]): CoverLook {
  const level = { dark: [0.02, 0.08], light: [0.35, 0.6], white: [0.78, 0.88], coloured: [0.08, 0.35] }[cover];
  const grey = between(draws, nth(level, 0), nth(level, 1));
  const tint = cover === 'white' ? 0.03 : 0.5;
  const colour = [0, 1, 2].map(() => Math.min(0.92, grey * (1 + between(draws, -tint, tint)))) as unknown as Vec3;
  return {
    colour,
    pages: [0.75, 0.7, 0.6],
    weave: cover === 'white' ? between(draws, 0, 0.04) : between(draws, 0, 0.2),
    isStamped: draws() < 0.5,
  };
}

function drawnGround(draws: Draws, ground: TestScene['ground']): Vec3 {
  if (ground === 'wood') {
    const tone = between(draws, 0.12, 0.5);
    return [tone, tone * 0.62, tone * 0.36];
  }
  const tone = between(draws, 0.1, 0.6);
  return [0, 1, 2].map(() => tone * between(draws, 0.75, 1.2)) as unknown as Vec3;
}

/** As many pages as leave marks in sight round the book. */
function drawnPages(draws: Draws, book: TestBook, pose: LaidBook['pose']): LaidPage[] {
  const [columns, rows] = pose === 'standing' || book.width <= 118 ? [1, 1] : book.height <= 232 ? [2, 1] : [2, 2];
  const { width, height } = MARKED_PAPERS.A4;
  return Array.from({ length: columns * rows }, (_, page): LaidPage => {
    const [column, row] = [page % columns, Math.floor(page / columns)];
    const off = (): number => (columns * rows > 1 ? between(draws, 0, 3) : 0);
    return {
      paper: 'A4',
      page,
      at: [column * (width + 3) + off(), -row * (height + 3) - off()],
      angle: page === 0 ? 0 : between(draws, -0.012, 0.012),
      curl: [Math.abs(0.3 * normalDraw(draws)), Math.abs(0.4 * normalDraw(draws))],
    };
  });
}

function drawnCameras(draws: Draws, scene: TestScene, { longSide = 2016, photographs = 3 }: Wishes): TestCamera[] {
  const corners = scene.pages.flatMap(pageCorners);
  const seen = [...corners, ...(scene.book === null ? [] : Object.values(laidPoints(scene.book)))];
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const isUpright = Math.max(...ys) - Math.min(...ys) > Math.max(...xs) - Math.min(...xs);
  const shortSide = Math.round(longSide * 0.75);
  const [width, height] = isUpright ? [shortSide, longSide] : [longSide, shortSide];
  const lens = {
    focal: longSide * between(draws, 0.72, 0.85),
    centre: [
      width / 2 + 0.004 * longSide * normalDraw(draws),
      height / 2 + 0.004 * longSide * normalDraw(draws),
    ] as const,
    k1: 0.04 * normalDraw(draws),
    k2: 0.02 * normalDraw(draws),
  };
  const middle: Vec3 = [(Math.max(...xs) + Math.min(...xs)) / 2, (Math.max(...ys) + Math.min(...ys)) / 2, 0];
  const first = between(draws, 0, 2 * Math.PI);
  return Array.from({ length: photographs }, (_, i) => {
    const azimuth = first + (i * 2 * Math.PI) / photographs + between(draws, -0.4, 0.4);
    const pose = framed(
      { width, height, lens },
      seen,
      middle,
      { azimuth, tilt: between(draws, 0.15, 0.6), roll: between(draws, -0.1, 0.1) },
      between(draws, 1.02, 1.12),
    );
    return {
      width,
      height,
      lens,
      pose,
      blur: (longSide / 2016) * between(draws, 0.5, 1.1),
      wellDepth: between(draws, 1500, 8000),
      exposure: between(draws, 0.8, 1.05),
      quality: Math.round(between(draws, 70, 95)),
    };
  });
}

const pageCorners = ({ paper, at, angle }: LaidPage): Vec3[] => {
  const { width, height } = MARKED_PAPERS[paper];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [-1, 1].flatMap((a) =>
    [-1, 1].map((b): Vec3 => {
      const [x, y] = [(a * width) / 2, (b * height) / 2];
      return [at[0] + c * x - s * y, at[1] + s * x + c * y, 0];
    }),
  );
};

interface Aim {
  /** From which side, radians counterclockwise from x. */
  readonly azimuth: number;
  /** Off straight down, radians. */
  readonly tilt: number;
  readonly roll: number;
}

/** Where a camera stands that looks at a point in this way from this far. */
export function standpoint(at: Vec3, { azimuth, tilt, roll }: Aim, far: number): Standpoint {
  const away: Vec3 = [-Math.sin(tilt) * Math.cos(azimuth), -Math.sin(tilt) * Math.sin(azimuth), -Math.cos(tilt)];
  // The head of the sheet is up in the picture, then the camera is rolled.
  const level = unit3(cross3(away, [0, 1, 0]));
  const under = cross3(away, level);
  const [c, s] = [Math.cos(roll), Math.sin(roll)];
  const right = [0, 1, 2].map((k) => c * nth(level, k) + s * nth(under, k)) as unknown as Vec3;
  const down = cross3(away, right);
  const eye = [0, 1, 2].map((k) => nth(at, k) - far * nth(away, k)) as unknown as Vec3;
  const axes = [right, down, away] as const;
  return {
    turn: turnOf(axes.map(([x, y, z]): Vec3 => [x, -y, -z]) as [Vec3, Vec3, Vec3]),
    shift: axes.map((axis) => -(axis[0] * eye[0] + axis[1] * eye[1] + axis[2] * eye[2])) as unknown as Vec3,
  };
}

/** As near as lets the camera see all points, times a factor. */
function framed(
  { width, height, lens }: Pick<TestCamera, 'width' | 'height' | 'lens'>,
  points: readonly Vec3[],
  at: Vec3,
  aim: Aim,
  factor: number,
): Standpoint {
  let [near, far] = [150, 4000];
  for (let i = 0; i < 30; i++) {
    const middle = (near + far) / 2;
    const pose = standpoint(at, aim, middle);
    const rotation = rotationBy(pose.turn);
    const isInside = points.every((point) => {
      const before = seenFrom(rotation, pose.shift, point);
      if (before[2] < 50) return false;
      const [x, y] = pixelOf(lens, before);
      return x > 0 && y > 0 && x < width && y < height;
    });
    if (isInside) far = middle;
    else near = middle;
  }
  return standpoint(at, aim, far * factor);
}

/** The same photograph with so many times fewer pixels along each side. */
export function smaller(camera: TestCamera, times: number): TestCamera {
  const { lens } = camera;
  return {
    ...camera,
    width: Math.round(camera.width / times),
    height: Math.round(camera.height / times),
    blur: camera.blur / times,
    lens: { ...lens, focal: lens.focal / times, centre: [lens.centre[0] / times, lens.centre[1] / times] },
  };
}
