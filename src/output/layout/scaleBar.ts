import { type LengthUnit, MM_PER_INCH } from '../../core/index.ts';

/** The longest of 1, 2, 5, 10, 20 ... mm or inches that is no more than a third of a width; mm, over 0. */
export function scaleBar(width: number, unit: LengthUnit): number {
  const one = unit === 'mm' ? 1 : MM_PER_INCH;
  const most = width / 3 / one;
  const decade = 10 ** Math.floor(Math.log10(most));
  const step = [5, 2, 1].find((each) => each * decade <= most) ?? 1;
  return step * decade * one;
}
