import { isDay, LAYERS, type Layer, parseLength } from '../../core/index.ts';
import type { MachineProfile } from '../../output/machine/machineProfile.ts';
import { checkPaper, type Paper, SHEETS } from '../../output/pdf/paper.ts';
import { type MeasuredBars, printerScale } from '../../output/pdf/printerScale.ts';
import type { DrawnChoice } from '../../output/template/drawnTemplate.ts';
import { badWord } from '../badInput.ts';
import type { Words } from '../words.ts';

const FORMATS = ['pdf', 'svg', 'dxf', 'hpgl', 'glb', 'usdz'] as const;
type Format = (typeof FORMATS)[number];

/** What is written: template and layout as PDF, SVG and DXF, the others as PDF. */
const SHEETS_ASKED = ['template', 'layout', 'bench', 'drafting', 'tests', 'covers', 'photograph'] as const;
type SheetAsked = (typeof SHEETS_ASKED)[number];

/** What is written of every job. */
export interface SheetsRequest {
  readonly formats: readonly Format[];
  readonly sheets: readonly SheetAsked[];
  readonly paper: Paper;
  readonly bars: MeasuredBars | undefined;
  readonly drawn: DrawnChoice;
  /** Layers of a cutting file without a machine; null for the usual ones. */
  readonly layers: readonly Layer[] | null;
  readonly kerf_mm: number | undefined;
  readonly machine: MachineProfile | null;
  /** Row of the machine's table that the kerf is taken from. */
  readonly leather: string | null;
  readonly thickness_mm: number | null;
  readonly date: string;
  readonly address: string | null;
}

export const SHEETS_OPTIONS = {
  to: { type: 'string' },
  sheets: { type: 'string' },
  paper: { type: 'string' },
  bars: { type: 'string' },
  drawn: { type: 'string' },
  'made-in': { type: 'string' },
  cards: { type: 'string' },
  tooling: { type: 'string' },
  strips: { type: 'boolean' },
  mirrored: { type: 'boolean' },
  layers: { type: 'string' },
  kerf: { type: 'string' },
  profile: { type: 'string' },
  leather: { type: 'string' },
  thickness: { type: 'string' },
  date: { type: 'string' },
  address: { type: 'string' },
  units: { type: 'string' },
  out: { type: 'string' },
} as const;

export type SheetsWords = Words<typeof SHEETS_OPTIONS>;

/** Widest kerf, mm. */
const MOST_KERF = 2;

/**
 * Reads what is asked for from the words of the command.
 * @param today used where no date is given
 * @throws BadInput for a word that cannot be taken
 */
export function sheetsRequest(words: SheetsWords, machine: MachineProfile | null, today: string): SheetsRequest {
  const formats = listOf(words, 'to', FORMATS) ?? ['pdf'];
  if (formats.includes('hpgl') && machine === null)
    throw badWord(
      '--to',
      'hpgl without a machine',
      'hpgl with --profile, because its pens are the passes of a machine',
    );
  const mirrored = words.has('mirrored');
  const leather = words.text('leather');
  if (leather !== null && machine === null) throw badWord('--leather', leather, 'it with --profile only');
  const thickness_mm = lengthOf(words, 'thickness');
  if (thickness_mm !== null && leather === null)
    throw badWord('--thickness', words.text('thickness') ?? '', 'it with --leather only');
  return {
    formats,
    sheets: listOf(words, 'sheets', SHEETS_ASKED) ?? ['template'],
    paper: paperOf(words.text('paper') ?? 'A4'),
    bars: barsOf(words.text('bars')),
    drawn: {
      drawn: words.choice('drawn', ['pattern', 'tracings']) ?? 'pattern',
      madeIn: words.choice('made-in', ['card', 'leather']) ?? 'card',
      cards: words.choice('cards', ['pieces', 'one', 'half']) ?? 'pieces',
      hasTooling: (words.choice('tooling', ['shown', 'out']) ?? 'shown') === 'shown',
      strips: words.has('strips'),
      mirrored,
      transferred: mirrored,
    },
    layers: listOf(words, 'layers', LAYERS),
    kerf_mm: kerfOf(words),
    machine,
    leather,
    thickness_mm,
    date: dateOf(words.text('date') ?? today),
    address: addressOf(words.text('address')),
  };
}

/** The values of an option that takes several, with commas between them; each once, in the order allowed. */
function listOf<T extends string>(
  words: SheetsWords,
  option: keyof typeof SHEETS_OPTIONS,
  allowed: readonly T[],
): T[] | null {
  const text = words.text(option);
  if (text === null) return null;
  const asked = text.split(',').map((each) => each.trim().toLowerCase());
  for (const each of asked)
    if (!allowed.some((word) => word === each))
      throw badWord(`--${option}`, each, `one or more of ${allowed.join(', ')}`);
  return allowed.filter((word) => asked.includes(word));
}

function lengthOf(words: SheetsWords, option: 'kerf' | 'thickness'): number | null {
  const text = words.text(option);
  if (text === null) return null;
  const read = parseLength(text, { defaultUnit: 'mm' });
  if (!read.ok) throw badWord(`--${option}`, text, 'a length such as 0.2 mm');
  return read.value;
}

function kerfOf(words: SheetsWords): number | undefined {
  const kerf = lengthOf(words, 'kerf');
  if (kerf !== null && kerf > MOST_KERF) throw badWord('--kerf', `${kerf} mm`, `0 to ${MOST_KERF} mm`);
  return kerf ?? undefined;
}

function paperOf(text: string): Paper {
  const name = (Object.keys(SHEETS) as (keyof typeof SHEETS)[]).find(
    (sheet) => sheet.toLowerCase() === text.toLowerCase(),
  );
  if (name !== undefined) return name;
  const roll = /^roll[: ](.+)$/i.exec(text)?.[1];
  const width = roll === undefined ? null : parseLength(roll, { defaultUnit: 'mm' });
  const allowed = `${Object.keys(SHEETS).join(', ')}, or a roll as roll:610`;
  if (width === null || !width.ok) throw badWord('--paper', text, allowed);
  const paper = { roll_mm: width.value };
  try {
    checkPaper(paper);
  } catch (error) {
    throw badWord('--paper', text, `${allowed}: ${(error as Error).message}`);
  }
  return paper;
}

function barsOf(text: string | null): MeasuredBars | undefined {
  if (text === null) return undefined;
  const allowed = 'both check bars as measured, level and upright, as 149.6,150.2';
  const [x, y, ...more] = text.split(/[,;]/).map((each) => parseLength(each, { defaultUnit: 'mm' }));
  if (!x?.ok || !y?.ok || more.length > 0) throw badWord('--bars', text, allowed);
  const bars = { x_mm: x.value, y_mm: y.value };
  try {
    printerScale(bars);
  } catch (error) {
    throw badWord('--bars', text, `${allowed}: ${(error as Error).message}`);
  }
  return bars;
}

function dateOf(text: string): string {
  if (!isDay(text)) throw badWord('--date', text, 'a day such as 2026-11-27');
  return text;
}

function addressOf(text: string | null): string | null {
  if (text === null) return null;
  if (!(URL.canParse(text) && /^https?:$/.test(new URL(text).protocol)))
    throw badWord('--address', text, 'the address of the page, as https://leather.example/');
  return text.replace(/#.*$/, '');
}
