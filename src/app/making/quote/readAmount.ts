import { normaliseTyped, parseTypedNumber, type Reading, refusal } from '../../../core/index.ts';

/** Reads an amount of money, with a minus for a rebate. */
export function readAmount(text: string): Reading<number> {
  const typed = normaliseTyped(text);
  const number = parseTypedNumber(typed.replace(/^-\s*/, ''));
  if ('remedy' in number)
    return refusal(text, 'an amount', number.remedy ?? 'Write one number, as 12.50, or −5 for a rebate.');
  const size = number.numerator / number.denominator;
  const value = typed.startsWith('-') && size > 0 ? -size : size;
  return { ok: true, value, understood: String(value) };
}
