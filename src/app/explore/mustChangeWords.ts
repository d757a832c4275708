import { listed, type MustChange } from '../../core/index.ts';
import type { FieldFacts } from './exploreMessage.ts';
import { fieldName } from './fieldWords.ts';
import type { Figure } from './figure.ts';

const checks = (titles: readonly string[]): string => listed(titles).toLowerCase();

/** A change, as `Outside width 378.5 mm, 3.5 mm more`, and the checks that it makes worse. */
export function changeWords(field: FieldFacts, outcome: MustChange & { status: 'change' }, figure: Figure): string {
  const { from, to, worsens } = outcome;
  const name = fieldName(field);
  const by = `${figure.text(Math.abs(to - from))} ${to > from ? 'more' : 'less'}`;
  const asked =
    field.id === 'book.measured.error_mm'
      ? `Measure again, to within ${figure.text(to)}`
      : `${name} ${figure.text(to)}, ${by}`;
  return worsens.length === 0 ? `${asked}.` : `${asked}. Worse for it: ${checks(worsens)}.`;
}

/** Why a change of one field is not enough. */
export function noChangeWords(field: FieldFacts, outcome: MustChange & { status: 'none' }, figure: Figure): string {
  const name = fieldName(field);
  if (!outcome.bears) return `${name} makes no difference.`;
  if (outcome.best === field.present) return `${name}: no value is enough.`;
  return `${name}: no value is enough; at ${figure.text(outcome.best)} these still fall short: ${checks(outcome.unfit)}.`;
}
