import { findFieldNote, type JobPath, type LengthUnit } from '../../core/index.ts';
import type { Typed } from './jobHistory.ts';

/** A text typed for the value at a path, so that a length keeps its meaning when the units change. */
export function typedText({ text, unit }: Typed, path: JobPath, unitNow: LengthUnit): string {
  const isBareLength = /^[\d.,\s]+$/.test(text) && text.trim() !== '' && findFieldNote(path)?.unit === 'mm';
  return unit !== unitNow && isBareLength ? `${text.trim()} ${unit}` : text;
}
