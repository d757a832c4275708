import { isRiseEstimated, riseOf } from '../book/rise.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import { RANGE_POINTS, type RangePoint } from '../leather/leatherModel.ts';
import type { Printer } from '../units/printer.ts';
import { leastWrap } from './checks/wrapChecks.ts';
import { CHECKS } from './checkTable.ts';
import type { Check } from './reportSchema.ts';

/**
 * The verdict in one plain sentence: does it close, over which leather, with how much room; else what fails first.
 * @param checks those that decide the verdict
 */
export function headline(design: CoverDesign, checks: readonly Check[], say: Printer): string {
  const { book } = design.job;
  const assumed = isRiseEstimated(book)
    ? ` The rise of the spine is not measured; ${say.length(riseOf(book))} is taken.`
    : '';
  return `${sentence(design, checks, say)}${assumed}`;
}

function sentence(design: CoverDesign, checks: readonly Check[], say: Printer): string {
  const { fits, needs } = design;
  const weight = (point: RangePoint): string => say.weight(needs[point].leathers.outside.thickness);
  const [thin, thick] = [weight('thin'), weight('thick')];
  const range = thin === thick ? `at ${thin}` : `at ${thin} and at ${thick}`;
  const closing = RANGE_POINTS.find((point) => fits[point].closes);
  const worst = leastWrap(design);
  const { closedSlack, staysOpen } = fits[worst];
  const short = `the wrap is ${say.gap(closedSlack)} short`;

  if (checks.find(({ id }) => id === 'closes')?.verdict !== 'fails') {
    const closes = fits[worst].closes
      ? `Closes ${range}`
      : `${closing === undefined ? 'May' : `Closes at ${weight(closing)}, may`} not close at ${weight(worst)}: ${short}, less than the measures may be off`;
    const gaps = RANGE_POINTS.flatMap((point) => [fits[point].head, fits[point].tail]);
    const edges =
      Math.min(...gaps) >= 0
        ? `head and tail gap ${say.range(gaps)}`
        : `head and tail overrun up to ${say.gap(Math.min(...gaps))}`;
    const failing = checks.filter(({ verdict }) => verdict === 'fails').map(({ id }) => id);
    const failures = CHECKS.flatMap((row) => ('headline' in row && failing.includes(row.id) ? [row.headline] : []));
    const but = failures.length > 0 ? `, but ${failures.join(', and ')}` : '';
    const loose = checks.filter(({ verdict }) => verdict === 'loose');
    const wide = loose.map(({ title, value }) => `${title.toLowerCase()} up to ${say.gap(value)}`);
    const tooLoose = loose.length > 0 ? `; too loose: ${wide.join(', ')}` : '';
    const tight = checks.filter(({ verdict }) => verdict === 'tight').map(({ title }) => title.toLowerCase());
    const near = tight.length > 0 ? `; close to the limit: ${tight.join(', ')}` : '';
    return `${closes}; ${edges}${but}${tooLoose}${near}.`;
  }
  if (staysOpen === null) return `Does not go on at ${weight(worst)}: ${short} and the boards do not go in.`;
  const where =
    closing === undefined ? `Does not close ${range}` : `Closes at ${weight(closing)} but not at ${weight(worst)}`;
  return `${where}: ${short} and the book stays open ${say.angle(staysOpen)}.`;
}
