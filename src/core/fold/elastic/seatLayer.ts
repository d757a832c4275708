import { type ReverseCurve, reverseCurve } from '../../allowance/reverseCurve.ts';
import { growOutline } from '../../strip/obstacle.ts';
import { finerSolver, type StripSolver, solveStrip } from '../../strip/solveStrip.ts';
import type { StripProblem } from '../../strip/stripProblem.ts';
import { stripScale } from '../../strip/stripScale.ts';
import type { StripStatus } from '../../strip/stripSolution.ts';

/**
 * One layer of leather on its way from a face of the board down over the board's edge to the seam. Plain numbers, 1 mm wide.
 *
 * The edge is a step: solid x > 0, y < 0 (the board) and y < -h (the plane where the layers meet, which nothing may cross),
 * the corner at the origin. The leather runs from x = +`held`, flat on the board, to the seam at x = -s, flat on the plane.
 */
export interface SeatLayerInput {
  /** h, from the board's face down to the plane where the layers meet, mm, above 0. */
  readonly offset: number;
  /** t, mm, above 0. */
  readonly thickness: number;
  /** E, MPa, above 0. */
  readonly modulus: number;
  /** R of the pressed fold, mm, above 0: the shape that a crease was set to. */
  readonly seatRadius: number;
  /** Share of that shape that stays, 0 (new) to 1. */
  readonly creaseSet: number;
  /** How far behind the board's edge the leather is held flat; it slides there, mm, above 0. */
  readonly held: number;
  /** Pull on the leather at its held end, away from the seam, N/mm, 0 up. */
  readonly pull: number;
  /** Push on the seam toward the board, N/mm, 0 up; one of the two is above 0. */
  readonly push: number;
  /** Holds the seam this far from the board's edge, mm, above 0; left out, it comes to rest under the two forces. */
  readonly run?: number;
}

export interface SeatLayer {
  readonly status: StripStatus;
  readonly message: string;
  readonly iterations: number;
  /** Largest unbalanced force on a node, N/mm. */
  readonly residual: number;
  /** s, from the seam to the board's edge, mm. */
  readonly run: number;
  /** Unstretched leather from the seam to where the board's edge is, mm. */
  readonly length: number;
  /** Force across the seam that draws this layer down to the plane, N/mm. */
  readonly transverse: number;
  /** Force that holds a seam of given run, away from the board, N/mm; 0 where it rests by itself. */
  readonly along: number;
  /** Mid-surface from the held place to the seam, in the frame above; x and y in turn, mm. */
  readonly path: Float64Array;
}

/**
 * A gentle fold, h << s << lambda = sqrt(EI/P), meets the corner with slope 3h/2s under a force 3 EI h/s^3 (clamped cubic), whose
 * part along the sheet is P: s = (9/2)^(1/4) sqrt(lambda h). A first guess; it changes no result.
 */
const FREE_RUN = 4.5 ** 0.25;

/** A start a little clear of the guess, so that a set fold does not begin in grazing contact along its whole arc. */
const CLEAR_START = 1.15;

/** Share of the held length that the leather may be shoved back over the board before it counts as folded away. */
const SHOVED = 0.9;

/** Points of each arc of the guessed path, and how far the upper one is lifted off the corner, in steps of the board's edge. */
const GUESS_POINTS = 30;
const LIFT = 0.1;

/** lambda of a gentle fold, in offsets; and by how much the loads grow from one step to the next where they are harder. */
const GENTLE = 1;
const HARDER = 1.5;

/**
 * Finds the shape and place of least energy of one layer over the step.
 *
 * min over shape, seam place s and held place: bending + stretching (EI = E t^3/12, EA = E t, per mm) - pull x_held - push s',
 * mid-surface outside the step grown by t/2, horizontal at both ends. Solved first with the seam fixed at a guess, then, from
 * there, with the seam free, so that the loads cannot carry a coarse strip off the board.
 */
export function seatLayer(input: SeatLayerInput, solver: StripSolver): SeatLayer {
  const layer = layerOf(input, solver);
  if (layer.status === 'converged') return layer;
  // Thin leather that is pressed hard turns within one edge of the usual strip.
  const finer = layerOf(input, finerSolver(solver));
  const iterations = layer.iterations + finer.iterations;
  return { ...(finer.status === 'converged' ? finer : layer), iterations };
}

function layerOf(input: SeatLayerInput, solver: StripSolver): SeatLayer {
  const { offset: h, thickness: t, modulus, held, pull, push } = input;
  const curve = reverseCurve(h, input.seatRadius);
  const stiffness = (modulus * t ** 3) / 12;
  // Under this share of the loads the fold is gentle; more would throw a strip that begins from a guess.
  const gentle = Math.min(1, stiffness / (Math.max(pull + push, 0) * (GENTLE * h) ** 2));
  const lambda = Math.sqrt(stiffness / (gentle * (pull + push)));
  const free = FREE_RUN * Math.sqrt(lambda * h);
  const guessed =
    input.run ?? Math.max(t / 2, CLEAR_START * (input.creaseSet * curve.run + (1 - input.creaseSet) * free));
  const d = Math.max(guessed, h);
  const scale = stripScale(d, t, 1, modulus);
  const path = guessedPath(h, t, held, guessed);
  const length = pathLength(path);
  const far = 2 * (held + length);
  const board = { x: held / d, y: t / 2 / d, angle: Math.PI };
  const seam = { x: -guessed / d, y: (t / 2 - h) / d, angle: Math.PI };
  const obstacle = growOutline(
    [far, 0, 0, 0, 0, -h, -far, -h].map((v) => v / d),
    false,
    t / 2 / d,
    solver.settings.facetTurn,
  );
  const restAngle = input.creaseSet > 0 ? restAngles(curve, input, length, 4 * solver.settings.segments) : undefined;
  const under = (share: number): StripProblem => ({
    length: length / d,
    stretchStiffness: scale.stretchStiffness,
    start: {
      kind: 'slide',
      ...board,
      force: (-share * pull) / scale.force,
      min: -length / d,
      max: (SHOVED * held) / d,
    },
    end: { kind: 'slide', ...seam, force: (-share * push) / scale.force, min: -guessed / d, max: length / d },
    restAngle,
    obstacle,
  });
  const guess = path.map((v) => v / d);
  const isHeld = input.run !== undefined;
  const heldAt = (share: number): StripProblem => ({ ...under(share), end: { kind: 'clamp', ...seam } });
  let solution = solveStrip(solver, heldAt(gentle), guess);
  let { iterations } = solution;
  const goOn = (problem: StripProblem): void => {
    if (solution.status !== 'converged') return;
    solution = solveStrip(solver, problem);
    iterations += solution.iterations;
  };
  if (!isHeld) goOn(under(gentle));
  let carried = solution.status === 'converged' ? gentle : 0;
  for (let share = gentle; share < 1; ) {
    share = Math.min(1, share * HARDER);
    goOn(isHeld ? heldAt(share) : under(share));
    if (solution.status === 'converged') carried = share;
    else break;
  }

  // The stops only keep the search in bounds: leather that leans on one has folded away off the board.
  const isAway = solution.status === 'converged' && (solution.start.stop !== 0 || solution.end.stop !== 0);
  const status = isAway ? 'stalled' : solution.status;
  const message =
    isAway || (carried > 0 && carried < 1)
      ? `the leather folds away off the board under this press${carried < 1 ? `; it still stood under ${Math.round(100 * carried)} % of it` : ''}`
      : solution.message;
  if (solution.nodes.length === 0) return { ...NO_LAYER, status, message, iterations };
  const slid = held - solution.start.slide * d;
  return {
    status,
    message,
    iterations,
    residual: solution.residual * scale.force,
    run: Math.max(0, guessed + solution.end.slide * d),
    length: length - slid / (1 + pull / (modulus * t)),
    transverse: -solution.end.fy * scale.force,
    along: isHeld ? -solution.end.fx * scale.force : 0,
    path: betweenEnds(solution.nodes).map((v) => v * d),
  };
}

const NO_LAYER = {
  residual: 0,
  run: 0,
  length: 0,
  transverse: 0,
  along: 0,
  givesWay: false,
  path: new Float64Array(0),
};

/** The nodes, the outermost drawn in to where the strip is held: the middle of its first and last edges. */
function betweenEnds(nodes: Float64Array): Float64Array {
  const path = nodes.slice();
  const last = nodes.length - 2;
  for (let c = 0; c < 2; c++) {
    path[c] = (nodes[c]! + nodes[c + 2]!) / 2;
    path[last + c] = (nodes[last + c]! + nodes[last + c - 2]!) / 2;
  }
  return path;
}

/** Tangent angles from the held place to the seam, of straight leather with `creaseSet` of the pressed S left in it. */
function restAngles(
  { angle, straight }: ReverseCurve,
  { seatRadius, creaseSet }: SeatLayerInput,
  length: number,
  steps: number,
): number[] {
  const arc = angle * seatRadius;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const fromSeam = length * (1 - i / steps);
    const rising = Math.min(angle, fromSeam / seatRadius);
    const falling = Math.max(0, Math.min(angle, (fromSeam - arc - straight) / seatRadius));
    return Math.PI + creaseSet * (rising - falling);
  });
}

function pathLength(path: readonly number[]): number {
  let sum = 0;
  for (let i = 2; i < path.length; i += 2) sum += Math.hypot(path[i]! - path[i - 2]!, path[i + 1]! - path[i - 1]!);
  return sum;
}

/** Two arcs and a straight between them before the board's edge, lifted clear of the corner, and flat leather behind it. */
function guessedPath(h: number, t: number, held: number, run: number): number[] {
  const radius = run < h ? run / 2 : (run * run + h * h) / (4 * h);
  const { angle } = reverseCurve(h, radius);
  const path = [held, t / 2];
  const lift = LIFT * h;
  for (let i = 0; i <= GUESS_POINTS; i++) {
    const turn = (angle * i) / GUESS_POINTS;
    path.push(-radius * Math.sin(turn), t / 2 + lift - radius * (1 - Math.cos(turn)));
  }
  for (let i = GUESS_POINTS; i >= 0; i--) {
    const turn = (angle * i) / GUESS_POINTS;
    path.push(-run + radius * Math.sin(turn), t / 2 - h + radius * (1 - Math.cos(turn)));
  }
  return path;
}
