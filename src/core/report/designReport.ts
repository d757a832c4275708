import type { Allowance } from '../allowance/allowances.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import { spareWrap } from '../fold/spareWrap.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { type Printer, printer, silentPrinter } from '../units/printer.ts';
import { degreesFromRadians, radians } from '../units/radians.ts';
import { answered, stateOf, worstVerdict } from './check.ts';
import type { Verdict } from './checkSchema.ts';
import { CHECKS } from './checkTable.ts';
import { headline } from './headline.ts';
import { chancesOf, reportDoubt } from './reportDoubt.ts';
import type { Check, FitAt, Report } from './reportSchema.ts';

/** A report without the budgets of its doubt and what to measure next, which take a third of the time. */
export type BriefReport = Omit<Report, 'doubt'> & { readonly doubt: Pick<Report['doubt'], 'share' | 'chance'> };

/** Runs the checks of a design and makes the report document, its sentences in the unit of the job. */
export const designReport = (design: CoverDesign): Report => ({ ...briefReport(design), doubt: reportDoubt(design) });

/** The report of a design but for its budgets. */
export function briefReport(design: CoverDesign): BriefReport {
  const say = printer(design.job.work.units);
  return reportSaying(design, say, say);
}

/** What a row of a table shows of a report: of its checks no more than the verdicts. */
export type TableReport = Omit<BriefReport, 'checks'> & { readonly checks: readonly Pick<Check, 'id' | 'verdict'>[] };

/** The report of a design for a row of a table: the sentences of its checks, which take long to print, stay unsaid. */
export function tableReport(design: CoverDesign): TableReport {
  const { units } = design.job.work;
  return reportSaying(design, printer(units), silentPrinter(units));
}

/** @param sayInChecks printer of what the checks say; `say` that of the headline */
function reportSaying(design: CoverDesign, say: Printer, sayInChecks: Printer): BriefReport {
  const doubt = design.fitDoubt;
  const context = { design, doubt, say };
  const asked = { ...context, say: sayInChecks };
  const checks = CHECKS.map((row) => answered(row, row.ask(asked)));
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
    doubt: { share: doubt.share, chance: chancesOf(doubt) },
    checks,
    headline: headline(context, checks),
    state: overallState(checks, verdict),
    verdict,
    origin: 'quick model',
  };
}

/** The verdict in plain words: for a cover that fails, those of the first row that does. */
function overallState(checks: readonly Check[], verdict: Verdict): string {
  if (verdict === 'tight') return 'close fit';
  return checks.find((check) => check.verdict === 'fails')?.state ?? stateOf(verdict, '');
}

const size = ({ width, height }: { width: number; height: number }) => ({ width_mm: width, height_mm: height });

const allowanceAt = ({ total, parts }: Allowance) => ({
  total_mm: total,
  parts: parts.map(({ name, length }) => ({ name, length_mm: length })),
});

const degrees = (angle: number): number => degreesFromRadians(radians(angle));

function fitAt(design: CoverDesign, point: RangePoint): FitAt {
  const { fits, needs } = design;
  const fit = fits[point];
  const spare = spareWrap(design, point);
  return {
    thickness_mm: needs[point].leathers.outside.thickness,
    foreEdge: { front_mm: fit.foreEdge.front, back_mm: fit.foreEdge.back },
    spare: {
      pushedHome: { front_mm: spare.pushedHome.front, back_mm: spare.pushedHome.back },
      toOneSide_mm: spare.toOneSide,
    },
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
