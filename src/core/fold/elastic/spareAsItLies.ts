import type { RangePoint } from '../../leather/leatherModel.ts';
import type { StripSolver } from '../../strip/solveStrip.ts';
import type { StripStatus } from '../../strip/stripSolution.ts';
import type { CoverDesign } from '../coverDesign.ts';
import { frictionOnBook, spareWrap } from '../spareWrap.ts';
import type { PerBoard, SectionInput } from './sectionInput.ts';
import { sectionInputAt } from './sectionInputAt.ts';
import { type StripSection, solveSection } from './solveSection.ts';

/** How much of the spare wrap is left at the fore-edges of a cover that lies by itself, mm. */
export interface SpareAsItLies {
  /** `converged`, or how the first section that did not converge ended; gaps are then those without friction. */
  readonly status: StripStatus;
  /** Without friction: the least. */
  readonly least: PerBoard;
  /** The most that friction holds of what was pushed home. */
  readonly held: PerBoard;
}

/** Halvings of the share: it is found to 3 %. */
const HALVINGS = 5;

/** Pull that counts as none, N: the solver's own noise. */
const FAINT = 0.01;

/**
 * Finds where the spare wrap lies once the boards are let go, pushed home before.
 *
 * Leather with spare wrap bows out behind the spine and draws its ends in from the fore-edges. It has no tension that a capstan
 * could hold, so this is a limit equilibrium: with the gaps posed at a share s of the pushed-home ones, an end stays where
 * its pull is at most mu N, N the contact forces on its half and the force that holds it flat to the board. The largest
 * such share is found by bisection. At mu = 0 it has the energy of the strip with free ends: new leather then has drawn in
 * all that it can; creased leather may stand clear of the spine, and rests anywhere up to where it touches.
 *
 * @param free the section with ends that slide without friction
 * @param crease as that of `free`
 */
export function spareAsItLies(
  design: CoverDesign,
  point: RangePoint,
  free: StripSection,
  crease: SectionInput['crease'],
  solver: StripSolver,
  friction = frictionOnBook(design.job),
): SpareAsItLies {
  const least = free.foreEdgeGap;
  const { pushedHome, toOneSide } = spareWrap(design, point);
  if (free.status !== 'converged' || toOneSide === 0) return { status: free.status, least, held: least };
  const input = sectionInputAt(design, point, 0, crease);
  let status: StripStatus = 'converged';
  /** What pulls on the ends beyond what friction holds, N. */
  const excess = (share: number): number => {
    const gap = { front: share * pushedHome.front, back: share * pushedHome.back };
    const section = solveSection({ ...input, gap }, solver);
    if (section.status !== 'converged') status = section.status;
    const over = (side: keyof PerBoard): number =>
      pushedHome[side] > 0 ? section.seatForce[side] - friction * (section.press / 2 + section.heldForce[side]) : 0;
    return Math.max(over('front'), over('back'));
  };
  let [share, slips] = [0, 1];
  if (excess(slips) <= FAINT) share = slips;
  for (let k = 0; k < HALVINGS && share < slips; k++) {
    const middle = (share + slips) / 2;
    if (excess(middle) <= FAINT) share = middle;
    else slips = middle;
  }
  if (status !== 'converged') return { status, least, held: least };
  return {
    status,
    least,
    held: {
      front: Math.max(least.front, share * pushedHome.front),
      back: Math.max(least.back, share * pushedHome.back),
    },
  };
}
