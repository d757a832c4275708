import type { LengthUnit } from '../../core/index.ts';
import type { Typed } from './jobHistory.ts';

/** A typed text for the present unit, so that a change of units keeps its meaning. */
export function typedText({ text, unit }: Typed, unitNow: LengthUnit): string {
  return unit !== unitNow && /^[\d.,\s]+$/.test(text) && text.trim() !== '' ? `${text.trim()} ${unit}` : text;
}
