import { MM_PER_INCH, MM2_PER_DM2 } from './mm.ts';
import type { LengthUnit } from './parseLength.ts';
import { type Reading, refusal } from './reading.ts';
import { normaliseTyped, parseTypedFigure } from './typedNumber.ts';

/** Square decimetres in a square foot: 9.29030. */
const DM2_PER_SQUARE_FOOT = (12 * MM_PER_INCH) ** 2 / MM2_PER_DM2;

const EXAMPLE = 'as 62 dm² or 6 3/4 sq ft';

const UNITS: readonly (readonly [names: RegExp, dm2: number])[] = [
  [/^(dm ?2|square decimet(re|er)s?)$/, 1],
  [/^(m ?2|square met(re|er)s?)$/, 100],
  [/^(sq\.? ?ft\.?|ft ?2|square (foot|feet))$/, DM2_PER_SQUARE_FOOT],
];

/**
 * Reads an area of leather as it is sold, in dm²: `62 dm²`, `0.6 m²`, `6 3/4 sq ft`. A figure without a unit is in dm² where work is in
 * mm, in square feet where it is in inches. Never throws.
 * @param most the largest area allowed, dm²
 */
export function parseArea(text: string, unit: LengthUnit, most: number): Reading<number> {
  const refuse = (remedy: string) => refusal(text, 'an area of leather', remedy);
  const figure = parseTypedFigure(normaliseTyped(text));
  if ('remedy' in figure) return refuse(figure.remedy ?? `Write one number and its unit, ${EXAMPLE}.`);
  const name = figure.unitName.trim() || (unit === 'in' ? 'sq ft' : 'dm2');
  const dm2 = UNITS.find(([names]) => names.test(name))?.[1];
  if (dm2 === undefined) return refuse(`Write the unit as dm², m² or sq ft, ${EXAMPLE}.`);
  const value = (figure.number.numerator / figure.number.denominator) * dm2;
  if (value > most) return refuse(`Check the unit: at most ${most} dm².`);
  const written = `${figure.number.text} ${name.replace(/ ?2$/, '²')}`;
  return { ok: true, value, understood: dm2 === 1 ? written : `${written} = ${value.toFixed(1)} dm²` };
}
