import type { Allowance } from '../allowance/allowances.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { printer } from '../units/printer.ts';
import { degreesFromRadians, radians } from '../units/radians.ts';
import { type Check, type CheckContext, stateOf, type Verdict, worstVerdict } from './check.ts';
import { foldStrain, seamMargin } from './checks/leatherChecks.ts';
import { measures } from './checks/measures.ts';
import { pocketHolds, pocketLoads } from './checks/pocketChecks.ts';
import { closes, foreEdge, headOrTail, opens } from './checks/wrapChecks.ts';
import { headline } from './headline.ts';
import type { FitAt, Report } from './reportSchema.ts';
import { type ErrorBand, uncertainty } from './uncertainty.ts';

/** The checks, which decide the verdict, in the order in which a maker meets the questions. To add one, write it and list it here. */
const CHECKS: readonly ((context: CheckContext) => Check)[] = [
  closes,
  opens,
  foreEdge,
  (context) => headOrTail(context, 'head'),
  (context) => headOrTail(context, 'tail'),
  pocketHolds,
  pocketLoads,
  foldStrain,
  seamMargin,
  measures,
];

/** Judges a worked-out job and writes it up as the report document, its sentences in the unit that the job is worked in. */
export function designReport(design: CoverDesign): Report {
  const say = printer(design.job.work.units);
  const bands = uncertainty(design);
  const context = { design, uncertainty: bands, say };
  const checks = CHECKS.map((check) => check(context));
  const verdict = worstVerdict(checks.map((check) => check.verdict));
  const { pieces, needs } = design;
  return {
    format: 'coverwright-report',
    version: 1,
    job: design.job,
    pattern: {
      outside: size(pieces.outside),
      pocket: { ...size(pieces.pocket), count: pieces.pocket.count },
      lining: pieces.lining === null ? null : size(pieces.lining),
    },
    allowances: {
      foreEdge: allowanceAt(pieces.allowances.foreEdge),
      head: allowanceAt(pieces.allowances.head),
      tail: allowanceAt(pieces.allowances.tail),
    },
    wrap: { closed_mm: needs.nominal.closed.length, flat_mm: needs.nominal.flat.length },
    fit: {
      thin: fitAt(design, 'thin'),
      nominal: fitAt(design, 'nominal'),
      thick: fitAt(design, 'thick'),
    },
    uncertainty: { foreEdge: bandAt(bands.foreEdge), head: bandAt(bands.head), tail: bandAt(bands.tail) },
    checks: checks.map((check) => ({ ...check, change: check.change.map((change) => ({ ...change })) })),
    headline: headline(design, checks, say),
    state: overallState(checks, verdict),
    verdict,
  };
}

/** The verdict in plain words: for a cover that fails, those of the first row that does. */
function overallState(checks: readonly Check[], verdict: Verdict): string {
  if (verdict === 'tight') return 'close fit';
  return checks.find((check) => check.verdict === 'fails')?.state ?? stateOf(verdict, '');
}

const size = ({ width, height }: { width: number; height: number }) => ({ width_mm: width, height_mm: height });

const bandAt = ({ worst, spread, ruler }: ErrorBand) => ({ worst_mm: worst, spread_mm: spread, ruler_mm: ruler });

const allowanceAt = ({ total, parts }: Allowance) => ({
  total_mm: total,
  parts: parts.map(({ name, length }) => ({ name, length_mm: length })),
});

const degrees = (angle: number): number => degreesFromRadians(radians(angle));

function fitAt({ fits, needs }: CoverDesign, point: RangePoint): FitAt {
  const fit = fits[point];
  return {
    thickness_mm: needs[point].leathers.outside.thickness,
    foreEdge: { front_mm: fit.foreEdge.front, back_mm: fit.foreEdge.back },
    head_mm: fit.head,
    tail_mm: fit.tail,
    closed: {
      closes: fit.closes,
      slack_mm: fit.closedSlack,
      staysOpen_deg: degrees(fit.staysOpen ?? Math.PI),
      gape_mm: fit.gape,
      goesIn: fit.seats,
    },
    flat: {
      slack_mm: fit.flatSlack,
      boardTravel_mm: fit.boardTravel,
      opensTo_deg: fit.opensTo === null ? null : degrees(fit.opensTo),
    },
    pockets: {
      depth_mm: fit.pocket.depth,
      held_mm: fit.pocket.held,
      loadingAngle_deg: degrees(fit.pocket.loadingAngle),
      loads: fit.pocket.loads,
    },
  };
}
