import { parseLength } from '../../../core/index.ts';
import { checkPaper, type Paper } from '../../../output/pdf/paper.ts';
import { BAR_LENGTH, fitToPageSuspicion, type MeasuredBars, printerScale } from '../../../output/pdf/printerScale.ts';
import type { TemplateChoice } from './templateChoice.ts';

type Entry = 'roll' | 'barX' | 'barY' | 'kerf';

/** The entries of a template as read: what can be used, and what is wrong with the rest. */
export interface TemplateSettings {
  /** Null where the roll cannot be used. */
  readonly paper: Paper | null;
  readonly bars: MeasuredBars | undefined;
  readonly kerf_mm: number | undefined;
  readonly issues: Readonly<Partial<Record<Entry, string>>>;
  /** Warning about bars that look like a scaled print, not like an inaccurate printer. */
  readonly suspicion: string | null;
}

/** Widest kerf that a cutting file takes, mm. */
const MOST_KERF = 2;

/** Reads what was typed for a template. An empty entry is none; both bars belong together. */
export function readTemplate(choice: TemplateChoice): TemplateSettings {
  const issues: Partial<Record<Entry, string>> = {};
  const length = (entry: Entry): number | undefined => {
    if (choice[entry].trim() === '') return undefined;
    const reading = parseLength(choice[entry], { defaultUnit: 'mm' });
    if (reading.ok) return reading.value;
    issues[entry] = reading.message;
    return undefined;
  };
  const guard = (entry: Entry, check: () => void): boolean => {
    try {
      check();
      return true;
    } catch (error) {
      issues[entry] = (error as RangeError).message;
      return false;
    }
  };

  let paper: Paper | null = null;
  if (choice.paper === 'roll') {
    const width = length('roll');
    const roll = { roll_mm: width ?? 0 };
    if (issues.roll === undefined && guard('roll', () => checkPaper(roll))) paper = roll;
  } else paper = choice.paper;

  const [x, y] = [length('barX'), length('barY')];
  let bars: MeasuredBars | undefined;
  if (x !== undefined && y !== undefined) {
    const isFair =
      guard('barX', () => void printerScale({ x_mm: x, y_mm: BAR_LENGTH })) &&
      guard('barY', () => void printerScale({ x_mm: BAR_LENGTH, y_mm: y }));
    if (isFair) bars = { x_mm: x, y_mm: y };
  } else if (x !== undefined) issues.barY ??= 'Give both bars, or neither.';
  else if (y !== undefined) issues.barX ??= 'Give both bars, or neither.';

  let kerf_mm = length('kerf');
  if (kerf_mm !== undefined && kerf_mm > MOST_KERF) {
    issues.kerf = `${kerf_mm} mm is too wide: 0 to ${MOST_KERF} mm is allowed. Measure a slit that the laser has cut.`;
    kerf_mm = undefined;
  }
  const suspicion = bars === undefined || paper === null ? null : fitToPageSuspicion(bars, paper);
  return { paper, bars, kerf_mm, issues, suspicion };
}
