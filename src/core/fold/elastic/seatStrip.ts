import type { Needs } from '../../allowance/needs.ts';
import type { Job } from '../../job/jobSchema.ts';
import { createStripSolver, type StripSolver } from '../../strip/solveStrip.ts';
import { stripSettings } from '../../strip/stripSettings.ts';
import type { StripStatus } from '../../strip/stripSolution.ts';
import { type Mm, mm } from '../../units/mm.ts';
import { type SeatLayer, seatLayer } from './seatLayer.ts';

type LeatherPiece = Job['leather']['outside'];

export type SeatEdge = 'foreEdge' | 'headTail';

/** What the elastic leather is put through at a seam. */
export interface SeatConditions {
  /** Force along the whole edge that presses board and seam together, N, above 0. */
  readonly press: number;
  /** Whether the fold keeps the job's `creaseSet` of its pressed shape, or is new leather, flat at rest. */
  readonly creased: boolean;
}

/** A firm pull by hand, N. Assumption, no source. */
export const FIRM_PULL = 100;

/** How far behind the board's edge pages or a hand hold the pocket flat at the fore-edge, mm. Assumption. */
const HELD_BEHIND = 20;

/**
 * Where a pulled layer is held flat, in lengths lambda = sqrt(EI/pull) behind the board's edge, but no farther than half the
 * height. It stands off the board on the line of its pull all the way there; held at 8 the run changes by half a percent.
 */
const HELD_LENGTHS = 6;

/** A board edge in its pocket, by the elastic strip and by the closed form; lengths in mm, forces per mm of edge. */
export interface SeatStrip {
  readonly edge: SeatEdge;
  /** Anything but `converged`: the closed form stands in. */
  readonly status: StripStatus;
  readonly message: string;
  readonly iterations: number;
  /** Largest unbalanced force on a node, N/mm. */
  readonly residual: number;
  /** Force that presses board and seam together, N/mm. */
  readonly press: number;
  /** From the seam line to the board's edge: the larger of the two layers' runs. */
  readonly seat: Mm;
  /** Leather of the outside needed from the seam line to the board's edge, unstretched: the larger of the two layers'. */
  readonly needed: Mm;
  /** Unstretched leather of the pocket over the same stretch. */
  readonly pocketLength: Mm;
  /** How far apart the runs of unequal leathers are, each paired with its like: what this reduction leaves open. */
  readonly spread: Mm;
  /** The same by two tangent arcs of R = (bendRatio + 1/2) t. */
  readonly closed: { readonly seat: Mm; readonly needed: Mm; readonly pocketLength: Mm };
  /** Mid-surfaces from the seam inward: x from the seam line, y from the board's middle, outside up; x, y in turn, mm. */
  readonly outside: Float64Array;
  readonly pocket: Float64Array;
}

/**
 * A strip fine enough for a fold of one thickness in leather of many; coarser starts would miss the fold altogether. Thick leather
 * over the edge of a thin board takes many short steps.
 */
export const createSeatSolver = (): StripSolver =>
  createStripSolver({ ...stripSettings, segments: 400, coarsest: 50, maxIterations: 3000 });

/**
 * Finds how near a board's edge comes to its seam in elastic leather that is pressed there by a given force.
 *
 * Section across the seam, per mm of edge. Two layers, outside (o) and pocket (p), each an elastic strip (seatLayer.ts):
 * - on its face of the board it is held flat and slides; over the board's sharp corner it has contact without friction;
 * - at the seam line and beyond both lie face to face and flat, on a plane h_o below one face, h_p above the other,
 *   h_o + h_p = b, which neither crosses.
 *
 * Head and tail: the margin beyond the seam is free, so no force along the sheet reaches the seam itself; the press P is the
 * pull of both layers behind the corner, P/2 each. Equal leathers mirror each other, so the plane lies at h = b/2. Unequal
 * ones are each solved as one of a pair of its like: the cover lies between the two pairs, the larger run and length count,
 * and `spread` says how far apart they are. (Pinned together, the stiffer layer would be pushed from behind rather than
 * pulled, and whether it then slides or buckles is a matter of friction that this model does not have.)
 *
 * Fore-edge: the outside lies flat and pushes the seam against the board by P; the pocket alone takes h_p = b, its mouth
 * free, held flat `HELD_BEHIND`.
 *
 * The closed form knows no force: its radius bendRatio t + t/2 is that of leather pressed along the seam. Elastic leather at
 * rest flat takes sqrt(EI/P) for its measure instead, and comes that near only under forces beyond any hand. What links the
 * two is the set of the fold: creased, the strip is at rest in the closed form's own S, of which `creaseSet` has stayed.
 *
 * @param job gives modulus and crease set of the leathers
 * @param needs what the book asks at one point of the range
 * @param solver from createSeatSolver
 * @returns null at the fore-edge of turned ends, which have no seam there
 */
export function seatStrip(
  job: Job,
  needs: Needs,
  edge: SeatEdge,
  conditions: SeatConditions,
  solver: StripSolver,
): SeatStrip | null {
  const { book, leathers } = needs;
  const press = conditions.press / (edge === 'foreEdge' ? book.height : book.width);
  const piece = { outside: job.leather.outside, pocket: pocketPiece(job) };
  const layer = (side: 'outside' | 'pocket', offset: number, held: number, pull: number, push: number): SeatLayer => {
    const { thickness, seatRadius } = leathers[side];
    const { modulus_MPa: modulus, creaseSet } = piece[side];
    const set = conditions.creased ? creaseSet : 0;
    return seatLayer({ offset, thickness, modulus, seatRadius, creaseSet: set, held, pull, push }, solver);
  };

  if (edge === 'foreEdge') {
    if (needs.foreEdgeSeat === null) return null;
    const pocket = layer('pocket', book.board, Math.min(HELD_BEHIND, book.width / 2), 0, press);
    const seat = pocket.run;
    const y = book.board / 2 + leathers.outside.thickness / 2;
    return {
      edge,
      ...outcome([pocket]),
      press,
      seat: mm(seat),
      needed: mm(seat),
      pocketLength: mm(pocket.length),
      spread: mm(0),
      closed: {
        seat: needs.foreEdgeSeat.seat,
        needed: needs.foreEdgeSeat.seat,
        pocketLength: needs.foreEdgeSeat.curve.length,
      },
      outside: Float64Array.of(0, y, pocket.run + (pocket.path[0] ?? 0), y),
      pocket: placed(pocket, pocket.run, -1, book.board),
    };
  }

  const ofPair = (side: 'outside' | 'pocket'): SeatLayer => {
    const lambda = Math.sqrt((piece[side].modulus_MPa * leathers[side].thickness ** 3) / 12 / (press / 2));
    return layer(side, book.board / 2, Math.min(book.height / 2, HELD_LENGTHS * lambda), press / 2, 0);
  };
  const isEqual = isAlike(leathers, piece);
  const outside = ofPair('outside');
  const pocket = isEqual ? outside : ofPair('pocket');
  const seat = Math.max(outside.run, pocket.run);
  return {
    edge,
    ...outcome(isEqual ? [outside] : [outside, pocket]),
    press,
    seat: mm(seat),
    needed: mm(Math.max(outside.length, pocket.length)),
    pocketLength: mm(pocket.length),
    spread: mm(Math.abs(outside.run - pocket.run)),
    closed: { seat: needs.headTail.seat, needed: needs.headTail.needed, pocketLength: needs.headTail.needed },
    outside: placed(outside, seat, 1, book.board),
    pocket: placed(pocket, seat, -1, book.board),
  };
}

/** Whether outside and pocket behave alike, so that one solve serves both. */
function isAlike(
  { outside: a, pocket: b }: Needs['leathers'],
  piece: Record<'outside' | 'pocket', LeatherPiece>,
): boolean {
  return (
    a.thickness === b.thickness &&
    a.seatRadius === b.seatRadius &&
    piece.outside.modulus_MPa === piece.pocket.modulus_MPa &&
    piece.outside.creaseSet === piece.pocket.creaseSet
  );
}

/** Turned ends make their pockets of the outside. */
const pocketPiece = ({ leather, pockets }: Job): LeatherPiece =>
  pockets.construction === 'turned' ? leather.outside : leather.pocket;

function outcome(layers: readonly SeatLayer[]) {
  const worst = layers.find(({ status }) => status !== 'converged') ?? layers[0]!;
  return {
    status: worst.status,
    message: worst.message,
    iterations: layers.reduce((sum, { iterations }) => sum + iterations, 0),
    residual: Math.max(...layers.map(({ residual }) => residual)),
  };
}

/** Turns a layer into the section's frame, seam first: x from the seam line, y from the board's middle. */
function placed({ path }: SeatLayer, seat: number, side: 1 | -1, board: number): Float64Array {
  const points = path.length / 2;
  return Float64Array.from({ length: path.length }, (_, i) => {
    const k = 2 * (points - 1 - Math.floor(i / 2));
    return i % 2 === 0 ? path[k]! + seat : side * (path[k + 1]! + board / 2);
  });
}
