import type { LengthUnit } from '../../core/index.ts';
import type { Typed } from './jobHistory.ts';

/** A typed text as it must read in the unit now in force, so that a switch of units changes no meaning. */
export function typedText({ text, unit }: Typed, unitNow: LengthUnit): string {
  return unit !== unitNow && /^[\d.,\s]+$/.test(text) && text.trim() !== '' ? `${text.trim()} ${unit}` : text;
}
