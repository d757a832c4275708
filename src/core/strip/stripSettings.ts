/**
 * Every tolerance and limit of the elastic strip, in strip units: lengths in D, forces in EI/D^2, energy in EI/D.
 *
 * D is the length that the problem is scaled by, EI the bending stiffness of the strip.
 */
export interface StripSettings {
  /** Segments of the finished strip. 200 keeps the published elastica values to better than 1e-3. */
  readonly segments: number;
  /** Fewest segments of a cold start; below this a half turn of radius D/2 is not resolved. */
  readonly coarsest: number;
  /** Contact penalty, EI/D^3. High enough that a pass cuts the gap tenfold, low enough to keep the matrix well scaled. */
  readonly penalty: number;
  /** Most it is raised to, EI/D^3, where passes cut the gap too slowly; beyond, rounding shows in the residual. */
  readonly mostPenalty: number;
  /** Most multiplier passes. Each contracts the gap, so more passes would not help a strip that needs 12. */
  readonly maxPasses: number;
  /** Newton iterations over all passes of one solve. */
  readonly maxIterations: number;
  /** Halvings of a Newton step before it counts as stalled. */
  readonly maxBacktracks: number;
  /** Farthest a node moves in one Newton step, in segment lengths; keeps turns at a node below half a circle. */
  readonly stepCap: number;
  /** Largest unbalanced nodal force of a finished solve, EI/D^2; contact forces are of order 1 to 100. */
  readonly residual: number;
  /** Largest penetration, and gap under a contact that still pushes, D; where D is 30 mm, 1e-6 is 0.03 micrometre. */
  readonly gap: number;
  /** Share of the predicted energy drop a step must deliver (Armijo; Nocedal & Wright, Numerical Optimization, 3.1). */
  readonly armijo: number;
  /** Smallest pivot taken as stable, EI/D^3. */
  readonly minPivot: number;
  /** First diagonal shift after a bad pivot, EI/D^3: below the stiffness of a strip that slides freely, about 1e-4. */
  readonly firstShift: number;
  /** Factor between one shift and the next. */
  readonly shiftGrowth: number;
  /** Most shifts tried in one iteration: enough to pass the stiffest entry, stretching over the finest edge. */
  readonly maxShifts: number;
  /** Largest turn of one facet where the outline is grown round a corner, rad; 15 degrees cut 0.9 % of the offset. */
  readonly facetTurn: number;
}

export const stripSettings: StripSettings = Object.freeze({
  segments: 200,
  coarsest: 25,
  penalty: 1e5,
  mostPenalty: 1e7,
  maxPasses: 12,
  maxIterations: 400,
  maxBacktracks: 30,
  stepCap: 5,
  residual: 1e-6,
  gap: 1e-6,
  armijo: 1e-4,
  minPivot: 1e-9,
  firstShift: 1e-5,
  shiftGrowth: 8,
  maxShifts: 24,
  facetTurn: Math.PI / 12,
});
