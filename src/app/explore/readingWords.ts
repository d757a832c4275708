import type { ExploreResult, SweepPoint, Verdict } from '../../core/index.ts';
import { bareText, type Figure } from './figure.ts';

/** The verdict of the whole cover, as a predicate. */
const WHOLE: Readonly<Record<Verdict, string>> = {
  fits: 'fits',
  tight: 'is close to its limit',
  loose: 'is too loose',
  fails: 'does not fit',
  unknown: 'is not known to fit',
  none: 'is not judged',
};

/** The curve at one point in one sentence, shown and read by screen readers. */
export function readingWords(
  point: SweepPoint,
  { title, isRange }: Pick<ExploreResult, 'title' | 'isRange'>,
  across: Figure,
  upright: Figure,
): string {
  const at = across.text(point.at);
  if ('issue' in point) return `At ${at}: no such job; allowed is ${point.issue.allowed}.`;
  const { values: read, parts } = point.readings[0]!;
  const { thin, nominal, thick } = read;
  const print = (value: number | null): string => (value === null ? 'none' : bareText(value, upright));
  const values =
    isRange && !(thin === nominal && nominal === thick)
      ? `${print(thin)} thin, ${print(nominal)} middle, ${thick === null ? 'none' : upright.text(thick)} thick`
      : thick === null
        ? 'none'
        : upright.text(thick);
  const whole = WHOLE[point.verdict];
  const sum = parts.map(({ name, length_mm }) => `${bareText(length_mm, upright)} ${name}`).join(', ');
  return `At ${at}: ${title.charAt(0).toLowerCase()}${title.slice(1)} ${values}${sum === '' ? '' : ` (${sum})`}. The cover as a whole ${whole}.`;
}

/** How fast a sum grows at a point, as `Here 0.10 mm more asks for 0.24 mm more.`; empty at an end of the curve. */
export function growthWords(
  points: readonly SweepPoint[],
  index: number,
  step: number,
  across: Figure,
  small: Figure,
): string {
  const [before, after] = [points[index - 1], points[index + 1]].map((point) =>
    point === undefined || 'issue' in point || point.readings[0]!.parts.length === 0
      ? null
      : { at: point.at, value: point.readings[0]!.values.thick },
  );
  if (!before || !after || before.value === null || after.value === null) return '';
  const growth = ((after.value - before.value) / (after.at - before.at)) * step;
  const asked = small.text(Math.abs(growth));
  if (Number.parseFloat(asked) === 0) return `Here ${across.text(step)} more asks for no more.`;
  return `Here ${across.text(step)} more asks for ${asked} ${growth > 0 ? 'more' : 'less'}.`;
}
