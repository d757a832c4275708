import { type LengthUnit, parseLength } from '../../../core/units/parseLength.ts';
import type { Reading } from '../../../core/units/reading.ts';

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
