import type { BookModel } from '../book/bookModel.ts';
import { boardDirections, jointSlide, type Opening } from '../book/bookOutline.ts';
import type { Movements } from '../film/filmStep.ts';
import { type Loading, loadingAt } from '../film/loading.ts';
import { ramp } from '../film/ramp.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import { flatHalf, type HalfSection, halfSection } from '../fold/section/halfSection.ts';
import {
  type FoldEnds,
  type HeldEnd,
  type HeldPath,
  halvesOf,
  heldPath,
  straightPath,
} from '../fold/section/heldPath.ts';
import { LIFT_RADIUS } from '../fold/section/innerPath.ts';
import { wrapSection } from '../fold/section/wrapSection.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { circularSegment } from '../math/circularSegment.ts';
import { findLevel } from '../math/findLevel.ts';
import { remembered } from '../math/remembered.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { addScaled, dot, heading, leftOf, subtract, type Vec2 } from '../math/vec2.ts';
import { type OpeningRange, openingRange } from './openingRange.ts';
import { type BookPlace, type Sides, type Standing, standingAt } from './standing.ts';

/** How the leaf of a pocket stands over the outside. */
export interface PocketStand {
  /** Height over the inner face to which the leaf is lifted, mm: the board's thickness where a board is in. */
  readonly rise: number;
  /** How far from its place at home the board's tip stands, mm: the leaf lies flat up to there. */
  readonly lead: number;
}

/** One moment of loading. */
export interface LoadingStanding {
  readonly standing: Standing;
  readonly pockets: Sides<PocketStand>;
}

/** Room left between moving parts, mm. */
const PLAY = 0.1;
/** How far before its mouth the first board is seen first, and from where on the mouth is lifted for it, mm. Free choice. */
const BEFORE = 15;
const LIFTED_FROM = 10;
/** A board that does not go in stands so far before the mouth, mm. */
const STOPPED = 0.5;
/** How much of the first board stays caught while the boards are bent back, and least way of the second past its mouth, mm. Free choice. */
const CAUGHT = 10;
const CLEAR = 4;
/** How far before a place that is near it the second board's is sought, mm, nearer where the leather would go another way. */
const NEARER = [5, 2.5, 1, 0];
/** Excess that is no way round, mm. */
const STRAIGHT = 1;
/** Places tried for the first board between there and home. */
const CATCHES = 12;
/** Opening at which the first board goes in, radians (120 degrees). Free choice. */
const HALF_OPEN = (2 * Math.PI) / 3;
/** Longest stretch of leather that bends at a mouth, mm, and least radius there, in thicknesses of all layers. Free choices. */
const BEND_REACH = 3;
const LEAST_BEND = 1.5;
/** Angle past flat, radians, over which the leather comes to bend at the very mouth. */
const TIGHTENS = 0.25;
/** How far beyond the mouth leather lies on the board of a flat cover, mm: as `wrapSection` has it. */
const BEYOND_MOUTH = 2;
/** A half shorter than this, mm, is not drawn as lying on a book. */
const LEAST_HALF = 30;

/** What loading ends in: the cover on the widest open book, taut, or lying flat where the book does not go in. */
interface Home {
  readonly standing: Standing;
  /** Board length in each pocket. */
  readonly covered: Sides<number>;
  readonly folds: FoldEnds;
  /** The cover lying flat without a book, its middle where it is at home, and the length of its inner face to the tips. */
  readonly flat: Sides<HalfSection>;
  readonly reach: Sides<number>;
  /** First board as far as it goes. */
  readonly stop: number;
}

const homeOf = remembered(findHome);

function findHome(design: CoverDesign, point: RangePoint): Home {
  const { job, pieces } = design;
  const range = openingRange(design, point);
  const needs = design.needs[point];
  const { outside, lining } = needs.leathers;
  const standing = range ? standingAt(design, point, range.most, undefined, 0) : standingFlat(design, point);
  const covered = (half: HalfSection): number =>
    Math.max(0, Math.min(pieces.pocketDepth - needs.foreEdge.seat - half.gap, half.toTip));
  const folds: FoldEnds = {
    front: standing.front.toFoldEnd,
    back: standing.back.toFoldEnd,
    depth: (lining?.foldThickness ?? 0) + outside.neutralDepth,
  };
  const lengths = { front: standing.front.toTip, back: standing.back.toTip };
  const flatOf = (side: 'front' | 'back'): { half: HalfSection; reach: number } => {
    const half = standing[side];
    if (half.toTip < LEAST_HALF) return { half, reach: half.toTip };
    let reach = half.toTip;
    for (let i = 0; ; i++) {
      const path = halvesOf(straightPath([half.middle, reach], -Math.PI / 2, 2 * reach), reach, folds)[side];
      const section = wrapSection(job, pieces, needs, Math.PI, { settled: path });
      const off = lengths[side] - section.toTip;
      if (Math.abs(off) < TOLERANCE.length || i === MOST_STEPS)
        return { half: halfSection(section, needs, half.gap + off, pieces.pocketDepth), reach };
      reach += off;
    }
  };
  const flat = { front: flatOf('front'), back: flatOf('back') };
  const inPocket = { front: covered(standing.front), back: covered(standing.back) };
  const { head, tail } = design.fits[point];
  return {
    standing,
    covered: inPocket,
    folds,
    flat: { front: flat.front.half, back: flat.back.half },
    reach: { front: flat.front.reach, back: flat.back.reach },
    stop: head + tail < -TOLERANCE.length ? -STOPPED : inPocket.front,
  };
}

/** Steps in which a length is found: each brings it nearer by some orders of magnitude. */
const MOST_STEPS = 6;

/** The cover flat without a book, used where the book does not go in: no gap. */
function standingFlat(design: CoverDesign, point: RangePoint): Standing {
  const needs = design.needs[point];
  const half = flatHalf(design.pieces, needs);
  const mouth = needs.book.width + needs.foreEdge.seat - design.pieces.pocketDepth;
  return {
    front: half,
    back: half,
    swings: { front: Math.PI / 2, back: Math.PI / 2 },
    place: { turn: 0, shift: [0, 0] },
    benchTurn: Math.PI / 2,
    mouths: { front: mouth, back: mouth },
    bowed: 0,
    spare: 0,
  };
}

/**
 * How cover, pockets and book stand while hands load them: the cover flat and the first board slid in; both boards bent back;
 * the second board slid in and both laid flat.
 *
 * The leather lies along each board up to the mouth of its pocket and is taut between the mouths, so that
 * (W - p) cos theta of both boards add up to what lies between the mouths once they are home, p being what is in each pocket.
 * @param range null where the book does not go in: the film stops at the first board
 */
export function loadingStanding(
  design: CoverDesign,
  point: RangePoint,
  range: OpeningRange | null,
  movements: Movements,
): LoadingStanding {
  const home = homeOf(design, point);
  if (movements.bentBack === 0 || range === null) return slidIn(design, point, home, loadingAt(movements));
  return bentBack(design, point, home, range, movements);
}

/** How high a leaf stands over the outside while no board is in its pocket. */
const leafHeight = (design: CoverDesign, point: RangePoint): number => {
  const { book, leathers, foreEdgeSeat } = design.needs[point];
  if (foreEdgeSeat !== null) return leathers.pocket.thickness + PLAY;
  const lined = design.job.construction.lining === 'full' ? (leathers.lining?.thickness ?? 0) : 0;
  return leathers.outside.thickness + lined + book.board + PLAY;
};

/** Swings at which the front board lies on the flat leather, so that its back clears it and the other pocket. */
function frontSwings(design: CoverDesign, point: RangePoint, home: Home): Opening {
  const { book } = design.needs[point];
  const round = book.rise > 0 ? circularSegment(book.thickness, book.rise).halfAngle : 0;
  const flatBeyond = flatReach(design, point);
  const toLeaf = backMouth(design, point, home, -BEFORE - flatBeyond) - flatBeyond;
  const toMouth = Math.max(LEAST_WAY, toLeaf);
  const tilt = Math.min(MOST_TILT, Math.max(round, Math.atan(leafHeight(design, point) / toMouth)) + PLAY_ANGLE);
  const front = Math.PI / 2 - tilt - book.wedge;
  return { front, back: HALF_OPEN - front };
}

const MOST_TILT = 1.55;
const PLAY_ANGLE = 0.01;
const LEAST_WAY = 10;
/** Most by which the back half hangs down, radians. */
const MOST_DROOP = 1;

/** From the front hinge to the mouth of the back pocket, with some of the front board in its pocket, mm. */
const backMouth = ({ needs }: CoverDesign, point: RangePoint, { reach, covered }: Home, inPocket: number): number =>
  reach.front + reach.back - covered.front - covered.back - (needs[point].book.width - inPocket);

/** How much farther the leaf of an empty pocket reaches, lying flat, than over its board, mm. */
const flatReach = ({ job, pieces, needs }: CoverDesign, point: RangePoint): number =>
  needs[point].foreEdgeSeat === null
    ? 0
    : Math.max(0, pieces.pocket.width - job.seam.edgeMargin_mm - pieces.pocketDepth);

function slidIn(
  design: CoverDesign,
  point: RangePoint,
  home: Home,
  { arrived, slidIn: share }: Loading,
): LoadingStanding {
  const { book } = design.needs[point];
  const flatBeyond = flatReach(design, point);
  const before = BEFORE + flatBeyond;
  const inPocket = -before + (home.stop + before) * share;
  const swings = frontSwings(design, point, home);
  const { covered, reach } = home;
  const pockets: LoadingStanding['pockets'] = {
    front: {
      // Lying flat its leaf reaches farther than over a board: it is lifted before the tip comes to it.
      rise: home.stop > 0 ? book.board * ramp(inPocket + flatBeyond, -LIFTED_FROM, -STOPPED) : 0,
      lead: covered.front - Math.max(0, inPocket),
    },
    back: { rise: 0, lead: covered.back },
  };
  const flat = { ...home.standing, ...home.flat, swings, benchTurn: Math.PI / 2, bowed: 0 };
  if (arrived === 0 || Math.min(reach.front, reach.back) < LEAST_HALF) return { standing: flat, pockets };
  const way = boardDirections(book, swings).front;
  const along = heading(way);
  const beyond = book.width + jointSlide(book, swings.front) + covered.front - inPocket;
  const start = addScaled([0, book.thickness / 2], along, beyond);
  const drop = arrived * droop(design, point, home, swings.front, inPocket);
  const path = drooping(start, way + Math.PI, covered.front + BEYOND_MOUTH, reach.front + reach.back, drop);
  const { front, back, place } = laidAlong(design, point, home, path, 1);
  const [x, y] = place.shift;
  // It comes down from above the leaf of the other pocket.
  const above = addScaled([x, y], leftOf(heading(way + place.turn)), -(1 - arrived) * leafHeight(design, point));
  return { standing: { ...flat, front, back, place: { ...place, shift: above } }, pockets };
}

/** A straight path that turns away from the book by `turn` at a length from its start. */
function drooping(start: Vec2, way: number, at: number, length: number, turn: number): HeldPath {
  const straight = straightPath(start, way, length);
  if (turn === 0) return straight;
  const arc = LIFT_RADIUS * turn;
  const pieces = [
    { length: at, angle: 0 },
    { length: arc, angle: -turn },
    { length: length - at - arc, angle: 0 },
  ];
  return { ...straight, pieces };
}

/**
 * Angle by which the back half of the cover has to hang down from the front board's plane, for its pocket to lie clear of the
 * book, radians; 0 where it does so anyway.
 */
function droop(design: CoverDesign, point: RangePoint, home: Home, swing: number, inPocket: number): number {
  const { book } = design.needs[point];
  const height = leafHeight(design, point);
  const hinge = book.width + jointSlide(book, swing) - inPocket - BEYOND_MOUTH;
  const { reach, covered } = home;
  const toMouth = reach.front + reach.back - covered.front - covered.back;
  const toLeaf = toMouth - flatReach(design, point) - BEYOND_MOUTH;
  /** How far the pocket's leaf stands over what is above it, where the leather turns down by an angle. */
  const over = (angle: number): number => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const leg = toLeaf - LIFT_RADIUS * angle;
    const x = LIFT_RADIUS * s + leg * c + height * s;
    return height * c - LIFT_RADIUS * (1 - c) - leg * s - backAbove(book, swing, x - hinge);
  };
  return over(0) <= 0 ? 0 : findLevel((angle) => -over(angle), 0, 0, MOST_DROOP);
}

/** Height of the back of the book over the plane of its front board, at a distance from the hinge, mm. */
function backAbove({ thickness, rise, wedge }: BookModel, swing: number, x: number): number {
  const tilt = Math.PI / 2 - swing - wedge;
  if (x <= 0) return 0;
  if (rise === 0) return x * Math.tan(tilt);
  const { radius, halfAngle } = circularSegment(thickness, rise);
  const from = tilt - halfAngle;
  const sine = Math.sin(from) + x / radius;
  return sine >= 1 ? Number.POSITIVE_INFINITY : radius * (Math.cos(from) - Math.sqrt(1 - sine * sine));
}

const turned = ([x, y]: Vec2, by: number): Vec2 => [
  x * Math.cos(by) - y * Math.sin(by),
  x * Math.sin(by) + y * Math.cos(by),
];

/** What hands hold: the swing along which each end of the leather lies, and how much of each board is in its pocket. */
interface Hold {
  readonly swings: Opening;
  readonly front: number;
  readonly back: number;
  /** How far the back end lies off its board, and the share of its turn there that it follows. */
  readonly off: number;
  readonly turned: number;
}

/** Both boards flat, and bent back all the way: the second before its closed mouth, and before the lifted one. */
type Widest = Readonly<Record<'flat' | 'closed' | 'lifted', Hold>>;

const widests = new WeakMap<Home, Widest>();

function bentBack(
  design: CoverDesign,
  point: RangePoint,
  home: Home,
  range: OpeningRange,
  movements: Movements,
): LoadingStanding {
  const { book } = design.needs[point];
  const { covered } = home;
  const load = loadingAt(movements);
  const off = leafHeight(design, point);
  const pathOf = (hold: Hold): HeldPath => heldBy(design, point, home, hold);
  const excess = (hold: Hold): number => excessOf(design, point, home, pathOf(hold));
  /**
   * The second board as far out of its pocket as the leather lets it.
   * @param near about how far that is, where the leather could as well go round the back of the book, mm
   */
  const withBack = (hold: Omit<Hold, 'back'>, near?: number): Hold => {
    const over = (by: number): number => excess({ ...hold, back: -by });
    const least = NEARER.map((by) => (near ?? Number.NaN) - by).find(
      (by, i) => over(by) < (i < NEARER.length - 1 ? 0 : STRAIGHT),
    );
    return { ...hold, back: -findLevel(over, 0, least ?? farthestIn(hold), book.width) };
  };
  /**
   * Farther in than where the leather meets the second board square, less would be spanned by pulling it out; and the leaf of its
   * pocket never comes to the spine.
   */
  const farthestIn = (hold: Omit<Hold, 'back'>): number =>
    Math.max(-covered.back - book.width / 2, outWhereSquare(book, hold), CLEAR + flatReach(design, point) - book.width);
  const flat = Math.PI / 2;
  const { loadingAngle } = design.fits[point].pocket;
  const angle = Math.min(loadingAngle, book.foldBack);
  const bentSwings = (by: number): Opening => ({ front: flat + by, back: flat + by });
  const findWidest = (): Widest => {
    const least = Math.min(CAUGHT, covered.front);
    let best: Omit<Widest, 'flat'> | null = null;
    const inMouth = ({ closed, lifted }: Omit<Widest, 'flat'>): number => Math.max(closed.back, lifted.back);
    for (let i = 0; i <= CATCHES; i++) {
      const held = { swings: bentSwings(angle), turned: 1, front: least + ((covered.front - least) * i) / CATCHES };
      const found = { closed: withBack({ ...held, off }), lifted: withBack({ ...held, off: 0 }) };
      if (best === null || inMouth(found) < inMouth(best)) best = found;
      if (inMouth(best) <= -CLEAR - flatReach(design, point)) break;
    }
    return { ...best!, flat: withBack({ swings: bentSwings(0), front: covered.front, off, turned: 1 }) };
  };
  const widest = (): Widest => {
    const found = widests.get(home) ?? findWidest();
    widests.set(home, found);
    return found;
  };

  let hold: Hold;
  let backSwing: number | null = null;
  if (load.laidOver < 1) {
    const start = frontSwings(design, point, home);
    const over = startOver(design, point, home, start.front, off);
    const share = load.laidOver;
    const swings = {
      front: start.front + (flat - start.front) * share,
      back: over.swing + (flat - over.swing) * share,
    };
    const out = over.out - (widest().flat.back + over.out) * share;
    hold = withBack({ swings, front: covered.front, off, turned: ramp(share, 0, 0.7) }, out);
    // Never past the leather, which comes to it from the other side.
    backSwing = Math.min(swings.back, start.back + (swings.back - start.back) * share * share);
  } else if (movements.secondIn === 0) {
    const bent = Math.min(angle, loadingAngle * load.bent);
    const front = bent > 0 ? covered.front + (widest().closed.front - covered.front) * (bent / angle) : covered.front;
    // The first board comes out no farther than the leather from its mouth reaches the other one.
    const within = (caught: number): Omit<Hold, 'back'> => ({
      swings: bentSwings(bent),
      front: caught,
      off,
      turned: 1,
    });
    const short = (by: number): number => excess({ ...within(-by), back: -farthestIn(within(-by)) });
    hold = withBack(within(short(-front) > 0 ? -findLevel(short, 0, -covered.front, -front) : front));
  } else if (load.slidHome === 0) {
    hold = withBack({ ...widest().closed, off: off * (1 - load.lifted) });
  } else {
    const from = widest().lifted;
    const slid = {
      off: 0,
      turned: 1,
      front: from.front + (covered.front - from.front) * load.slidHome,
      back: from.back + (covered.back - from.back) * load.slidHome,
    };
    const at = (less: number): Hold => ({ ...slid, swings: { front: -less, back: -less } });
    hold = at(findLevel((less) => excess(at(less)), 0, -flat - angle, -range.most / 2));
  }

  const settling = ramp(load.slidHome, 0.7, 1);
  const laid = laidAlong(design, point, home, pathOf(hold), 1 - settling);
  const back = Math.max(0, hold.back);
  return {
    standing: {
      ...home.standing,
      front: laid.front,
      back: laid.back,
      swings: { front: hold.swings.front, back: backSwing ?? hold.swings.back },
      place: laid.place,
      benchTurn: flat + (home.standing.benchTurn - flat) * settling,
    },
    pockets: {
      front: { rise: book.board, lead: covered.front - hold.front },
      back: {
        rise: book.board * load.lifted,
        lead: load.lifted === 0 ? covered.back : covered.back - back,
      },
    },
  };
}

/** How far the second board stands out of its pocket where taut leather from the first mouth meets it square, mm. */
function outWhereSquare(book: BookModel, { swings, front }: Omit<Hold, 'back'>): number {
  const alongFront = heading(book.wedge + swings.front);
  const alongBack = heading(-book.wedge - swings.back);
  const tip = book.width + jointSlide(book, swings.front);
  const mouth = addScaled([0, book.thickness / 2], alongFront, tip - front);
  return dot(subtract(mouth, [0, -book.thickness / 2]), alongBack) - book.width - jointSlide(book, swings.back);
}

/**
 * Swing of the back board, and how far its tip is out, where the end of the leather that it holds, `off` away, begins on the
 * line of a cover that lies flat along the front board.
 */
function startOver(design: CoverDesign, point: RangePoint, home: Home, front: number, off: number) {
  const { book } = design.needs[point];
  const way = book.wedge + front;
  const { standing, covered } = home;
  const beyond = heldAtHome(standing, covered, 'back') - covered.back;
  const from = backMouth(design, point, home, covered.front) - beyond;
  const [x, y] = subtract(addScaled([0, book.thickness / 2], heading(way), -from), [0, -book.thickness / 2]);
  const along = Math.sqrt(Math.max(0, x * x + y * y - off * off));
  const swing = -(Math.atan2(y, x) + Math.atan2(off, along)) - book.wedge;
  // A place behind the back of the book is one to bend back to, not to close on.
  const back = swing < -Math.PI / 2 ? swing + 2 * Math.PI : swing;
  return { swing: back, out: along + beyond - book.width - jointSlide(book, back) };
}

/** How far the cover lies on a board that is home, from its tip, mm. */
const heldAtHome = (standing: Standing, covered: Sides<number>, side: keyof Sides<unknown>): number =>
  standing[side].held ?? covered[side] + BEYOND_MOUTH;

function heldBy(design: CoverDesign, point: RangePoint, { standing, covered }: Home, hold: Hold): HeldPath {
  const { book, leathers } = design.needs[point];
  const end = (side: 'front' | 'back'): HeldEnd => {
    const swing = hold.swings[side];
    const beyond = covered[side] - hold[side];
    const tight = tightness(hold);
    const held = heldAtHome(standing, covered, side);
    return {
      swing,
      home: book.width + jointSlide(book, swing) + beyond,
      held: Math.max(0, Math.min(held + (covered[side] - held) * tight, book.width - BEYOND_MOUTH + beyond)),
      off: side === 'back' ? hold.off : 0,
      turned: side === 'back' ? hold.turned : 1,
    };
  };
  const thickness = leathers.outside.thickness + (leathers.lining?.thickness ?? 0);
  return heldPath(book, end('front'), end('back'), {
    least: LEAST_BEND * thickness,
    most: BEND_REACH / Math.max(tightness(hold), TOLERANCE.ratio),
  });
}

const tightness = ({ swings }: Hold): number =>
  Math.max(0, Math.min(1, (swings.front + swings.back - Math.PI) / (2 * TIGHTENS)));

/** The sections of both halves along a path, the middle of the cover in its place. */
function sectionsAlong(
  { job, pieces, needs }: CoverDesign,
  point: RangePoint,
  home: Home,
  path: HeldPath,
  steps: number,
) {
  const lengths = { front: home.standing.front.toTip, back: home.standing.back.toTip };
  const section = (settled: ReturnType<typeof halvesOf>['front']) =>
    wrapSection(job, pieces, needs[point], Math.PI, { settled });
  let at = (path.length * lengths.front) / (lengths.front + lengths.back);
  for (let i = 0; ; i++) {
    const halves = halvesOf(path, at, home.folds);
    const front = section(halves.front);
    const off = lengths.front - front.toTip;
    if (Math.abs(off) < TOLERANCE.length || i === steps)
      return { front, back: section(halves.back), halves, off: { front: off, back: 0 }, lengths };
    at += off;
  }
}

/** How much longer a path is than the leather, mm; 0 where that is floating-point noise. */
function excessOf(design: CoverDesign, point: RangePoint, home: Home, path: HeldPath): number {
  const { front, back, lengths } = sectionsAlong(design, point, home, path, 1);
  const off = front.toTip + back.toTip - lengths.front - lengths.back;
  return Math.abs(off) < TOLERANCE.length ? 0 : off;
}

/** Lays the cover along a path, the book turned so that both cut edges are level, and moved so that the cover's middle stays where it is. */
function laidAlong(design: CoverDesign, point: RangePoint, home: Home, path: HeldPath, level: number) {
  const needs = design.needs[point];
  const { front, back, halves, lengths } = sectionsAlong(design, point, home, path, MOST_STEPS);
  const beyond = (side: 'front' | 'back'): number =>
    home.standing[side].gap + needs.foreEdge.seat + needs.foreEdge.margin;
  const frontEdge = addScaled(path.start, heading(path.heading), -beyond('front'));
  const backEdge = addScaled(halves.end.at, heading(halves.end.way), beyond('back'));
  const [x, y] = subtract(backEdge, frontEdge);
  const turn = level * (-Math.PI / 2 - Math.atan2(y, x));
  const [mx, my] = turned(halves.middle, turn);
  const shift: Vec2 = [home.standing.front.middle - mx, -my];
  const half = (section: typeof front, side: 'front' | 'back'): HalfSection => {
    const sign = side === 'front' ? -1 : 1;
    const laid = halfSection(
      section,
      needs,
      home.standing[side].gap + lengths[side] - section.toTip,
      design.pieces.pocketDepth,
    );
    return {
      ...laid,
      middle: home.standing.front.middle,
      skew: { aside: 0, lean: (laid.skew?.lean ?? 0) + sign * turn },
    };
  };
  const place: BookPlace = { turn, shift };
  return { front: half(front, 'front'), back: half(back, 'back'), place };
}
