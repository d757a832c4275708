import type { CoverDesign } from '../fold/coverDesign.ts';
import { RANGE_POINTS, type RangePoint } from '../leather/leatherModel.ts';
import type { Printer } from '../units/printer.ts';
import type { Check, Verdict } from './check.ts';

/** The verdict in one plain sentence: does it close, over which leather, with how much room; else what fails first. */
export function headline(design: CoverDesign, checks: readonly Check[], verdict: Verdict, say: Printer): string {
  const { fits } = design;
  const weight = (point: RangePoint): string => say.weight(design.needs[point].leathers.outside.thickness);
  const [thin, thick] = [weight('thin'), weight('thick')];
  const range = thin === thick ? `at ${thin}` : `at ${thin} and at ${thick}`;
  const closing = RANGE_POINTS.filter((point) => fits[point].closes);
  const failing = checks.filter((check) => check.verdict === 'fails');

  if (closing.length === RANGE_POINTS.length) {
    const gaps = RANGE_POINTS.flatMap((point) => [fits[point].head, fits[point].tail]);
    const edges = Math.min(...gaps) >= 0 ? `head and tail gap ${say.range(gaps)}` : overrunAtHeadOrTail(gaps, say);
    const rest = failing.filter(({ id }) => id !== 'head' && id !== 'tail');
    const but = rest.length > 0 ? `, but: ${rest.map(({ title }) => title.toLowerCase()).join(', ')} fails` : '';
    const unsure = checks.filter((check) => check.verdict === 'tight');
    const tight = verdict === 'tight' ? `; tight: ${unsure.map(({ title }) => title.toLowerCase()).join(', ')}` : '';
    return `Closes ${range}; ${edges}${but}${tight}.`;
  }
  const slack = Math.min(...RANGE_POINTS.map((point) => fits[point].closedSlack));
  if (fits.thick.staysOpen === null)
    return `Does not go on at ${thick}: the wrap is ${say.gap(slack)} short and the boards do not go in.`;
  const where = closing.length > 0 ? `Closes at ${weight(closing[0]!)} but not at ${thick}` : `Does not close ${range}`;
  return `${where}: the wrap is ${say.gap(slack)} short and the book stays open ${say.angle(fits.thick.staysOpen)}.`;
}

const overrunAtHeadOrTail = (gaps: readonly number[], say: Printer): string =>
  `head and tail overrun up to ${say.gap(Math.min(...gaps))}`;
