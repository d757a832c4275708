import { needsAt } from '../allowance/needs.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import { coverFit } from '../fold/coverFit.ts';
import type { Job } from '../job/jobSchema.ts';
import { type Measure, measuresOf } from './measure.ts';

/** The gaps that a measuring error changes. `closed` and `open` are at one fore-edge, shared evenly. */
export const EDGES = ['closed', 'open', 'head', 'tail'] as const;

type Edge = (typeof EDGES)[number];

/** Effect of one measure on the gaps of the cover as cut. */
export interface Sensitivity {
  readonly measure: Measure;
  /** d gap / d measure, mm per mm; negative where a larger book leaves less room. */
  readonly rates: Readonly<Record<Edge, number>>;
  /** Largest change of each gap by the measure's error, either way, mm. */
  readonly shifts: Readonly<Record<Edge, number>>;
}

/** Step where no error is stated, mm. */
const SMALL_STEP = 0.1;

/**
 * Effect of each measuring error on the gaps of the cover as cut: central differences over the stated error, with the
 * pieces kept as they are, at the thick end of the leather.
 * @returns the measure with the largest change of a gap first
 */
export function sensitivities(design: CoverDesign): readonly Sensitivity[] {
  const largest = ({ shifts }: Sensitivity): number => Math.max(...EDGES.map((edge) => shifts[edge]));
  return measuresOf(design.job)
    .map((measure) => sensitivity(design, measure))
    .sort((a, b) => largest(b) - largest(a));
}

function sensitivity(design: CoverDesign, measure: Measure): Sensitivity {
  const { job } = design;
  const step = measure.error > 0 ? measure.error : SMALL_STEP;
  const [below, above] = [measure.value - step, measure.value + step].map((value) => {
    const book = measure.put(job.book, value);
    // A measure at its bound changes less than asked.
    const reached = measuresOf({ ...job, book }).find(({ id }) => id === measure.id)?.value ?? value;
    return { at: reached, gaps: gapsOn(design, book) };
  }) as [Shifted, Shifted];
  const over = (rate: (edge: Edge) => number) =>
    Object.fromEntries(EDGES.map((edge) => [edge, rate(edge)])) as Record<Edge, number>;
  const rates = over((edge) => (above.gaps[edge] - below.gaps[edge]) / (above.at - below.at));
  return { measure, rates, shifts: over((edge) => Math.abs(rates[edge]) * measure.error) };
}

interface Shifted {
  readonly at: number;
  readonly gaps: Readonly<Record<Edge, number>>;
}

/** Gaps of the pieces as cut on a book other than the one that was measured. */
function gapsOn({ job, pieces }: CoverDesign, book: Job['book']): Shifted['gaps'] {
  const other = { ...job, book };
  const { closedSlack, flatSlack, head, tail } = coverFit(other, pieces, needsAt(other, 'thick'));
  return { closed: closedSlack / 2, open: flatSlack / 2, head, tail };
}
