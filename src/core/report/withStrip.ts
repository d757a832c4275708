import type { CoverDesign } from '../fold/coverDesign.ts';
import { printer } from '../units/printer.ts';
import { seats } from './checks/seats.ts';
import { springsOpen } from './checks/springsOpen.ts';
import { leastWrap } from './checks/wrapChecks.ts';
import type { Report } from './reportSchema.ts';
import type { ElasticOverRange, StripContext } from './stripContext.ts';
import { stripReport } from './stripReport.ts';
import { uncertainty } from './uncertainty.ts';

/** Rows of the elastic strip. They inform; to add one, write it and list it here. */
const ROWS = [seats, springsOpen] as const;

/**
 * A report with what the elastic strip says put into it: its rows, its figures, and what a pull would do about a short wrap.
 * Verdict, headline, figures and remedies stay as they are, so that they are the same before the strip has answered and at
 * doors that do not ask it.
 * @param report of the same design
 */
export function withStrip(report: Report, design: CoverDesign, elastic: ElasticOverRange): Report {
  const context = { design, elastic, uncertainty: uncertainty(design), say: printer(design.job.work.units) };
  const rows = ROWS.map((row) => row(context)).map((row) => ({ ...row, change: [...row.change] }));
  const { thin, nominal, thick } = report.fit;
  return {
    ...report,
    fit: {
      thin: { ...thin, strip: stripReport(elastic.thin) },
      nominal: { ...nominal, strip: stripReport(elastic.nominal) },
      thick: { ...thick, strip: stripReport(elastic.thick) },
    },
    checks: [
      ...report.checks.map((row) => (row.id === 'closes' ? { ...row, message: row.message + pulled(context) } : row)),
      ...rows,
    ],
  };
}

/** What a firm pull would do about a wrap that is short. */
function pulled({ design, elastic, say }: StripContext): string {
  const point = leastWrap(design);
  const { closes, staysOpen } = design.fits[point];
  const { stretch } = elastic[point];
  if (closes || staysOpen === null || stretch === null) return '';
  return stretch.takes
    ? ` A pull of ${say.force(stretch.pull)} would stretch it home, and it would creep back.`
    : ` A firm pull takes up no more than ${say.gap(stretch.most)} of it.`;
}
