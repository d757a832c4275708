/**
 * The leather across the spine of a book: what the elastic strip says about a cover.
 *
 *   const solver = createStripSolver();
 *   const closed = solveSection({ outline, offset, thickness, neutral, length, held, scale, height, modulus }, solver);
 *   if (closed.status === 'converged') draw(closed.section);      // otherwise the closed form stands in
 *   const open = solveSection({ ...input, outline: outlineWhenOpen, crease: { angles: closed.angles, set: 0.8 } }, solver);
 *
 * Plain numbers and arrays in and out (mm, rad, N, N mm); SectionInput states each. A cold start each time, so a result
 * depends on its input alone. Never throws: see `status` and `message`.
 */
import { wrapAngle } from '../../math/angle.ts';
import { addScaled, heading, leftOf, type Vec2 } from '../../math/vec2.ts';
import { followStrip } from '../../strip/followStrip.ts';
import { growOutline, type Obstacle } from '../../strip/obstacle.ts';
import { finerSolver, type StripSolver, solveStrip } from '../../strip/solveStrip.ts';
import type { Floor, StripEnd, StripProblem } from '../../strip/stripProblem.ts';
import { stripScale } from '../../strip/stripScale.ts';
import type { EndReaction, StripSolution, StripStatus } from '../../strip/stripSolution.ts';
import { openingMoment } from './openingMoment.ts';
import { guessSection } from './sectionGuess.ts';
import { faultInSection, type PerBoard, type SectionInput } from './sectionInput.ts';
import { sectionShape } from './sectionShape.ts';

export interface StripSection {
  /** Anything but `converged` is no shape to trust. */
  readonly status: StripStatus;
  readonly message: string;
  readonly iterations: number;
  /** Largest unbalanced force on a node, N. */
  readonly residual: number;
  /** Deepest the mid-surface enters the outline grown by half the thickness, mm. */
  readonly contactGap: number;
  /** Mid-surface from the front end of the leather to the back one, held parts included; x and y in turn, mm. */
  readonly section: Float64Array;
  /** Tangent angles at even spaces between the two held places, rad: what a crease would be set to. */
  readonly angles: Float64Array;
  /** Farthest the leather stands off the book over the spine, and off the boards, mm. */
  readonly spineBow: number;
  readonly faceBulge: number;
  /** Spare room that is left at each fore-edge, mm. */
  readonly foreEdgeGap: PerBoard;
  /**
   * Pull of the leather on each of its ends toward the spine, N: on the seat, or on what keeps a posed gap, which may be pushed
   * instead (negative); 0 where a sliding end has spare room.
   */
  readonly seatForce: PerBoard;
  /** Force that holds the leather flat on each board at the end of its held part, across the board, N, 0 up. */
  readonly heldForce: PerBoard;
  /** Length left over beyond the taut path, mm; negative where the leather is stretched. */
  readonly slack: number;
  /** How far the bench is turned from the back board toward the book's back, radians; 0 without a bench. */
  readonly benchTilt: number;
  /** Smallest inside radius, mm, null where the leather lies flat; and the outer fibre's strain there, (1 - K)/(r/t + K). */
  readonly insideRadius: number | null;
  readonly outerStrain: number;
  /** Elastic energy, N mm. */
  readonly energy: number;
  /** Moment on the opening, N mm, positive where the leather opens the book; 0 unless the input has a `rate`. */
  readonly moment: number;
  /** Sum of the forces with which the leather lies on the book, N. */
  readonly press: number;
}

/** Rounds of fitting the mid-surface length to the neutral one; the turning they depend on settles in two or three. */
const LENGTH_ROUNDS = 6;

/** Change of length, D, at which that fit is done: a ten-thousandth of a book's thickness. */
const LENGTH_SETTLED = 1e-5;

/** Spare length that is solved with ease, as a share of the taut path: the leather neither pulls nor makes a balloon. */
const EASY_SLACK = 0.05;

/** Radius, D, from which leather counts as flat: it rises a hundredth of a book's thickness over twenty thicknesses. */
const FLAT_RADIUS = 5000;

/**
 * Finds the shape of a leather cover across the spine of a book.
 *
 * Mid-surface length = neutral length - (K - 1/2) t sum|d theta|, refitted to the shape's own turning; the strip between the
 * held places is then the least-energy shape outside the outline grown by offset + t/2 (see solveStrip).
 *
 * @param solver made by createStripSolver; its memory is reused
 * @returns the section; with `badInput`, `message` names the place, what was got and what is allowed
 */
export function solveSection(input: SectionInput, solver: StripSolver): StripSection {
  const fault = faultInSection(input);
  if (fault) return emptySection('badInput', fault);
  const d = input.scale;
  const t = input.thickness / d;
  const outline = Array.from(input.outline, (v) => v / d);
  const obstacle = growOutline(outline, false, input.offset / d + t / 2, solver.settings.facetTurn);
  const held = { front: input.held.front / d, back: input.held.back / d };
  const gap = input.gap && { front: input.gap.front / d, back: input.gap.back / d };
  const last = obstacle.x.length - 1;
  const front = heldPlace(obstacle.x, obstacle.y, 0, 1, held.front);
  const back = heldPlace(obstacle.x, obstacle.y, last, last - 1, held.back);
  const scale = stripScale(d, input.thickness, input.height, input.modulus);

  const lengthAt = (turning: number): number =>
    input.length / d - (input.neutral - 0.5) * t * turning - held.front - held.back - (gap ? gap.front + gap.back : 0);
  let length = lengthAt(Math.abs(wrapAngle(back.angle + Math.PI - front.angle)));
  if (!(length > 0)) return emptySection('badInput', `length: got ${input.length}, too short for what is held flat`);
  const guess = guessSection(
    obstacle,
    front.at,
    back.at,
    length,
    gap ? null : { start: front.angle, end: back.angle + Math.PI },
  );
  const crease = input.crease;
  const floor = input.bench ? benchUnder(obstacle, input.bench.overhang / d, CLEARANCE * t) : undefined;
  const problemOf = (free: number, creased = 1): StripProblem => ({
    length: free,
    stretchStiffness: scale.stretchStiffness,
    start: endOf(front.at, front.angle, gap ? null : { max: 0 }),
    end: endOf(back.at, back.angle + Math.PI, gap ? null : { min: 0 }),
    restAngle: crease && Array.from(crease.angles, (angle) => angle * crease.set * creased),
    obstacle,
    floor,
  });
  const onBench = (path: readonly number[]): readonly number[] => (floor ? raised(path, floor) : path);
  const paths = [guess.path, ...(guess.drawnOut ? [guess.drawnOut] : [])].map(onBench);
  let iterations = 0;
  /** The solver, or a finer one once it has failed. */
  let used = solver;
  /**
   * From each guess, and where all fail from leather that is easily solved, let out or taken in and creased bit by bit; then
   * the same in a finer strip, since leather that is long for its book turns its folds within one edge.
   */
  const solveAfresh = (): StripSolution => {
    const lengthAtShare = fromEasyLength(guess.tautLength, length);
    const easy = onBench(guessSection(obstacle, front.at, back.at, lengthAtShare(0), null).path);
    const starts = [
      ...paths.map((path) => () => solveStrip(used, problemOf(length), path)),
      () => followStrip(used, (share) => problemOf(lengthAtShare(share), share), easy),
    ];
    for (;;) {
      let last!: StripSolution;
      for (const start of starts) {
        last = start();
        iterations += last.iterations;
        if (last.status === 'converged') return last;
      }
      if (used !== solver) return last;
      used = finerSolver(solver);
    }
  };
  let solution = solveAfresh();
  const spine = input.spine ?? { first: 1, last: outline.length / 2 - 2 };
  let shape = solution.nodes.length > 0 ? sectionShape(solution.nodes, solution.spacing, obstacle, spine) : null;
  for (let round = 0; round < LENGTH_ROUNDS && shape && solution.status === 'converged'; round++) {
    const next = lengthAt(shape.turning);
    if (Math.abs(next - length) <= LENGTH_SETTLED) break;
    length = next;
    solution = solveStrip(used, problemOf(length));
    iterations += solution.iterations;
    if (solution.status !== 'converged') solution = solveAfresh();
    shape = solution.nodes.length > 0 ? sectionShape(solution.nodes, solution.spacing, obstacle, spine) : null;
  }
  if (!shape) return emptySection(solution.status, solution.message);

  const foreEdgeGap = gap ?? { front: -solution.start.slide, back: solution.end.slide };
  const ends = {
    start: { ...front, tip: 0, hinge: 1 },
    end: { at: back.at, angle: back.angle + Math.PI, tip: outline.length / 2 - 1, hinge: outline.length / 2 - 2 },
  };
  const rate = Array.from(input.rate ?? outline.map(() => 0), (v) => v / d);
  const { moment, press } = openingMoment(solution, obstacle, outline, rate, ends);
  const insideRadius = Math.max(0, shape.leastRadius - t / 2);
  return {
    status: solution.status,
    message: solution.message,
    iterations,
    residual: solution.residual * scale.force,
    contactGap: solution.contactGap * d,
    section: wholeSection(solution, front, back, held, foreEdgeGap).map((v) => v * d),
    angles: shape.angles,
    spineBow: shape.spineBow * d,
    faceBulge: shape.faceBulge * d,
    foreEdgeGap: { front: Math.max(0, foreEdgeGap.front * d), back: Math.max(0, foreEdgeGap.back * d) },
    seatForce: {
      front: -along(solution.start, ends.start, gap !== undefined) * scale.force,
      back: along(solution.end, ends.end, gap !== undefined) * scale.force,
    },
    heldForce: {
      front: Math.abs(across(solution.start, ends.start)) * scale.force,
      back: Math.abs(across(solution.end, ends.end)) * scale.force,
    },
    slack: (length - guess.tautLength) * d,
    benchTilt: floor ? wrapAngle(floor.angle - back.angle - Math.PI) : 0,
    insideRadius: insideRadius < FLAT_RADIUS ? insideRadius * d : null,
    outerStrain: (1 - input.neutral) / (insideRadius / t + input.neutral),
    energy: solution.energy * scale.moment,
    moment: moment * scale.moment,
    press: press * scale.force,
  };
}

/** Room between leather and bench where both touch a board, in thicknesses: pressed between two planes without any, the contact forces would not be determined. */
const CLEARANCE = 0.03;

/** Lengths from one that is easily solved to a given one, by shares of the way: much spare length grows in proportion. */
function fromEasyLength(taut: number, length: number): (share: number) => number {
  const slack = length - taut;
  const easy = EASY_SLACK * taut;
  return (share) => taut + (slack > easy ? easy * (slack / easy) ** share : easy + share * (slack - easy));
}

/** The line on which the book rests on its back board: along the board, or from the cover's edge to the back where that is lower. */
function benchUnder({ x, y }: Obstacle, overhang: number, room: number): Floor {
  const last = x.length - 1;
  const board = Math.atan2(y[last]! - y[last - 1]!, x[last]! - x[last - 1]!);
  const edge = addScaled([x[last]!, y[last]!], heading(board), overhang);
  let lowest = 0;
  for (let i = 0; i < last - 1; i++)
    lowest = Math.max(lowest, wrapAngle(Math.atan2(edge[1] - y[i]!, edge[0] - x[i]!) - board));
  const angle = board + lowest;
  const at = addScaled(edge, leftOf(heading(angle)), -room);
  return { x: at[0], y: at[1], angle };
}

/** A path with what lies below a floor brought up to it. */
function raised(path: readonly number[], { x, y, angle }: Floor): number[] {
  const [nx, ny] = [-Math.sin(angle), Math.cos(angle)];
  return path.map((v, i) => {
    const k = i - (i % 2);
    const below = Math.min(0, (path[k]! - x) * nx + (path[k + 1]! - y) * ny);
    return v - below * (i % 2 === 0 ? nx : ny);
  });
}

/** Force of what holds an end, along the strip and across it; a sliding end is held along by its stop alone. */
const along = ({ fx, fy, stop }: EndReaction, { angle }: HeldPlace, isPosed: boolean): number =>
  isPosed ? fx * Math.cos(angle) + fy * Math.sin(angle) : stop;
const across = ({ fx, fy }: EndReaction, { angle }: HeldPlace): number => fy * Math.cos(angle) - fx * Math.sin(angle);

/** A place on a board, and the direction from its fore-edge toward the spine. */
interface HeldPlace {
  readonly at: Vec2;
  readonly angle: number;
}

function heldPlace(x: Float64Array, y: Float64Array, tip: number, next: number, distance: number): HeldPlace {
  const angle = Math.atan2(y[next]! - y[tip]!, x[next]! - x[tip]!);
  return { at: [x[tip]! + distance * Math.cos(angle), y[tip]! + distance * Math.sin(angle)], angle };
}

function endOf([x, y]: Vec2, angle: number, limit: { min?: number; max?: number } | null): StripEnd {
  return limit ? { kind: 'slide', x, y, angle, ...limit } : { kind: 'clamp', x, y, angle };
}

/** Joins the held parts to the strip; its first and last nodes lie within them. */
function wholeSection(
  solution: StripSolution,
  front: HeldPlace,
  back: HeldPlace,
  held: PerBoard,
  gap: PerBoard,
): Float64Array {
  const { nodes } = solution;
  const whole = new Float64Array(nodes.length);
  whole.set(nodes.subarray(2, nodes.length - 2), 2);
  const put = (i: number, { at, angle }: HeldPlace, back: number): void => {
    whole[i] = at[0] - back * Math.cos(angle);
    whole[i + 1] = at[1] - back * Math.sin(angle);
  };
  put(0, front, held.front + gap.front);
  put(nodes.length - 2, back, held.back + gap.back);
  return whole;
}

function emptySection(status: StripStatus, message: string): StripSection {
  const none: PerBoard = { front: 0, back: 0 };
  return {
    status,
    message,
    iterations: 0,
    residual: 0,
    contactGap: 0,
    section: new Float64Array(0),
    angles: new Float64Array(0),
    spineBow: 0,
    faceBulge: 0,
    foreEdgeGap: none,
    seatForce: none,
    heldForce: none,
    slack: 0,
    benchTilt: 0,
    insideRadius: null,
    outerStrain: 0,
    energy: 0,
    moment: 0,
    press: 0,
  };
}
