import { isRiseEstimated, riseOf } from '../book/rise.ts';
import { chanceOf } from '../doubt/spare.ts';
import { RANGE_POINTS, type RangePoint } from '../leather/leatherModel.ts';
import { type CheckContext, chanceWords } from './check.ts';
import { leastWrap } from './checks/wrapChecks.ts';
import { CHECKS } from './checkTable.ts';
import type { Check } from './reportSchema.ts';

/**
 * The verdict in one plain sentence: does it close, over which leather, with how much room; else what fails first.
 * @param checks those that decide the verdict
 */
export function headline(context: CheckContext, checks: readonly Check[]): string {
  const { design, say } = context;
  const { book } = design.job;
  const assumed = isRiseEstimated(book)
    ? ` The rise of the spine is not measured: ${say.length(riseOf(book))} is taken.`
    : '';
  return `${sentence(context, checks)}${assumed}`;
}

function sentence({ design, doubt, say }: CheckContext, checks: readonly Check[]): string {
  const { fits, needs } = design;
  const weight = (point: RangePoint): string => say.weight(needs[point].leathers.outside.thickness);
  const over = `at ${say.weights(needs.thin.leathers.outside.thickness, needs.thick.leathers.outside.thickness, ' to ')}`;
  const row = (id: Check['id']): Check | undefined => checks.find((check) => check.id === id);

  if (row('closes')?.verdict !== 'fails') {
    const closes = `Closes in ${chanceWords(chanceOf(doubt.spare.closed))} ${over}`;
    const all = `fits in ${chanceWords(doubt.chances.fits())}`;
    const gaps = RANGE_POINTS.flatMap((point) => [fits[point].head, fits[point].tail]);
    const edges =
      Math.min(...gaps) >= 0
        ? `head and tail gap ${say.range(gaps)}`
        : `head and tail overrun up to ${say.gap(Math.min(...gaps))}`;
    const failing = checks.filter(({ verdict }) => verdict === 'fails').map(({ id }) => id);
    const failures = CHECKS.flatMap((each) => ('headline' in each && failing.includes(each.id) ? [each.headline] : []));
    const but = failures.length > 0 ? `, but ${failures.join(', and ')}` : '';
    // The row of all edges at once speaks for those that it is made of.
    const edgeRows = checks.filter(({ id }) => id !== 'together');
    const loose = edgeRows.filter(({ verdict }) => verdict === 'loose');
    const wide = loose.map(({ title, value }) => `${title.toLowerCase()} ${say.gap(value)}`);
    const tooLoose = loose.length > 0 ? `; too loose: ${wide.join(', ')}` : '';
    const tight = edgeRows.filter(({ verdict }) => verdict === 'tight').map(({ title }) => title.toLowerCase());
    const near = tight.length > 0 ? `; close to the limit: ${tight.join(', ')}` : '';
    return `${closes}, ${all}; ${edges}${but}${tooLoose}${near}.`;
  }
  const closing = RANGE_POINTS.find((point) => fits[point].closes);
  const worst = leastWrap(design);
  const { closedSlack, staysOpen } = fits[worst];
  const short = `the wrap is ${say.gap(closedSlack)} short`;
  if (staysOpen === null) return `Does not go on at ${weight(worst)}: ${short}; the boards do not go in.`;
  const where =
    closing === undefined ? `Does not close ${over}` : `Closes at ${weight(closing)} but not at ${weight(worst)}`;
  return `${where}: ${short}; the book stays open ${say.angle(staysOpen)}.`;
}
