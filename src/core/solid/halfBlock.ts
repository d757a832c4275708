import type { BookModel } from '../book/bookModel.ts';
import { edgeAt, jointSlide } from '../book/bookOutline.ts';
import { wrapAngle } from '../math/angle.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { addScaled, distance, dot, heading, leftOf, subtract, type Vec2 } from '../math/vec2.ts';
import { caseShape } from './caseMesh.ts';
import { type Bend, leafPoints, turnedAtMost } from './leafCourse.ts';

/** How the half text block at the back stands; the front one is its mirror image. */
export interface BlockStand {
  /** Tilt of the closed board from the middle plane, radians. */
  readonly tilt: number;
  /** How far board and outermost leaf have swung from there, radians; the leaf at most as far as the board. */
  readonly board: number;
  readonly leaf: number;
  /** Swing of the board from the closed book, by which the joint gives, radians. */
  readonly fromClosed: number;
  /** Thickness of the pocket that the leaves give way to, 0 for none, and its mouth's distance from the hinge, mm. */
  readonly pocket: number;
  readonly mouth: number;
  /** The book closed, by which the leaves are as long as they are: the same, but where its back has given way. */
  readonly rest: BookModel;
}

/** A place on a leaf: from its spine end along it, and its depth in the closed block from the leaf at the board, mm. */
export interface LeafPoint {
  readonly at: Vec2;
  readonly along: number;
  readonly across: number;
}

/** Leaves that lie on each other, as those of some depths in the block; at least two, from the board side to the middle. */
export type Gathering = readonly (readonly LeafPoint[])[];

/** The half text block: what stays on its board, and the gatherings that fan out over it, toward the middle. */
export interface HalfBlock {
  readonly slab: Gathering;
  readonly fan: readonly Gathering[];
}

/** Play between the leaves and the case beside them, mm. Between the two half blocks a play would show as a crack. */
const PLAY = 0.02;
/** Least thickness of a half text block where the pockets press on it, as a share of what is there, and mm. */
const LEAST_PAGES = { share: 0.05, thickness: 0.05 };
/** Depths drawn in what stays on the board. */
const SLAB_LEAVES = 8;
/** Gatherings that fan on each side, and the share of the half block that they are. Free choice: how it looks. */
const GATHERINGS = 14;
const FAN_SHARE = 0.3;
/** Share of their board's swing that the last leaves keep to on either side of the open page: none near closed, this much when flat. */
const PARTED = 0.88;
/** Share of what a fanned leaf lacks of its board's swing that it sags over a length of its own. Free choice: how it looks. */
const SAG = 0.5;
/** Least radius on which leaves come down onto their board beyond the joint, mm and in depths of the block. Free choice. */
const LANDING = { least: 100, depths: 1.5 };
/** Turn under which leaves do not come down at all, radians. */
const LEAST_LANDING = 0.02;
/** Least distance between places on a leaf, mm: bends that are not there yet must not make triangles without area. */
const APART = 0.15;
/** Pieces drawn of each stretch: up to the joint, three bends with straight runs between them, landing, pocket, the rest. */
const PIECES = [1, 10, 1, 3, 1, 3, 4, 2, 6];

/**
 * The leaves of the half block at the back, standing as told.
 *
 * A leaf leaves the spine as it does in the closed book and turns outward about the joint's inner corner, on a radius as
 * large as its depth, and about what else stands in its way; then it runs on along its board. Leaves that turn alike thus
 * lie on each other at every swing, and the open fore-edge is bevelled. Leaves nearer to the middle turn less: they part
 * from those below them along a common tangent, and sag a little. All turn outward, the deeper the less, so that none
 * cross.
 */
export function halfBlock(book: BookModel, stand: BlockStand): HalfBlock {
  const own = closedBlock(book, stand);
  const closed = book.rise === stand.rest.rise ? own : { ...own, length: closedBlock(stand.rest, stand).length };
  const path = boardPath(book, stand, closed);
  const { leaf } = stand;
  const parted = PARTED * Math.min(1, leaf / (Math.PI / 2)) ** 2;
  const places = new Map<number, number[]>();
  const course = (share: number, swing: number): LeafPoint[] => {
    const known = places.get(share) ?? placesOn(closed, path, share);
    places.set(share, known);
    return leafAt(closed, path, share, swing, leaf, known);
  };
  const slabShare = 1 - FAN_SHARE;
  return {
    slab: Array.from({ length: SLAB_LEAVES + 1 }, (_, k) => course((slabShare * k) / SLAB_LEAVES, leaf)),
    fan: Array.from({ length: GATHERINGS }, (_, i) => {
      const swing = leaf * (parted + (1 - parted) * (1 - (i + 1) / GATHERINGS));
      return [i, i + 1].map((k) => course(slabShare + (FAN_SHARE * k) / GATHERINGS, swing));
    }),
  };
}

/** The closed half block in the frame of its board: along the board from the joint's inner corner, and into the block. */
interface ClosedBlock {
  readonly corner: Vec2;
  readonly tilt: number;
  /** Length of every leaf. */
  readonly length: number;
  /** Where the leaves have given way to the whole thickness of the pocket. */
  readonly given: number;
  /** Depth of a leaf at the corner; where it begins, along and deep; and how its line rises before corner, pocket, end. */
  depth(share: number): number;
  start(share: number): Vec2;
  slopes(share: number): readonly [number, number, number];
}

function closedBlock(book: BookModel, { tilt, pocket, mouth }: BlockStand): ClosedBlock {
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  const { spineInside: inside, spineEnd } = caseShape(book);
  const at = (from: number): ClosedBlock => {
    const corner: Vec2 = [from * c + book.board * s, -(book.thickness / 2 + from * s - book.board * c)];
    const toMiddle = (along: number): number => (-corner[1] + along * s) / c;
    const reach = mouth - from - 1;
    const given = Math.max(0, reach);
    const room = Math.min(toMiddle(given), toMiddle(book.width - book.square - from));
    const least = Math.min(LEAST_PAGES.share * room, LEAST_PAGES.thickness);
    const presses = Math.max(0, Math.min(pocket + bentIn(book, pocket, mouth), room - least - PLAY));
    // A pocket that reaches the joint is given way to from there.
    const low = PLAY + (reach > 0 ? 0 : presses);
    const rises = reach > 0 ? presses / given : 0;
    const depth = (share: number, along = 0): number => low + share * (toMiddle(along) - low);
    const start = (share: number): Vec2 => {
      let along = 0;
      for (let k = 0; k < 4; k++) {
        const q = depth(share, along);
        const y = corner[1] - along * s + q * c;
        along = (inside(y) + 5 * PLAY - corner[0] - q * s) / c;
      }
      return [along, depth(share, along)];
    };
    const slopes = (share: number): readonly [number, number, number] => {
      const out = Math.atan((share * s) / c);
      return [out, Math.atan((1 - share) * rises + (share * s) / c), out];
    };
    const length = Math.max(1, book.width - book.square - from - start(0)[0]);
    return { corner, tilt, length, given, depth, start, slopes };
  };
  // The corner is clear of the board at every swing from b on, and no leaf may begin beyond it.
  const least = Math.min(Math.max(book.board, book.edgeRadius, spineEnd) + PLAY, book.width / 2);
  const first = at(least);
  const beyond = Math.max(...[0, 0.25, 0.5, 0.75, 1].map((share) => first.start(share)[0]));
  return beyond > 0 ? at(Math.min(least + beyond + PLAY, book.width / 2)) : first;
}

/** How much higher than on the flat of the board a pocket stands that reaches onto its rounded edge, mm. */
function bentIn(book: BookModel, pocket: number, mouth: number): number {
  const { onBoard, turn } = edgeAt(book, 0);
  const radius = book.edgeRadius - book.board - pocket;
  if (pocket === 0 || radius <= 0 || onBoard <= mouth) return 0;
  return radius * (1 - Math.cos(Math.min(turn, (onBoard - mouth) / (radius + pocket / 2))));
}

/** How a leaf that lies on the board gets there: turns with straight runs after them, and the arc on which it comes down. */
interface BoardPath {
  readonly turns: readonly [number, number, number];
  readonly runs: readonly [number, number];
  /** The arc turns back by `turn`, radians. */
  readonly landing: { readonly radius: number; readonly turn: number };
  /** Length of leaf that lies along the board before it has given way to the pocket, mm. */
  readonly toGiven: number;
}

/**
 * The joint's corner does not swing with the board. Up to flat it stands a little above the board's inner face, and leaves
 * come down onto it; bent back past flat it falls behind that face, and they are drawn taut over the ends of spine piece
 * and board.
 */
function boardPath(book: BookModel, { tilt, board, leaf, fromClosed }: BlockStand, closed: ClosedBlock): BoardPath {
  const { corner, given } = closed;
  const { joint, spineEnd } = caseShape(book);
  const along = heading(-tilt - board);
  const up = leftOf(along);
  const face = addScaled([0, -book.thickness / 2], up, book.board);
  const boardEnd = addScaled(face, along, joint + jointSlide(book, fromClosed));
  const spineCorner: Vec2 = [spineEnd + PLAY, -book.thickness / 2];
  const toward = (a: Vec2, b: Vec2): number => {
    const [dx, dy] = subtract(b, a);
    // What lies behind the corner is a long way round, whichever way it turns.
    return wrapAngle(-tilt - Math.atan2(dy, dx), -Math.PI / 2);
  };
  /**
   * The way from a corner on: turn from the closed board, straight run, further turn, landing, and run along the board.
   * @param most turn beyond which the corner cannot be left, radians
   */
  const wayFrom = (from: Vec2, most: number) => {
    const off = dot(subtract(from, face), up);
    // In the closed book the corner lies on that face, but for rounding.
    if (off > -TOLERANCE.length) {
      const above = Math.max(0, off);
      const radius = Math.max(LANDING.least, LANDING.depths * closed.depth(1), above);
      const wished = Math.max(0, Math.min(leaf, Math.acos(1 - above / radius)) - (board - leaf));
      const turn = Math.max(0, Math.min(wished, most - leaf));
      // Where it may turn less than it comes down on, it runs straight on first; with hardly any turn it stays above the board.
      const left = above - radius * (1 - Math.cos(turn));
      const run = turn < wished && turn > LEAST_LANDING ? left / Math.sin(turn) : 0;
      const covered = run * Math.cos(turn) + radius * Math.sin(turn);
      return { out: leaf + turn, run, further: 0, landing: { radius, turn }, covered };
    }
    const out = Math.min(leaf, toward(from, boardEnd));
    const covered = dot(subtract(boardEnd, from), along);
    return {
      out,
      run: distance(from, boardEnd),
      further: leaf - out,
      landing: { radius: LANDING.least, turn: 0 },
      covered,
    };
  };
  const toSpine = toward(corner, spineCorner);
  const direct = wayFrom(corner, toSpine);
  if (direct.out <= toSpine) {
    const { out, run, further, landing, covered } = direct;
    return { turns: [out, further, 0], runs: [run, 0], landing, toGiven: Math.max(0, given - covered) };
  }
  const { out, run, landing, covered } = wayFrom(spineCorner, Number.POSITIVE_INFINITY);
  const atSpine = Math.max(0, out - toSpine);
  return {
    turns: [toSpine, atSpine, Math.max(0, leaf + landing.turn - toSpine - atSpine)],
    runs: [distance(corner, spineCorner), run],
    landing,
    toGiven: Math.max(0, given - covered - Math.max(0, dot(subtract(spineCorner, corner), along))),
  };
}

/** Lengths of the stretches of a leaf that lies on its board, at its depth: one for each of `PIECES`, without the last. */
type Stretches = readonly [
  before: number,
  first: number,
  firstRun: number,
  second: number,
  secondRun: number,
  third: number,
  down: number,
  toGiven: number,
];

function stretches(closed: ClosedBlock, { turns, runs, landing, toGiven }: BoardPath, share: number): Stretches {
  const depth = closed.depth(share);
  const [along] = closed.start(share);
  const [near, past] = closed.slopes(share);
  const before = -along / Math.cos(near);
  const down = Math.max(0, landing.radius - depth) * landing.turn;
  // A leaf that rises to the pocket takes more length than the board under it.
  const rising = toGiven + closed.given * (1 / Math.cos(past) - 1);
  return [before, depth * turns[0], runs[0], depth * turns[1], runs[1], depth * turns[2], down, rising];
}

/** Places on a leaf of a depth in the block: the same for all that lie on each other there, whatever their swing. */
function placesOn(closed: ClosedBlock, path: BoardPath, share: number): number[] {
  const places = [0];
  let from = 0;
  const lengths = stretches(closed, path, share);
  PIECES.forEach((count, i) => {
    const to = i < lengths.length ? from + lengths[i]! : Math.max(from, closed.length);
    for (let k = 1; k <= count; k++) places.push(from + ((to - from) * k) / count);
    from = to;
  });
  const last = places.length - 1;
  const apart = Math.min(APART, closed.length / (2 * last));
  for (let i = 1; i <= last; i++) places[i] = Math.max(places[i]!, places[i - 1]! + apart);
  places[last] = closed.length;
  // Bends that a short leaf has no length for stay beyond its end.
  for (let i = last - 1; i > 0; i--) places[i] = Math.min(places[i]!, places[i + 1]! - apart);
  return places;
}

/** A leaf that turns by its own swing, on the way of one that lies on the board as far as it goes along with it. */
function leafAt(
  closed: ClosedBlock,
  path: BoardPath,
  share: number,
  swing: number,
  outermost: number,
  places: number[],
): LeafPoint[] {
  const { corner, tilt, length } = closed;
  const depth = closed.depth(share);
  const [before, , firstRun, , secondRun, , down, toGiven] = stretches(closed, path, share);
  const lies = swing === outermost;
  const turns = lies ? path.turns : turnedAtMost(path.turns, swing);
  const [near, past, far] = closed.slopes(share);
  const sag = (SAG * (outermost - swing)) / length;
  const sagging = (run: number): Bend => ({ length: run, turn: sag * run });
  const bends: Bend[] = [
    { length: before, turn: 0 },
    { length: 0, turn: near - past },
  ];
  let taken = 0;
  turns.forEach((turn, i) => {
    bends.push({ length: depth * turn, turn });
    taken += depth * (path.turns[i]! - turn);
    // A leaf that has done all its turning sags from there on.
    const turnsLater = turns.slice(i + 1).some((later) => later > 0);
    const run = [firstRun, secondRun, 0][i]!;
    bends.push(turnsLater ? { length: run, turn: 0 } : sagging(run));
  });
  if (lies) bends.push({ length: down, turn: -path.landing.turn });
  else taken += down;
  bends.push(sagging(taken + toGiven), { length: 0, turn: past - far }, sagging(length));
  const start = closed.start(share);
  const along = heading(-tilt);
  const course = {
    start: addScaled(addScaled(corner, along, start[0]), leftOf(along), start[1]),
    direction: near - tilt,
    bends,
  };
  const across = depth - closed.depth(0);
  return leafPoints(course, places).map((at, i) => ({ at, along: places[i]!, across }));
}
