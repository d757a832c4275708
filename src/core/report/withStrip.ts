import type { CoverDesign } from '../fold/coverDesign.ts';
import type { CoverAtRest } from '../fold/elastic/coverAtRest.ts';
import type { ElasticFit } from '../fold/elastic/elasticFit.ts';
import type { SeatStrip } from '../fold/elastic/seatStrip.ts';
import type { PerBoard } from '../fold/elastic/sectionInput.ts';
import { midwayShortage } from '../fold/midwayShortage.ts';
import { RANGE_POINTS } from '../leather/leatherModel.ts';
import { printer } from '../units/printer.ts';
import { degreesFromRadians, radians } from '../units/radians.ts';
import { originOf } from '../words/resultOrigin.ts';
import { type Answer, answered } from './check.ts';
import { seats } from './checks/seats.ts';
import { springsOpen } from './checks/springsOpen.ts';
import { boardsGoIn, ifBoardsGoIn, leastWrap } from './checks/wrapChecks.ts';
import type { CheckId, Report, StripReport } from './reportSchema.ts';
import type { ElasticOverRange, StripContext } from './stripContext.ts';
import { STRIP_ROWS } from './stripRows.ts';

const ANSWERS: Readonly<Record<(typeof STRIP_ROWS)[number]['id'], (context: StripContext) => Answer>> = {
  seats,
  springsOpen,
};

/**
 * Adds the results of the elastic strip to a report: its rows, its figures, and the effect of a pull on a short wrap.
 * Verdict, headline, figures and remedies do not change, so that they are the same with and without the strip.
 * @param report of the same design
 */
export function withStrip(report: Report, design: CoverDesign, elastic: ElasticOverRange): Report {
  const context = { design, elastic, doubt: design.fitDoubt, say: printer(design.job.work.units) };
  const { thin, nominal, thick } = report.fit;
  const rows = STRIP_ROWS.map((row) => {
    const answer = ifBoardsGoIn(ANSWERS[row.id])(context);
    // That the boards do not go in is found by the quick model.
    const found = boardsGoIn(context) ? 'springy model' : 'quick model';
    return answered(row, answer, answer.verdict === 'unknown' ? 'not known' : found);
  });
  return {
    ...report,
    fit: {
      thin: { ...thin, strip: stripReport(elastic.thin) },
      nominal: { ...nominal, strip: stripReport(elastic.nominal) },
      thick: { ...thick, strip: stripReport(elastic.thick) },
    },
    checks: [
      ...report.checks.map((row) => ({ ...row, message: row.message + (ADDED[row.id]?.(context) ?? '') })),
      ...rows,
    ],
    origin: originOf(rows),
  };
}

/** What is added to rows of the report by what takes longer to find. */
const ADDED: Partial<Record<CheckId, (context: StripContext) => string>> = { closes: pulled, opens: heldMidway };

/** Where the wrap is short on the way from closed to flat. */
function heldMidway({ design, say }: StripContext): string {
  const found = RANGE_POINTS.map((point) => midwayShortage(design, point)).filter((each) => each !== null);
  if (found.length === 0) return '';
  const { short, opening } = found.reduce((worst, each) => (each.short > worst.short ? each : worst));
  return ` On the way, open ${say.angle(opening)}, the wrap is ${say.length(short)} short. The leather must stretch, or the joint give, by that much.`;
}

/** The effect of a firm pull on a short wrap. */
function pulled({ design, elastic, say }: StripContext): string {
  const point = leastWrap(design);
  const { closes, staysOpen } = design.fits[point];
  const { stretch } = elastic[point];
  if (closes || staysOpen === null || stretch === null) return '';
  return stretch.takes
    ? ` A pull of ${say.force(stretch.pull)} would stretch it home, and it would creep back.`
    : ` A firm pull takes up no more than ${say.gap(stretch.most)} of it.`;
}

/** The elastic strip's results for the report; a release that was not solved is null. */
function stripReport({ closed, rest, seats, spare, stretch }: ElasticFit): StripReport {
  const states = {
    newCover: restReport(rest.newCover),
    creased: restReport(rest.creased),
    pressedDay: restReport(rest.pressedDay),
  };
  const section = Array.from({ length: closed.section.length / 2 }, (_, i): [number, number] => [
    closed.section[2 * i]!,
    closed.section[2 * i + 1]!,
  ]);
  return {
    status: closed.status,
    iterations: closed.iterations,
    residual: closed.residual,
    contactGap_mm: closed.contactGap,
    spineBow_mm: closed.spineBow,
    faceBulge_mm: closed.faceBulge,
    releasedOpening_deg: states.creased?.opening_deg ?? null,
    newOpening_deg: states.newCover?.opening_deg ?? null,
    closingForce_N: states.creased?.force_N ?? null,
    newClosingForce_N: states.newCover?.force_N ?? null,
    rest: states,
    spareAtForeEdge: { least: perBoard(spare.least), held: perBoard(spare.held) },
    insideRadius_mm: closed.insideRadius,
    seats: { foreEdge: seatReport(seats.foreEdge), headTail: seatReport(seats.headTail) },
    stretch: stretch && {
      short_mm: stretch.short,
      pull_N: stretch.pull,
      most_mm: stretch.most,
      takes: stretch.takes,
    },
    section_mm: section,
  };
}

const seatReport = (seat: SeatStrip | null): StripReport['seats']['headTail'] =>
  seat && {
    status: seat.status,
    closedForm_mm: seat.closed.needed,
    strip_mm: seat.needed,
    press_N_per_mm: seat.press,
  };

const perBoard = ({ front, back }: PerBoard) => ({ front_mm: front, back_mm: back });

const restReport = ({ status, opening, force, least, most }: CoverAtRest): StripReport['rest']['creased'] =>
  status === 'converged'
    ? {
        opening_deg: degreesFromRadians(radians(opening)),
        leastOpening_deg: least.isFound ? degreesFromRadians(radians(least.opening)) : null,
        mostOpening_deg: most.isFound ? degreesFromRadians(radians(most.opening)) : null,
        force_N: force,
        leastForce_N: least.isFound ? least.force : null,
        mostForce_N: most.isFound ? most.force : null,
      }
    : null;
