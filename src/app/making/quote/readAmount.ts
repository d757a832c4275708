import { normaliseTyped, parseTypedNumber, type Reading, refusal, signOf } from '../../../core/index.ts';

/** Reads an amount of money, with a minus for a rebate. */
export function readAmount(text: string): Reading<number> {
  const [sign, unsigned] = signOf(normaliseTyped(text));
  const number = parseTypedNumber(unsigned);
  if ('remedy' in number)
    return refusal(text, 'an amount', number.remedy ?? 'Write one number, as 12.50, or −5 for a rebate.');
  const value = (sign * number.numerator) / number.denominator || 0;
  return { ok: true, value, understood: String(value) };
}
