import {
  type Photograph,
  pointAtHeight,
  rotationBy,
  sightOf,
  subtract,
  type Vec2,
  type Vec3,
  type View,
} from '../core/index.ts';
import { type FaceGuess, faceGuesses, SEARCH_STEP } from './faceSearch.ts';
import { type FaceSide, type FoundSide, foundSide, movedSide, type Seer, type SideLine } from './faceSides.ts';
import { broughtDown, type GreyPicture } from './greyPicture.ts';
import { pixelsPerMm, showsOf } from './levelPicture.ts';

/** A corner of the face in one photograph. */
interface ProposedCorner {
  readonly at: Vec2;
  /** Standard uncertainty of each coordinate, pixels; large where this photograph does not show both sides that meet there. */
  readonly u: number;
}

export interface ProposedFace {
  /**
   * For each photograph, null for one without a view: the corners clockwise as seen from above, from that of the head and the left
   * hand, which is the spine of a book with its front upward.
   */
  readonly corners: readonly (readonly ProposedCorner[] | null)[];
  /** The same corners on the plane of the face, mm in the axes of the sheet. */
  readonly places: readonly Vec2[];
  /** Whether every side is clear in at least two photographs, or in the only one; if not, the corners are only where to begin. */
  readonly found: boolean;
}

export interface FaceHint {
  /** From the tail of the book to its head, in the axes of the sheet; upward where nothing is said. */
  readonly head?: Vec2;
}

/** Corners whose sides a photograph does not show, pixels. */
const UNSEEN_U = 20;
/** How far a side seen from without may lie from where it is seen from within, mm. */
const AGREES = 0.2;
/** What no scatter along a side shows: threads, wear and rounded edges, mm. An assumption of this project, no source. */
const EDGE_U = 0.1;

/**
 * Proposes the top face of a book that lies on the sheet, or the head end of one that stands, in all photographs at once.
 *
 * @param photographs with the marks found in them
 * @param views cameras as solved from the marks
 * @param heights of the face over the sheet, mm: at the spine and at the fore-edge
 * @returns null where nothing like a face is there
 */
export function proposedFace(
  pictures: readonly GreyPicture[],
  photographs: readonly Photograph[],
  views: readonly (View | null)[],
  heights: readonly [number, number],
  { head = [0, 1] }: FaceHint = {},
): ProposedFace | null {
  const height = (heights[0] + heights[1]) / 2;
  const seers = views.map((view, i) =>
    view === null ? null : { picture: pictures[i]!, shows: showsOf(view), eye: eyeOf(view) },
  );
  const seeing = seers.filter((seer) => seer !== null);
  const ground = views.flatMap((view, i) => (view === null ? [] : markPlaces(photographs[i]!, view, 0)));
  if (seeing.length === 0 || ground.length === 0) return null;
  const [xs, ys] = [ground.map(([x]) => x), ground.map(([, y]) => y)];
  const region = {
    low: [Math.min(...xs) - 30, Math.min(...ys) - 30] as const,
    high: [Math.max(...xs) + 30, Math.max(...ys) + 30] as const,
  };
  const middle: Vec2 = [(region.low[0] + region.high[0]) / 2, (region.low[1] + region.high[1]) / 2];
  const searched = views.flatMap((view, i) => {
    const seer = seers[i];
    if (view === null || seer == null) return [];
    const factor = Math.max(1, Math.floor(pixelsPerMm(seer.shows, middle, height) * SEARCH_STEP * 0.8));
    return [
      {
        picture: broughtDown(seer.picture, factor),
        shows: showsOf({ ...view, lens: broughtDownLens(view, factor) }),
        marks: markPlaces(photographs[i]!, view, height),
      },
    ];
  });
  const isFree = (corners: readonly Vec2[]): boolean =>
    searched.every(({ marks }) => marks.every((mark) => !isInside(corners, mark)));
  const sought = faceGuesses(searched, region, height)
    .flatMap((guess) => refined(seeing, sidesOf(rectangle(guess, head), heights), [4, 1.5]) ?? [])
    .sort((a, b) => b.score - a.score)
    .slice(0, 6);
  let best: Refined | null = null;
  for (const face of sought.slice(0, 3)) {
    const whole = grown(seeing, face, isFree);
    if (whole !== null && (best === null || whole.score > best.score)) best = whole;
  }
  if (best === null) return null;
  const whole = outermost(seeing, best);
  let next = 0;
  return {
    places: meetings(whole.sides),
    found: whole.found && whole.sides.every((side) => isOuter(seeing, side)),
    corners: seers.map((seer) => (seer === null ? null : cornersIn(seer, whole, next++))),
  };
}

function broughtDownLens({ lens }: View, factor: number): View['lens'] {
  return { ...lens, focal: lens.focal / factor, centre: [lens.centre[0] / factor, lens.centre[1] / factor] };
}

/** Middles of the marks that a photograph shows, on a plane over the sheet. */
function markPlaces({ marks }: Photograph, { lens, pose }: View, z: number): Vec2[] {
  return marks.flatMap(({ seen }) => {
    const pixel: Vec2 = [
      seen.reduce((sum, [x]) => sum + x, 0) / seen.length,
      seen.reduce((sum, [, y]) => sum + y, 0) / seen.length,
    ];
    const place = pointAtHeight(pose, sightOf(lens, pixel), z);
    return place === null ? [] : [place];
  });
}

/** Corners clockwise as seen from above, from that at the head and the left. */
function rectangle({ middle, angle, width, height }: FaceGuess, head: Vec2): Vec2[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const corners = [
    [-1, 1],
    [1, 1],
    [1, -1],
    [-1, -1],
  ].map(([a, b]): Vec2 => {
    const [x, y] = [(a! * width) / 2, (b! * height) / 2];
    return [middle[0] + c * x - s * y, middle[1] + s * x + c * y];
  });
  // Of the four turns that whose last side points most nearly to the head.
  const toHead = [0, 1, 2, 3].map((k) => {
    const [tail, top] = [corners[(k + 3) % 4]!, corners[k]!];
    const length = Math.hypot(top[0] - tail[0], top[1] - tail[1]);
    return ((top[0] - tail[0]) * head[0] + (top[1] - tail[1]) * head[1]) / length;
  });
  const first = toHead.indexOf(Math.max(...toHead));
  return [0, 1, 2, 3].map((k) => corners[(first + k) % 4]!);
}

interface Refined {
  readonly sides: readonly FaceSide[];
  /** As sought last, and what was found about it. */
  readonly sought: readonly FaceSide[];
  readonly lines: readonly FoundSide[];
  readonly score: number;
  readonly found: boolean;
}

/**
 * Seeks sides about where they are guessed, with a reach that gets less, mm; each time all four, whose ends then are where they meet.
 */
function refined(seeing: readonly Seer[], guess: readonly FaceSide[], reaches: readonly number[]): Refined | null {
  let sides = guess;
  let result: Refined | null = null;
  for (const reach of reaches) {
    const lines: FoundSide[] = [];
    for (const side of sides) {
      const line = foundSide(seeing, side, reach);
      if (line === null || line.support < HOPELESS) return null;
      lines.push(line);
    }
    const moved = sides.map((side, k) => movedSide(side, lines[k]!));
    const needed = Math.min(2, seeing.length);
    const weakest = Math.min(...lines.map(({ support }) => support));
    result = {
      sides: moved,
      sought: sides,
      lines,
      score: weakest,
      found:
        weakest > LEAST_SUPPORT &&
        isSquare(meetings(moved)) &&
        lines.every(({ seen }) => seen.filter((each) => each !== null).length >= needed),
    };
    const met = meetings(moved);
    sides = moved.map(({ heights }, k) => ({ from: met[k]!, to: met[(k + 1) % 4]!, heights }));
  }
  return result;
}

/**
 * Moves sides outward as long as there is a clear line farther out, or a faint one to which both sides beside it go on: what is
 * stamped on a cover and the groove of its joint look like sides too.
 */
function grown(seeing: readonly Seer[], face: Refined, isFree: (corners: readonly Vec2[]) => boolean): Refined | null {
  let whole: Refined | null = face;
  for (let round = 0; round < 8 && whole !== null; round++) {
    const { sides }: Refined = whole;
    let larger: Refined | null = null;
    for (let k = 0; k < 4 && larger === null; k++) {
      const outside = movedSide(sides[k]!, { at: OUTSIDE + 1.5, tilt: 0 });
      const about = foundSide(seeing, outside, OUTSIDE);
      if (about === null || about.support < FAINT) continue;
      const near = movedSide(outside, about);
      const line = foundSide(seeing, near, 1);
      if (line === null) continue;
      const found = movedSide(near, line);
      const moved = sides.map((side, i) => (i === k ? found : side));
      const met = meetings(moved);
      const isEdge =
        line.support >= CLEAR ||
        isSeenFromWithin(line) ||
        Math.min(
          supportBetween(seeing, met[k]!, sides[k]!.from, found.heights[0]),
          supportBetween(seeing, sides[k]!.to, met[(k + 1) % 4]!, found.heights[1]),
        ) > GOES_ON;
      if (!isEdge || !isFree(met)) continue;
      const next = refined(
        seeing,
        moved.map(({ heights }, i) => ({ from: met[i]!, to: met[(i + 1) % 4]!, heights })),
        [1.5],
      );
      if (next !== null && next.score > Math.min(AS_CLEAR * whole.score, 0.95 * CLEAR)) larger = next;
    }
    if (larger === null) break;
    whole = larger;
  }
  return whole === null ? null : refined(seeing, whole.sides, [1.5, 1.2]);
}

/** Where the next line outside of a side is sought, both ways from the middle of that strip, mm. */
const NEXT = { middle: 5, reach: 4 } as const;

/** A face whose sides end where the book does, as far as a next line is found where the cover goes on. */
function outermost(seeing: readonly Seer[], face: Refined): Refined {
  let whole = face;
  for (let round = 0; round < 2; round++) {
    const inner = whole.sides.findIndex((side) => !isOuter(seeing, side));
    if (inner < 0) return whole;
    const outside = movedSide(whole.sides[inner]!, { at: NEXT.middle, tilt: 0 });
    const line = foundSide(seeing, outside, NEXT.reach);
    const isClear =
      line !== null && line.support > FAINT && line.seen.every((each) => each !== null && each.share > MOSTLY);
    if (!isClear) return whole;
    const sides = whole.sides.map((side, k) => (k === inner ? movedSide(outside, line) : side));
    const met = meetings(sides);
    const next = refined(
      seeing,
      sides.map(({ heights }, k) => ({ from: met[k]!, to: met[(k + 1) % 4]!, heights })),
      [1.5, 1.2],
    );
    if (next === null) return whole;
    whole = next;
  }
  return whole;
}

/** Strips along a side whose greys are compared: how far outside of it, mm. */
const STRIPS = { deep: [-18, -16, -14, -12], within: [-5, -4, -3, -2], near: [2, 3, 4], far: [9, 11, 13] } as const;
/** Places along a strip. */
const ALONG = 40;
/** Greys from which on two strips show different things. By rendered scenes of this project. */
const OTHER = 7;

/**
 * Whether a side is where the book ends, in most photographs: it is not where the same goes on outside for a while and then ends, as
 * beyond a groove of the joint or a frame stamped on the cover.
 */
function isOuter(seeing: readonly Seer[], { from, to, heights }: FaceSide): boolean {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  const [outX, outY] = [-dy / length, dx / length];
  const pixel = new Float64Array(2);
  const greyOf = ({ picture, shows }: Seer, strip: readonly number[]): number => {
    const greys: number[] = [];
    for (let i = 0; i < ALONG; i++)
      for (const off of strip) {
        const t = 0.05 + (0.9 * (i + 0.5)) / ALONG;
        const z = heights[0] + t * (heights[1] - heights[0]);
        if (!shows(from[0] + t * dx + off * outX, from[1] + t * dy + off * outY, z, pixel)) continue;
        const [x, y] = [Math.floor(pixel[0]!), Math.floor(pixel[1]!)];
        if (x >= 0 && y >= 0 && x < picture.width && y < picture.height)
          greys.push(picture.values[y * picture.width + x]!);
      }
    return greys.sort((a, b) => a - b)[greys.length >> 1] ?? Number.NaN;
  };
  const goesOn = seeing.filter((seer) => {
    const { deep, within, near, far } = STRIPS;
    const outside = greyOf(seer, near);
    // Beyond a groove lies what lies well within, not the groove.
    const isAlike = [deep, within].some((strip) => Math.abs(outside - greyOf(seer, strip)) < OTHER);
    return isAlike && Math.abs(greyOf(seer, far) - outside) >= OTHER;
  });
  return 2 * goesOn.length < seeing.length;
}

/** Whether every photograph that looks at a line from within shows it, and they are two at least. */
const isSeenFromWithin = ({ seen, isWithin }: FoundSide): boolean => {
  const within = seen.filter((_, i) => isWithin[i]);
  return within.length > 1 && within.every((each) => each !== null && each.share > MOSTLY);
};

const supportBetween = (seeing: readonly Seer[], from: Vec2, to: Vec2, height: number): number =>
  foundSide(seeing, { from, to, heights: [height, height] }, 0.6)?.support ?? 0;

/** How far outside of a side another is sought, both ways from the middle of that strip, mm. */
const OUTSIDE = 9;
/** Support of a line that is surely an edge of the face, of one that may be, and of a side that goes on. By rendered scenes of this project. */
const CLEAR = 0.53;
const FAINT = 0.3;
const MOSTLY = 0.6;
/** Share of its support that a face must keep when it grows. */
const AS_CLEAR = 0.75;
const HOPELESS = 0.1;
const GOES_ON = 0.45;
const LEAST_SUPPORT = 0.3;

/** Whether corners are those of a rectangle to a degree and a half. */
const isSquare = (corners: readonly Vec2[]): boolean =>
  corners.every((corner, k) => {
    const [before, after] = [corners[(k + 3) % 4]!, corners[(k + 1) % 4]!];
    const [a, b] = [subtract(before, corner), subtract(after, corner)];
    return Math.abs(dot(a, b)) < 0.026 * Math.hypot(...a) * Math.hypot(...b);
  });

/** Whether a place lies within corners that run clockwise. */
const isInside = (corners: readonly Vec2[], place: Vec2): boolean =>
  corners.every((corner, k) => cross(subtract(corners[(k + 1) % 4]!, corner), subtract(place, corner)) < 0);

const dot = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];
const cross = (a: Vec2, b: Vec2): number => a[0] * b[1] - a[1] * b[0];

const sidesOf = (corners: readonly Vec2[], [spine, fore]: readonly [number, number]): FaceSide[] => {
  const heights = [spine, fore, fore, spine];
  return corners.map((from, k) => ({
    from,
    to: corners[(k + 1) % 4]!,
    heights: [heights[k]!, heights[(k + 1) % 4]!],
  }));
};

/** Where each side meets the one before it. */
const meetings = (sides: readonly FaceSide[]): Vec2[] => sides.map((side, k) => meeting(sides[(k + 3) % 4]!, side));

function meeting(a: FaceSide, b: FaceSide): Vec2 {
  const [px, py] = [a.to[0] - a.from[0], a.to[1] - a.from[1]];
  const [qx, qy] = [b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const t = ((b.from[0] - a.from[0]) * qy - (b.from[1] - a.from[1]) * qx) / (px * qy - py * qx);
  return [a.from[0] + t * px, a.from[1] + t * py];
}

/**
 * Corners as one photograph has them by its own sides. A side that it sees from without counts only where it agrees with those
 * that see it from within.
 */
function cornersIn({ shows }: Seer, { sought, lines }: Refined, photograph: number): ProposedCorner[] {
  const own = lines.map(({ seen, isWithin }) => {
    const line = seen[photograph] ?? null;
    if (line === null) return null;
    const others = seen.filter((each, i) => each !== null && isWithin[i]).map((each) => each!);
    if (isWithin[photograph]) return { ...line, edge: EDGE_U };
    if (others.length === 0) return { ...line, edge: 4 * EDGE_U };
    const mean = (part: 'at' | 'tilt'): number => others.reduce((sum, each) => sum + each[part], 0) / others.length;
    const off = Math.hypot(line.at - mean('at'), line.tilt - mean('tilt'));
    return off > AGREES ? null : { ...line, edge: 1.5 * EDGE_U };
  });
  const used = lines.map(({ at, tilt }, k): SideLine => own[k] ?? { at, tilt });
  const places = meetings(sought.map((side, k) => movedSide(side, used[k]!)));
  const pixel = new Float64Array(2);
  return places.map((place, k) => {
    const z = sought[k]!.heights[0];
    shows(place[0], place[1], z, pixel);
    const [before, after] = [own[(k + 3) % 4], own[k]];
    const variance =
      before && after
        ? [before, after].reduce((sum, side) => sum + side.uAt ** 2 + side.uTilt ** 2 + side.edge ** 2, 0)
        : Number.NaN;
    const u = Math.sqrt(variance / 2) * pixelsPerMm(shows, place, z);
    return { at: [pixel[0]!, pixel[1]!], u: Number.isNaN(u) ? UNSEEN_U : u };
  });
}

function eyeOf({ pose: { turn, shift } }: View): Vec3 {
  const [a, b, c] = rotationBy(turn);
  const part = (i: 0 | 1 | 2): number => -(a[i] * shift[0] + b[i] * shift[1] + c[i] * shift[2]);
  return [part(0), -part(1), -part(2)];
}
