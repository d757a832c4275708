import { needsAt } from '../allowance/needs.ts';
import { correlationsIn, jobOf, readTrials } from '../doubt/coverDoubt.ts';
import { coverInputs, truthAt } from '../doubt/coverInputs.ts';
import { drawTrials, summary } from '../doubt/trials.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import { coverFit, type Fit } from '../fold/coverFit.ts';
import type { FitDoubt } from '../fold/fitDoubt.ts';
import type { Job } from '../job/jobSchema.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { mm } from '../units/mm.ts';
import { degreesFromRadians, radians } from '../units/radians.ts';
import { chanceWords, judgedByChance, stateOf } from './check.ts';
import type { ReportDoubt, ReportTrials } from './doubtSchema.ts';
import type { Report } from './reportSchema.ts';

export interface TrialOptions {
  /** 1 or more. */
  readonly draws?: number;
  readonly seed?: number;
}

/** Trials of a page and of the command line: a chance of 95 in 100 is then off by less than 1 in 100, two times in three by half of that. */
const USUAL_DRAWS = 2000;

/** Share by which the first order may miss the uncertainty of the trials before a length counts as non-linear. */
const NON_LINEAR = 0.1;

/** Distance to a threshold within which it is said that the trials give another word. */
const NEAR = 0.01;

/**
 * The fit of the cover as it is cut, tried by Monte Carlo (JCGM 101:2008, 7): every input drawn from its distribution, correlations
 * and readings round the book taken in, the whole model computed each time.
 * @returns one fit for each draw; the same for the same design and options
 */
export function trialFits(design: CoverDesign, { draws = USUAL_DRAWS, seed = 1 }: TrialOptions = {}): readonly Fit[] {
  const { job, pieces } = design;
  // Before readings round the book, which have shifted those of the design.
  const inputs = coverInputs(job);
  const rows = drawTrials(inputs, correlationsIn(job, inputs), draws, seed);
  const conditioned = readTrials(job, inputs, design.doubt, rows, seed + 1);
  return Array.from({ length: draws }, (_, k) => {
    const truth = truthAt(job, inputs, conditioned.subarray(k * inputs.length, (k + 1) * inputs.length));
    const { outside } = pieces;
    const made = {
      ...pieces,
      outside: {
        width: mm(outside.width * (1 + truth.widthChange) + truth.width),
        height: mm(outside.height * (1 + truth.heightChange) + truth.height),
      },
      // The mouth or the fold of a pocket is marked on the cut leather and changes its place with it.
      pocketDepth: mm((pieces.pocketDepth * (1 + truth.widthChange)) / pieces.growth),
    };
    const true_ = jobOf(job, truth);
    return coverFit(true_, made, needsAt(true_, 'nominal'));
  });
}

const isRoom = (gap: number): boolean => gap >= -TOLERANCE.length;

/** Whether a cover is large enough at every edge, closed and flat. */
export const goesOn = (fit: Fit): boolean =>
  fit.closes && isRoom(fit.flatSlack) && isRoom(fit.head) && isRoom(fit.tail);

/** Whether a cover is looser than wished at some edge. */
export const isLoose = (fit: Fit, { loosest }: Pick<Job, 'loosest'>): boolean =>
  !isRoom(loosest.foreEdge_mm - fit.closedSlack / 2) ||
  !isRoom(loosest.head_mm - fit.head) ||
  !isRoom(loosest.tail_mm - fit.tail);

/** Sums the trials of a cover up beside what its report says by first order. */
export function coverTrials(design: CoverDesign, first: ReportDoubt, options: TrialOptions = {}): ReportTrials {
  const fits = trialFits(design, options);
  const draws = fits.length;
  const values = (read: (fit: Fit) => number): Float64Array => Float64Array.from(fits, read);
  const length = (read: (fit: Fit) => number) => {
    const { mean, u, symmetric } = summary(values(read));
    return { mean_mm: mean, u_mm: u, low_mm: symmetric[0], high_mm: symmetric[1] };
  };
  const angle = (read: (fit: Fit) => number): [number, number] => {
    const [low, high] = summary(values(read)).symmetric;
    return [degreesFromRadians(radians(low)), degreesFromRadians(radians(high))];
  };
  const share = (holds: (fit: Fit) => boolean): number => fits.filter(holds).length / draws;
  const edges = {
    foreEdge: length(({ closedSlack }) => closedSlack),
    head: length(({ head }) => head),
    tail: length(({ tail }) => tail),
    flat: length(({ flatSlack }) => flatSlack),
    held: length(({ pocket }) => pocket.held),
  };
  const firstOrder = { ...first.edges, flat: first.flat };
  const nonLinear = (['foreEdge', 'head', 'tail', 'flat'] as const).filter(
    (name) => Math.abs(firstOrder[name].u_mm - edges[name].u_mm) > NON_LINEAR * edges[name].u_mm + TOLERANCE.length,
  );
  const { job } = design;
  const outcome = {
    fits: share((fit) => goesOn(fit) && !isLoose(fit, job)),
    goesOn: share(goesOn),
    loose: share((fit) => isLoose(fit, job)),
  };
  return {
    draws,
    chance: { closes: share(({ closes }) => closes), fits: outcome.fits },
    edges,
    staysOpen_deg: angle(({ staysOpen }) => staysOpen ?? Math.PI),
    loading_deg: angle(({ pocket }) => pocket.loadingAngle),
    nonLinear,
    differs: differenceWords(design.fitDoubt, outcome),
  };
}

/** Says where the trials give another word than the first order. */
function differenceWords(
  { share, chances }: FitDoubt,
  tried: Readonly<Record<'fits' | 'goesOn' | 'loose', number>>,
): string {
  const word = judgedByChance({ fits: () => tried.fits, goesOn: () => tried.goesOn, loose: () => tried.loose }, share);
  if (word === judgedByChance(chances, share)) return '';
  const isNear = (chance: number, threshold: number): boolean => Math.abs(chance - threshold) <= NEAR;
  const near = isNear(tried.fits, share) || isNear(tried.goesOn, 1 / 2) || isNear(tried.loose, 1 / 2);
  return (
    `By trials the word would be "${stateOf(word, 'too small')}": it fits in ${chanceWords(tried.fits)}. ` +
    `By the quick reckoning, which the verdict goes by, it fits in ${chanceWords(chances.fits())}` +
    (near ? '. The two lie close together on either side of a threshold.' : '.')
  );
}

/** The report with the trials of its design, and their uncertainty where the first order misses it. Verdict and rows stay. */
export function withTrials(report: Report, design: CoverDesign, options: TrialOptions = {}): Report {
  const trials = coverTrials(design, report.doubt, options);
  const { doubt } = report;
  const edge = (name: 'foreEdge' | 'head' | 'tail') =>
    trials.nonLinear.includes(name) ? { ...doubt.edges[name], u_mm: trials.edges[name].u_mm } : doubt.edges[name];
  return {
    ...report,
    doubt: {
      ...doubt,
      edges: { foreEdge: edge('foreEdge'), head: edge('head'), tail: edge('tail') },
      flat: trials.nonLinear.includes('flat') ? { ...doubt.flat, u_mm: trials.edges.flat.u_mm } : doubt.flat,
      trials,
    },
  };
}
