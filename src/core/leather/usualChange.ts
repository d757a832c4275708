import type { Job } from '../job/jobSchema.ts';

/** Change of size that is expected where it was not tested, as a share, with its standard uncertainty. */
export interface UsualChange {
  readonly mean: number;
  readonly u: number;
}

/** What working does to the size of leather. Assumptions, no source: only a test of the leather itself tells. */
const BY_STATE: Readonly<Record<Job['making']['state'], UsualChange>> = {
  dry: { mean: 0, u: 0.002 },
  cased: { mean: -0.01, u: 0.007 },
  dyed: { mean: -0.01, u: 0.007 },
  'wet-formed': { mean: -0.01, u: 0.007 },
};

/** What finishing adds to it: water wets the grain once more, oil, wax and spirit hardly swell the fibres. Assumptions, no source. */
const BY_DRESSING: Readonly<Record<Job['making']['dressing'], UsualChange>> = {
  nothing: { mean: 0, u: 0 },
  'oil or wax': { mean: 0, u: 0.001 },
  'water-based finish': { mean: -0.002, u: 0.003 },
  'spirit-based finish': { mean: 0, u: 0.001 },
};

/** Usual change of size of a making route: the sum of both, their errors independent. */
export function usualChange({ state, dressing }: Pick<Job['making'], 'state' | 'dressing'>): UsualChange {
  const [worked, dressed] = [BY_STATE[state], BY_DRESSING[dressing]];
  return { mean: worked.mean + dressed.mean, u: Math.hypot(worked.u, dressed.u) };
}
