/**
 * Every tolerance and limit of the elastic strip, in strip units: lengths in D, forces in EI/D^2, energy in EI/D.
 *
 * D is the length that the problem is scaled by, EI the bending stiffness of the strip. The figures are made for strips up to
 * `usualLength`; {@link settingsFor} says what becomes of them for a longer one.
 */
export interface StripSettings {
  /** Length of the strips that the figures below are made for, D: the leather of a cover that is free to bend. */
  readonly usualLength: number;
  /** Segments of the finished strip. 200 keeps the published elastica values to better than 1e-3. */
  readonly segments: number;
  /** Fewest segments of a cold start; below this a half turn of radius D/2 is not resolved. */
  readonly coarsest: number;
  /** Contact penalty, EI/D^3. High enough that a pass cuts the gap tenfold, low enough to keep the matrix well scaled. */
  readonly penalty: number;
  /** Most it is raised to, EI/D^3, where passes cut the gap too slowly; beyond, rounding shows in the residual. */
  readonly mostPenalty: number;
  /** Most multiplier passes. Each contracts the gap; a thin strip drawn taut over a corner needs some 15. */
  readonly maxPasses: number;
  /** Newton iterations over all passes of one solve. */
  readonly maxIterations: number;
  /** Stiffest strip that is first tried with its own stretching stiffness, EA L^2/EI, L being its length over `usualLength`. */
  readonly ordinaryStretch: number;
  /**
   * Stiffness of the coarsest strip of a soft start, EA L^2/EI, for a guess whose ends meet, and its factor from each strip to
   * the next. A strip that hardly stretches creeps toward its shape in short steps; one that gives finds it in a few, and
   * each stiffer one begins next to its own. With half of it balloons fold up. Where the guess is longer than its chord by
   * the share e of its length, the strip is 1/e as stiff, so that its Euler load, (2 pi)^2 EI/length^2, shortens it by a
   * twenty-seventh of that: it must not give way where it should buckle.
   */
  readonly softest: number;
  readonly stiffening: number;
  /** Most soft starts of one solve, each of which begins `stiffening` times as stiff as the last. */
  readonly starts: number;
  /** Halvings of a Newton step before it counts as stalled. */
  readonly maxBacktracks: number;
  /** Most Newton steps too small to change the energy by more than its rounding, taken for the sake of the residual. */
  readonly maxBlind: number;
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
  usualLength: 12,
  segments: 200,
  coarsest: 25,
  penalty: 1e5,
  mostPenalty: 1e8,
  maxPasses: 20,
  maxIterations: 400,
  ordinaryStretch: 2500,
  softest: 7.5,
  stiffening: 10,
  starts: 3,
  maxBacktracks: 30,
  maxBlind: 20,
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

/**
 * Settings for a strip of given length, D. One longer than usual by a factor L bends in curves L times as wide, under forces
 * 1/L^2 as large: forces and what is compared with them are taken in EI/(L D)^2, penalties and pivots in EI/(L D)^3. So the
 * residual grows tighter with the length; the gap, which a maker sees, stays as it is, and so does the penalty that may be
 * needed to close it where long leather is drawn taut.
 */
export function settingsFor(settings: StripSettings, length: number): StripSettings {
  const longer = length / settings.usualLength;
  if (!(longer > 1)) return settings;
  return {
    ...settings,
    penalty: settings.penalty / longer ** 3,
    residual: settings.residual / longer ** 2,
    minPivot: settings.minPivot / longer ** 3,
    firstShift: settings.firstShift / longer ** 3,
  };
}
