import { otsuThreshold } from '../artwork/picture/threshold.ts';
import { tracedOutlines } from '../artwork/picture/tracedOutlines.ts';
import {
  doubleArea,
  homographyBetween,
  type PlainPaper,
  paperCorners,
  type SeenMark,
  type Vec2,
} from '../core/index.ts';
import { broughtDown, type GreyPicture } from './greyPicture.ts';
import { refinedQuad } from './refinedQuad.ts';

/** Pixels of the picture in which the paper is sought. */
const SOUGHT_PIXELS = 3e5;
/** Least part of the picture that the paper covers. */
const LEAST_PART = 0.02;
/** By how much the sides may be off those of the paper asked for, as the pose tells them: the focal length is only guessed. */
const OFF_SHAPE = 0.2;
/** Focal length over the longer side of a usual telephone's picture. From memory. */
const USUAL_FOCAL = 0.8;

/**
 * A plain paper of known size on a darker ground: the largest pale quadrilateral, its sides to a part of a pixel. A book may lie on
 * it and hide less than half of any side.
 *
 * A plain paper looks the same turned by half: its head is taken to be the end that is the upper one in the picture, and all
 * photographs must be taken from about the same side.
 * @returns null where none of that shape is seen
 */
export function seenPaper(picture: GreyPicture, paper: PlainPaper): SeenMark | null {
  const factor = Math.max(1, Math.round(Math.sqrt((picture.width * picture.height) / SOUGHT_PIXELS)));
  const small = broughtDown(picture, factor);
  // What is pale is dark to the tracer.
  const turned = { ...small, values: small.values.map((value) => 255 - value) };
  const otsu = otsuThreshold(turned.values);
  // The ground may be pale too: then the paper stands out by the palest greys only.
  for (const share of [1, 0.75, 0.5, 0.3]) {
    const outline = largest(tracedOutlines(turned, Math.max(1, Math.round(otsu * share))));
    const rough = outline && quadAround(outline.line);
    if (!rough || outline.area < LEAST_PART * small.width * small.height) continue;
    const quad = refinedQuad(
      picture,
      rough.map(([x, y]): Vec2 => [x * factor, y * factor]),
      4 * factor,
      { outside: 'darker', ends: 0.08 },
    );
    const seen = quad.found && laidAs(quad.corners, paper, picture);
    if (seen) return { page: paper, mark: 'paper', corners: paperCorners(paper), seen, u: Math.hypot(...quad.u) / 2 };
  }
  return null;
}

function largest(lines: readonly Vec2[][]): { line: Vec2[]; area: number } | null {
  let best: { line: Vec2[]; area: number } | null = null;
  for (const line of lines) {
    const area = Math.abs(doubleArea(line)) / 2;
    if (best === null || area > best.area) best = { line, area };
  }
  return best;
}

/**
 * The quadrilateral round a line that adds least to its hull: side after side of the hull is left out and its neighbours are made
 * to meet, that which adds the smallest triangle first.
 *
 * @returns clockwise as seen; null where there is none
 */
function quadAround(line: readonly Vec2[]): Vec2[] | null {
  const hull = hullOf(line);
  while (hull.length > 4) {
    let best: { area: number; i: number; at: Vec2 } | null = null;
    for (let i = 0; i < hull.length; i++) {
      const [before, a, b, after] = [-1, 0, 1, 2].map((step) => hull[(i + step + hull.length) % hull.length]!) as [
        Vec2,
        Vec2,
        Vec2,
        Vec2,
      ];
      const at = crossing(before, a, after, b);
      if (at === null) continue;
      const area = Math.abs(doubleArea([a, at, b]));
      if (best === null || area < best.area) best = { area, i, at };
    }
    if (best === null) return null;
    const next = (best.i + 1) % hull.length;
    hull[best.i] = best.at;
    hull.splice(next, 1);
  }
  return hull.length === 4 ? hull : null;
}

/** Where the ray from `p` through `a` meets that from `q` through `b`, beyond both. */
function crossing(p: Vec2, a: Vec2, q: Vec2, b: Vec2): Vec2 | null {
  const [ux, uy] = [a[0] - p[0], a[1] - p[1]];
  const [vx, vy] = [b[0] - q[0], b[1] - q[1]];
  const cross = ux * vy - uy * vx;
  const s = ((q[0] - p[0]) * vy - (q[1] - p[1]) * vx) / cross;
  const t = ((q[0] - p[0]) * uy - (q[1] - p[1]) * ux) / cross;
  return s >= 1 && t >= 1 && Number.isFinite(s) ? [p[0] + s * ux, p[1] + s * uy] : null;
}

/** Convex hull, clockwise as seen (Andrew 1979, Inf. Proc. Letters 9(5), 216). */
function hullOf(points: readonly Vec2[]): Vec2[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Vec2[]): Vec2[] => {
    const kept: Vec2[] = [];
    for (const point of list) {
      while (kept.length >= 2 && doubleArea([kept.at(-2)!, kept.at(-1)!, point]) <= 0) kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** Corners in the order of the paper's own, from its upper left; null where they are not those of such a paper. */
function laidAs(corners: readonly Vec2[], paper: PlainPaper, picture: GreyPicture): Vec2[] | null {
  const turns = [0, 1, 2, 3].map((by) => corners.map((_, i) => corners[(i + by) % 4]!));
  // Of the four ways to lie, the two along the longer side fit best; of these the one whose head is uppermost.
  const [best] = turns
    .map((seen) => ({ seen, off: offShape(seen, paper, picture), head: seen[0]![1] + seen[1]![1] }))
    .filter(({ off }) => off < OFF_SHAPE)
    .sort((a, b) => (Math.abs(a.off - b.off) > 1e-6 ? a.off - b.off : a.head - b.head));
  return best?.seen ?? null;
}

/** By how much the two sides differ in scale, as logarithm, for a camera of the usual focal length (Zhang 2000, 3.1). */
function offShape(seen: readonly Vec2[], paper: PlainPaper, { width, height }: GreyPicture): number {
  const focal = USUAL_FOCAL * Math.max(width, height);
  const map = homographyBetween(
    paperCorners(paper),
    seen.map(([x, y]): Vec2 => [(x - width / 2) / focal, (y - height / 2) / focal]),
  );
  return map === null
    ? Number.POSITIVE_INFINITY
    : Math.abs(Math.log(Math.hypot(map[0]!, map[3]!, map[6]!) / Math.hypot(map[1]!, map[4]!, map[7]!)));
}
