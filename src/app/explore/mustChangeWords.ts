import type { MustChange } from '../../core/index.ts';
import type { FieldFacts } from './exploreMessage.ts';
import { fieldName } from './fieldWords.ts';
import { type Figure, figureText } from './figure.ts';

const listed = (titles: readonly string[]): string =>
  [titles.slice(0, -1).join(', '), titles.at(-1)]
    .filter((part) => part !== '')
    .join(' and ')
    .toLowerCase();

/** What a change asks for, as `Outside width 378.5 mm, 3.5 mm more`, and what it costs elsewhere. */
export function changeWords(field: FieldFacts, outcome: MustChange & { status: 'change' }, figure: Figure): string {
  const { from, to, worsens } = outcome;
  const name = fieldName(field);
  const by = `${figureText(Math.abs(to - from), figure)} ${to > from ? 'more' : 'less'}`;
  const asked =
    field.id === 'book.measured.error_mm'
      ? `Measure again, to within ${figureText(to, figure)}`
      : `${name} ${figureText(to, figure)}, ${by}`;
  return worsens.length === 0 ? `${asked}.` : `${asked}. Worse for it: ${listed(worsens)}.`;
}

/** Why a field alone cannot do it. */
export function noChangeWords(field: FieldFacts, outcome: MustChange & { status: 'none' }, figure: Figure): string {
  const name = fieldName(field);
  if (!outcome.bears) return `${name} makes no difference.`;
  if (outcome.best === field.present) return `${name}: no value is enough.`;
  return `${name}: no value is enough; at ${figureText(outcome.best, figure)} these still fall short: ${listed(outcome.unfit)}.`;
}
