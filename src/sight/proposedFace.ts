import {
  dot,
  heading,
  type Photograph,
  pointAtHeight,
  rotationBy,
  sightOf,
  subtract,
  type Vec2,
  type Vec3,
  type View,
} from '../core/index.ts';
import { boardEdge, isBoardEdge } from './boardEdge.ts';
import { cornersIn, type ProposedCorner } from './faceCorners.ts';
import { EVIDENCE_STEP, exposuresOf, levelEvidence, sideEvidence } from './faceEvidence.ts';
import { joined, linesAbout, meetings, SPINE } from './faceLines.ts';
import { type FaceSide, movedSide, type Seer } from './faceSides.ts';
import { broughtDown, type GreyPicture } from './greyPicture.ts';
import type { LevelGrid } from './levelGrid.ts';
import { likeliestHeight } from './likeliestHeight.ts';
import { type LevelRectangle, richestRectangle } from './richestRectangle.ts';
import { pixelsPerMm, showsOf } from './shows.ts';

export interface ProposedFace {
  /**
   * For each photograph, null for one without a view: the corners clockwise as seen from above, from that of the head and the left
   * hand, which is the spine of a book with its front upward.
   */
  readonly corners: readonly (readonly ProposedCorner[] | null)[];
  /** Heights over the sheet at which it was sought, mm: at the spine and at the fore-edge. */
  readonly heights: readonly [number, number];
  /** For each corner whether the sides that meet there are clear; if not, it is only where to begin. */
  readonly found: readonly boolean[];
}

export interface FaceHint {
  /** From the tail of the book to its head, in the axes of the sheet; upward where nothing is said. */
  readonly head?: Vec2;
}

/** Millimetres from place to place where the face is sought, and how far about the marks it is. */
const SEARCH_STEP = 2;
const ROUGH_STEP = 3;
const AROUND = 30;
/** Evidence of a place that tells nothing: a face has no more of them than it needs. */
const PLAIN = 0.01;
/** How far about its guess the rim of a face is sought, and then its lines, one after the other, mm. */
const RIM_REACHES = [16, 8, 4];
const LINE_REACHES = [3, 1.2];
const LAST_REACH = 0.8;
/** How far from an edge the ground may seem to begin, and how far about it that is looked at, mm. By rendered scenes of this project. */
const NEAR_RIM = 0.8;
const RIM_REACH = 6;
/** The edge of a board that lies so far within the rim is one beside a rounded spine, mm. By rendered scenes of this project. */
const ROUNDED = 0.6;
/** Support of a side that is clear. By rendered scenes of this project. */
const LEAST_SUPPORT = 0.2;

/**
 * Proposes the top face of a book that lies on the sheet, or the head end of one that stands, from two photographs or more: the
 * rectangle where what they see fits the height of the face and not the sheet's, and then the lines along its rim.
 *
 * @param photographs with the marks found in them
 * @param views cameras as solved from the marks
 * @param known heights of the face over the sheet, mm: at the spine and at the fore-edge; null to seek that at which most fits, which is
 *   right to some hundredths
 * @returns null where nothing like a face is there
 */
export function proposedFace(
  pictures: readonly GreyPicture[],
  photographs: readonly Photograph[],
  views: readonly (View | null)[],
  known: readonly [number, number] | null,
  { head = [0, 1] }: FaceHint = {},
): ProposedFace | null {
  const usable = views.flatMap((view, i) =>
    view === null ? [] : [{ view, picture: pictures[i]!, photograph: photographs[i]! }],
  );
  if (usable.length < 2) return null;
  const seers = usable.map(({ view, picture }): Seer => ({ picture, shows: showsOf(view), eye: eyeOf(view) }));
  const exposures = exposuresOf(usable);
  const rimOf = (side: FaceSide, reach = RIM_REACH): number =>
    rim(sideEvidence(seers, exposures, side, [-reach, reach]), reach);

  const places = usable.flatMap(({ view, photograph }) => markPlaces(photograph, view));
  const richestBy = (step: number): ((height: number) => LevelRectangle | null) => {
    const grid = gridAround(places, step);
    const coarse = usable.map(({ view }, i) => coarser(seers[i]!, view, grid));
    return (height) =>
      richestRectangle(
        levelEvidence(coarse, exposures, grid, height).map((each) => -each - PLAIN),
        grid,
      );
  };
  const heights = known ?? heightsSought(richestBy(ROUGH_STEP));
  if (heights === null) return null;
  const rectangle = richestBy(SEARCH_STEP)((heights[0] + heights[1]) / 2);
  if (rectangle === null) return null;
  let sides = sidesOf(cornersOf(rectangle, head), heights);
  for (const reach of RIM_REACHES)
    sides = joined(sides.map((side) => movedSide(side, { at: rimOf(side, reach), tilt: 0 })));
  const lines = linesAbout(seers, sides, LINE_REACHES);
  if (lines === null) return null;

  const offs = lines.sides.map((side) => rimOf(side));
  const ground = lines.sides.map((side, k) => movedSide(side, { at: offs[k]!, tilt: 0 }));
  const board = boardEdge(seers, ground[SPINE]!);
  const isRounded = board !== null && board.within > ROUNDED;
  const face = linesAbout(
    seers,
    joined(
      lines.sides.map((side, k) =>
        k === SPINE && board !== null ? board.side : Math.abs(offs[k]!) > NEAR_RIM ? ground[k]! : side,
      ),
    ),
    [LAST_REACH, LAST_REACH],
    board === null ? null : SPINE,
  );
  if (face === null) return null;
  const isClear = face.sides.map((side, k) => {
    const { support, seen } = face.lines[k]!;
    return (
      support > LEAST_SUPPORT &&
      seen.filter((each) => each !== null).length > 1 &&
      (k !== SPINE || isBoardEdge(seers, side)) &&
      ((k === SPINE && isRounded) || Math.abs(rimOf(side)) < NEAR_RIM)
    );
  });
  const corners = meetings(face.sides);
  let next = 0;
  return {
    heights,
    found: corners.map((_, k) => isClear[(k + 3) % 4]! && isClear[k]! && isRight(corners, k)),
    corners: views.map((view) => (view === null ? null : cornersIn(seers[next]!, face, next++, isRounded))),
  };
}

function heightsSought(richest: (height: number) => LevelRectangle | null): readonly [number, number] | null {
  const height = likeliestHeight((each) => richest(each)?.sum ?? 0);
  return height === null ? null : [height, height];
}

function gridAround(places: readonly Vec2[], step: number): LevelGrid {
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const [left, low] = [Math.min(...xs) - AROUND, Math.min(...ys) - AROUND];
  return {
    left,
    low,
    step,
    columns: Math.ceil((Math.max(...xs) + AROUND - left) / step),
    rows: Math.ceil((Math.max(...ys) + AROUND - low) / step),
  };
}

/** A photograph brought down to about two pixels for each step of the search. */
function coarser(seer: Seer, view: View, { left, low, step, columns, rows }: LevelGrid): Seer {
  const middle: Vec2 = [left + (columns * step) / 2, low + (rows * step) / 2];
  const factor = Math.max(1, Math.floor(pixelsPerMm(seer.shows, middle, 0) * step * 0.5));
  return {
    ...seer,
    picture: broughtDown(seer.picture, factor),
    shows: showsOf({ ...view, lens: broughtDownLens(view, factor) }),
  };
}

/** Where along offsets from `-reach` to `reach` the face ends and the ground begins, mm. */
function rim(evidence: Float64Array, reach: number): number {
  let cost = -evidence.reduce((sum, each) => sum + each, 0);
  const costs = [cost];
  for (const each of evidence) {
    cost += 2 * each;
    costs.push(cost);
  }
  const least = Math.min(...costs);
  const ends = costs.flatMap((each, i) => (each <= least + SAME ? [i] : []));
  return (ends.reduce((sum, i) => sum + i, 0) / ends.length - 0.5) * EVIDENCE_STEP - reach;
}

/** Ends of a face whose evidence differs by less are as good as one another. */
const SAME = 0.2;

function broughtDownLens({ lens }: View, factor: number): View['lens'] {
  return { ...lens, focal: lens.focal / factor, centre: [lens.centre[0] / factor, lens.centre[1] / factor] };
}

/** Corners of the marks that a photograph shows, on the sheet. */
const markPlaces = ({ marks }: Photograph, { lens, pose }: View): Vec2[] =>
  marks
    .flatMap(({ seen }) => seen.map((pixel) => pointAtHeight(pose, sightOf(lens, pixel), 0)))
    .filter((place) => place !== null);

/** Corners clockwise as seen from above, from that at the head and the left. */
function cornersOf({ middle, angle, width, height }: LevelRectangle, head: Vec2): Vec2[] {
  const [c, s] = heading(angle);
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

/** Whether a corner is a right angle to a degree and a half. */
function isRight(corners: readonly Vec2[], k: number): boolean {
  const [a, b] = [3, 1].map((by) => subtract(corners[(k + by) % 4]!, corners[k]!)) as [Vec2, Vec2];
  return Math.abs(dot(a, b)) < 0.026 * Math.hypot(...a) * Math.hypot(...b);
}

const sidesOf = (corners: readonly Vec2[], [spine, fore]: readonly [number, number]): FaceSide[] => {
  const heights = [spine, fore, fore, spine];
  return corners.map((from, k) => ({
    from,
    to: corners[(k + 1) % 4]!,
    heights: [heights[k]!, heights[(k + 1) % 4]!],
  }));
};

function eyeOf({ pose: { turn, shift } }: View): Vec3 {
  const [a, b, c] = rotationBy(turn);
  const part = (i: 0 | 1 | 2): number => -(a[i] * shift[0] + b[i] * shift[1] + c[i] * shift[2]);
  return [part(0), -part(1), -part(2)];
}
