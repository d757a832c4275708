import type { Printer } from '../units/printer.ts';
import type { ReadingResidual } from './cardLesson.ts';
import { STATED } from './priorErrors.ts';
import type { CardReadings } from './readings.ts';

/** Standard deviations beyond which a reading contradicts the others: 1 in 370 by chance. */
const BEYOND_CHANCE = 3;

/**
 * Names the readings that contradict the measures or each other; empty if none does.
 * @param residuals every reading with its deviation by the likeliest explanation
 */
export function contradictions(
  residuals: readonly ReadingResidual[],
  readings: CardReadings,
  { length, number }: Printer,
): string[] {
  const { closes, front_mm: front, back_mm: back, opening_deg: opening, error_mm: error } = readings;
  const spare = front === null || back === null ? null : front + back;
  const sure = (BEYOND_CHANCE * Math.SQRT2 * error) / STATED;
  const found: string[] = [];
  if (spare !== null && closes === true && spare < -sure)
    found.push(`The card is said to close, but overruns ${length(-spare)} at the fore-edges. Read both again.`);
  if (spare !== null && (closes === false || (opening ?? 0) > 0) && spare > sure)
    found.push(`The card is said not to close, but shows ${length(spare)} of gap at the fore-edges. Read both again.`);
  const far = residuals.filter(({ deviation }) => Math.abs(deviation) > BEYOND_CHANCE);
  for (const { name, deviation, expected, read } of far)
    found.push(
      `The ${name} and all other measures differ by ${length(Math.abs(read - expected))}, ${number(Math.abs(deviation), 1)} times what their errors explain. ` +
        'Measure the book again and read the card again.',
    );
  return found;
}
