import { distance, type Vec2 } from '../math/vec2.ts';
import { cross3, dot3, unit3, type Vec3 } from '../math/vec3.ts';
import { type Lens, pointAtHeight, type Standpoint, sightOf, turnOf } from './camera.ts';
import { type Homography, homographyBetween, mapped } from './homography.ts';
import type { Photograph, SeenMark } from './photograph.ts';

/** Where a page lies on the plane of the first: its middle, mm, and how far it is turned counterclockwise, radians. */
export interface Placement {
  readonly at: Vec2;
  readonly angle: number;
}

/** A first guess of cameras and pages, from which the adjustment goes on. */
export interface SceneStart {
  /** Focal length over the longer side, by camera. */
  readonly focals: ReadonlyMap<string, number>;
  /** For each photograph; null where no page ties it to the others. */
  readonly poses: readonly (Standpoint | null)[];
  readonly pages: ReadonlyMap<string, Placement>;
}

/** Focal lengths over the longer side that a camera may have; others come from views that do not tell it. */
const FOCALS = { least: 0.4, most: 4 } as const;

/** Share of the longer side by which a corner may be off its page's projective map before its mark counts as misread: distortion and curl stay below it. */
const MISREAD = 0.02;

export const longSide = ({ width, height }: Pick<Photograph, 'width' | 'height'>): number => Math.max(width, height);

/** A point of a page, mm from its middle, on the plane of the first page. */
export const placedOnSheet = ({ at, angle }: Placement, [x, y]: Vec2): Vec2 => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [at[0] + c * x - s * y, at[1] + s * x + c * y];
};

/**
 * Goes from page to photograph to page: the page that is seen best is the frame, each photograph that sees a placed page gets its
 * pose, and each pose places the other pages that it sees.
 *
 * @param usualFocal over the longer side, where neither the camera wrote it nor the views tell it
 * @returns null where no photograph sees enough of any page
 */
export function sceneStart(photographs: readonly Photograph[], usualFocal: number): SceneStart | null {
  const counts = new Map<string, number>();
  for (const { marks } of photographs)
    for (const { page, corners } of marks) counts.set(page, (counts.get(page) ?? 0) + corners.length);
  const [first] = [...counts].sort((a, b) => b[1] - a[1]);
  if (first === undefined) return null;
  const pages = new Map<string, Placement>([[first[0], { at: [0, 0], angle: 0 }]]);
  const maps: (Homography | null)[] = photographs.map(() => null);
  const read = photographs.map((photograph) => photograph.marks);
  const focals = new Map<string, number>();
  for (const { camera } of photographs) focals.set(camera, usualFocal);

  for (let isNew = true; isNew; ) {
    isNew = false;
    photographs.forEach((photograph, i) => {
      if (maps[i] !== null) return;
      const known = read[i]!.filter(({ page }) => pages.has(page));
      maps[i] = planeMap(known, pages, MISREAD * longSide(photograph));
      if (maps[i] !== null) isNew = true;
    });
    photographs.forEach((_, i) => {
      const map = maps[i];
      if (map == null) return;
      const back = inverted(map);
      for (const page of new Set(read[i]!.map((mark) => mark.page))) {
        if (pages.has(page)) continue;
        const own = read[i]!.filter((mark) => mark.page === page);
        pages.set(
          page,
          laid(
            own.flatMap(({ corners }) => corners),
            own.flatMap(({ seen }) => seen.map((pixel) => mapped(back, pixel))),
          ),
        );
        isNew = true;
      }
    });
  }
  if (maps.every((map) => map === null)) return null;
  for (const camera of focals.keys()) {
    const own = photographs
      .map((photograph, i) => ({ photograph, map: maps[i] }))
      .filter((each) => each.photograph.camera === camera);
    const written = own.map(({ photograph }) => photograph).filter(({ focal }) => focal !== null);
    const focal =
      written.length > 0
        ? written.reduce((sum, each) => sum + each.focal! / longSide(each), 0) / written.length
        : focalOf(own.flatMap(({ photograph, map }) => (map == null ? [] : [{ photograph, map }])));
    if (focal !== null) focals.set(camera, focal);
  }
  return {
    focals,
    pages,
    poses: photographs.map((photograph, i) => {
      const map = maps[i];
      return map == null ? null : poseOf(map, photograph, focals.get(photograph.camera)! * longSide(photograph));
    }),
  };
}

/** The map from the plane of the pages to a photograph; marks that are misread are left out one by one, worst first. */
function planeMap(marks: readonly SeenMark[], pages: ReadonlyMap<string, Placement>, most: number): Homography | null {
  let kept = [...marks];
  while (kept.length > 0) {
    const from = kept.map(({ page, corners }) => corners.map((corner) => placedOnSheet(pages.get(page)!, corner)));
    const map = homographyBetween(
      from.flat(),
      kept.flatMap(({ seen }) => seen),
    );
    if (map === null) return null;
    const off = kept.map(({ seen }, i) =>
      Math.max(...seen.map((pixel, k) => distance(pixel, mapped(map, from[i]![k]!)))),
    );
    const worst = Math.max(...off);
    if (worst <= most || kept.length < 4) return worst <= 4 * most ? map : null;
    kept = kept.filter((_, i) => off[i] !== worst);
  }
  return null;
}

/**
 * Focal length over the longer side by Zhang's constraints for a camera of square pixels with its principal point in the middle
 * (Zhang 2000, 3.1); null where the views do not tell it, as when all look straight down.
 */
function focalOf(views: readonly { readonly photograph: Photograph; readonly map: Homography }[]): number | null {
  let above = 0;
  let below = 0;
  for (const { photograph, map } of views) {
    const side = longSide(photograph);
    const column = (k: 0 | 1): Vec3 => {
      const w = map[6 + k]!;
      return [(map[k]! - (photograph.width / 2) * w) / side, (map[3 + k]! - (photograph.height / 2) * w) / side, w];
    };
    const [a, b] = [column(0), column(1)];
    const size = dot3(a, a) + dot3(b, b);
    // a . W b = 0 and a . W a = b . W b with W = diag(1, 1, f^2): p + q f^2 = 0.
    for (const [p, q] of [
      [a[0] * b[0] + a[1] * b[1], a[2] * b[2]],
      [a[0] ** 2 + a[1] ** 2 - b[0] ** 2 - b[1] ** 2, a[2] ** 2 - b[2] ** 2],
    ] as const) {
      above -= (p * q) / size ** 2;
      below += (q * q) / size ** 2;
    }
  }
  const focal = Math.sqrt(above / below);
  return focal > FOCALS.least && focal < FOCALS.most ? focal : null;
}

/** Standpoint of a camera that sees the plane through a map (Zhang 2000, 3.1). */
function poseOf(map: Homography, { width, height }: Photograph, focal: number): Standpoint {
  const column = (k: 0 | 1 | 2): Vec3 => [
    (map[k]! - (width / 2) * map[6 + k]!) / focal,
    (map[3 + k]! - (height / 2) * map[6 + k]!) / focal,
    map[6 + k]!,
  ];
  const [a, b, c] = [column(0), column(1), column(2)];
  const length = (Math.hypot(...a) + Math.hypot(...b)) / 2;
  // The sheet is before the camera.
  const sign = c[2] > 0 ? 1 / length : -1 / length;
  const right = unit3(a);
  // The second axis is squared up to the first: the adjustment does better.
  const away = unit3(cross3(a, b));
  const up = cross3(away, right);
  const turned = [right, up, away].map((axis, i): Vec3 => {
    const by = i < 2 ? Math.sign(sign) : 1;
    return [axis[0] * by, axis[1] * by, axis[2] * by];
  }) as [Vec3, Vec3, Vec3];
  const [x, y, z] = turned;
  // Columns are the sheet's axes as the camera sees them; its y and z are turned over for a turn of 0.
  return {
    turn: turnOf([
      [x[0], -y[0], -z[0]],
      [x[1], -y[1], -z[1]],
      [x[2], -y[2], -z[2]],
    ]),
    shift: [c[0] * sign, c[1] * sign, c[2] * sign],
  };
}

function inverted(h: Homography): Homography {
  const [a, b, c, d, e, f, g, i, k] = h as [number, number, number, number, number, number, number, number, number];
  return [
    e * k - f * i,
    c * i - b * k,
    b * f - c * e,
    f * g - d * k,
    a * k - c * g,
    c * d - a * f,
    d * i - e * g,
    b * g - a * i,
    a * e - b * d,
  ];
}

/** The turn and shift that lay points best on others (Kabsch 1976 in the plane). */
function laid(from: readonly Vec2[], to: readonly Vec2[]): Placement {
  const middle = (points: readonly Vec2[]): Vec2 => [
    points.reduce((sum, [x]) => sum + x, 0) / points.length,
    points.reduce((sum, [, y]) => sum + y, 0) / points.length,
  ];
  const [a, b] = [middle(from), middle(to)];
  let cosine = 0;
  let sine = 0;
  from.forEach(([x, y], i) => {
    const [p, q] = [x - a[0], y - a[1]];
    const [r, s] = [to[i]![0] - b[0], to[i]![1] - b[1]];
    cosine += p * r + q * s;
    sine += p * s - q * r;
  });
  const angle = Math.atan2(sine, cosine);
  const [x, y] = placedOnSheet({ at: [0, 0], angle }, a);
  return { at: [b[0] - x, b[1] - y], angle };
}

/** The point at a height that a photograph shows at a pixel, by the guess. */
export function guessAt(
  start: SceneStart,
  photographs: readonly Photograph[],
  i: number,
  pixel: Vec2,
  height: number,
): Vec2 | null {
  const pose = start.poses[i];
  if (pose == null) return null;
  const photograph = photographs[i]!;
  const lens: Lens = {
    focal: start.focals.get(photograph.camera)! * longSide(photograph),
    centre: [photograph.width / 2, photograph.height / 2],
    k1: 0,
    k2: 0,
  };
  return pointAtHeight(pose, sightOf(lens, pixel), height);
}
