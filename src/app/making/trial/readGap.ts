import { type LengthUnit, parseLength, type Reading } from '../../../core/index.ts';

/**
 * Reads a gap as it is typed: a length, empty for none, with a minus for an overrun.
 * @param isOverrun whether a length without a minus is one
 */
export function readGap(text: string, unit: LengthUnit, isOverrun: boolean): Reading<number | null> {
  if (text.trim() === '') return { ok: true, value: null, understood: 'not read' };
  const bare = text.trim().replace(/^[-‐‑‒–—−]\s*/, '');
  const reading = parseLength(bare, { defaultUnit: unit });
  if (!reading.ok) return reading;
  const sign = isOverrun || bare !== text.trim() ? -1 : 1;
  // A zero that is negative would print as such.
  return { ...reading, value: reading.value === 0 ? 0 : sign * reading.value };
}
