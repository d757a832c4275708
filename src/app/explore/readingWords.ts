import type { ExploreResult } from '../../core/explore/exploreResult.ts';
import type { SweepPoint } from '../../core/explore/sweep.ts';
import { bareText, type Figure, figureText } from './figure.ts';

/** What the curve says at one point, in one sentence, for ear and eye alike. */
export function readingWords(
  point: SweepPoint,
  { title, isRange }: Pick<ExploreResult, 'title' | 'isRange'>,
  across: Figure,
  upright: Figure,
): string {
  const at = figureText(point.at, across);
  if ('issue' in point) return `At ${at}: no such job; allowed is ${point.issue.allowed}.`;
  const { thin, nominal, thick } = point.readings[0]!.values;
  const told = (value: number | null): string => (value === null ? 'none' : bareText(value, upright));
  const values =
    isRange && !(thin === nominal && nominal === thick)
      ? `${told(thin)} thin, ${told(nominal)} middle, ${thick === null ? 'none' : figureText(thick, upright)} thick`
      : thick === null
        ? 'none'
        : figureText(thick, upright);
  const whole = { fits: 'fits', tight: 'is tight', fails: 'fails' }[point.verdict];
  return `At ${at}: ${title.charAt(0).toLowerCase()}${title.slice(1)} ${values}. The cover as a whole ${whole}.`;
}
