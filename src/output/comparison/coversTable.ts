import {
  type Compared,
  comparedCover,
  coverDesign,
  coverLesson,
  type Job,
  type JobIssue,
  type JobPath,
  jobIssue,
  KIND_DEFAULTS,
  type LengthUnit,
  parseJob,
  parseLeatherWeight,
  parseLength,
} from '../../core/index.ts';
import { type Columns, columnsOf, parseRow, type RowHeader } from '../catalogue/rowDocument.ts';

/** Columns of a table of finished covers in plain words, in the order of the template; the last five are taken and not used. */
export const COVER_COLUMNS = [
  'id',
  'binding',
  'book_height',
  'book_width',
  'book_thickness',
  'unit',
  'leather',
  'pockets',
  'cut_width',
  'cut_height',
  'gap_front',
  'gap_back',
  'gap_head',
  'gap_tail',
  'kind',
  'judged',
  'note',
  'source',
] as const;

type CoverColumn = (typeof COVER_COLUMNS)[number];

/** Columns by which a table is one of finished covers. */
const TELLING: readonly string[] = ['cut_width', 'cut_height', 'gap_front', 'gap_back', 'gap_head', 'gap_tail'];

/** Whether the columns of a table are those of finished covers: how they came out, or the plain ones. */
export const isCoversTable = (first: readonly string[]): boolean =>
  first.some((cell) => cell.trim().startsWith('outcome.') || TELLING.includes(cell.trim()));

/** What a row of finished covers gives: lengths compared, or why there are none. */
export type ReadCover =
  | { readonly ok: true; readonly compared: readonly Compared[]; readonly leftOut: string | null }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/** Reads rows of jobs that were made, with the columns `outcome.*`. */
export function madeJobs(header: RowHeader): (cells: readonly string[]) => ReadCover {
  const columns: Columns = columnsOf(header);
  return (cells) => {
    const parsed = parseRow(columns, cells);
    return parsed.ok ? ofOutcome(parsed.job, []) : parsed;
  };
}

/** @param cut sizes that were cut, compared where no gap of that dimension was read */
function ofOutcome(job: Job, cut: readonly Compared[]): ReadCover {
  const lesson = coverLesson(coverDesign(job), { job: job.name, name: job.name });
  const read = lesson === null ? [] : comparedCover(lesson, leatherOf(job));
  const isRead = (of: Compared['of']): boolean => read.some((each) => each.of === of);
  const rest = cut.filter(({ of }) => !isRead(of === 'cut width' ? 'fore-edges' : 'head and tail'));
  const compared = [...read, ...rest];
  return { ok: true, compared, leftOut: compared.length > 0 ? null : 'nothing was read that can be compared' };
}

const leatherOf = ({ leather: { outside } }: Job): string => outside.taken?.name ?? '';

/** A length as typed: one figure, or two with a bar between, the middle of which is taken. */
interface Typed {
  readonly value: number;
  readonly half: number;
}

/** Lengths that stand in where one was not measured that the dimension compared does not depend on, mm. */
const STAND_IN = { book_height: 200, book_width: 150, book_thickness: 20 } as const;

/** Weight of leather where none is given. */
const USUAL_LEATHER = '4-5 oz';

/**
 * Reads rows with the plain columns of `COVER_COLUMNS`.
 * @returns the reader, or an issue for every column that is none of them
 */
export function plainCovers(
  first: readonly string[],
):
  | { readonly ok: true; readonly read: (cells: readonly string[]) => ReadCover }
  | { readonly ok: false; readonly issues: readonly JobIssue[] } {
  const names = first.map((cell) => cell.trim());
  const issues = names.flatMap((name, i) => {
    const isKnown = COVER_COLUMNS.some((column) => column === name);
    if (isKnown && names.indexOf(name) === i) return [];
    const got = isKnown ? 'the same column twice' : 'a column that a table of covers does not have';
    return [jobIssue('unknown_field', name || `(column ${i + 1})`, got, COVER_COLUMNS.join(', '), 'take it out')];
  });
  if (issues.length > 0) return { ok: false, issues };
  return { ok: true, read: (cells) => readPlain((column) => cells[names.indexOf(column)]?.trim() ?? '') };
}

function readPlain(cell: (column: CoverColumn) => string): ReadCover {
  const issues: JobIssue[] = [];
  const wrong = (column: CoverColumn, allowed: string): void => {
    issues.push(
      jobIssue('choice', column as JobPath, JSON.stringify(cell(column).slice(0, 80)), allowed, 'correct the cell'),
    );
  };
  const unit: LengthUnit = cell('unit') === 'in' ? 'in' : 'mm';
  if (!['', 'mm', 'in'].includes(cell('unit'))) wrong('unit', 'mm or in');
  const bindings = ['', ...Object.keys(KIND_DEFAULTS)];
  if (!bindings.includes(cell('binding'))) wrong('binding', Object.keys(KIND_DEFAULTS).join(', '));
  const length = (column: CoverColumn): Typed | null => {
    const text = cell(column);
    if (text === '') return null;
    const typed = readLength(text, unit);
    if (typed === null) wrong(column, 'a length, as 8 1/2 or 215.5, or two with a bar between');
    return typed;
  };
  const [height, width, thickness] = [length('book_height'), length('book_width'), length('book_thickness')];
  const [cutWidth, cutHeight] = [length('cut_width'), length('cut_height')];
  const gaps = {
    front_mm: length('gap_front'),
    back_mm: length('gap_back'),
    head_mm: length('gap_head'),
    tail_mm: length('gap_tail'),
  };
  const sold = parseLeatherWeight(cell('leather') || USUAL_LEATHER);
  const thick = sold.ok ? null : readLength(cell('leather'), unit);
  const weight = sold.ok ? sold.value : thick && { min: thick.value, max: thick.value };
  if (weight === null) wrong('leather', 'a weight or a thickness, as 4-5 oz, 1.5 mm or 1/16 in');
  const pockets = pocketsOf(cell('pockets'), unit);
  if (issues.length > 0 || weight === null) return { ok: false, issues };
  if (pockets === null)
    return { ok: true, compared: [], leftOut: 'a cover without two pockets is none that this tool makes' };

  const parsed = parseJob({
    format: 'coverwright-job',
    version: 3,
    name: cell('id') || 'cover',
    book: {
      ...(cell('binding') !== '' && { kind: cell('binding') }),
      height_mm: height?.value ?? STAND_IN.book_height,
      width_mm: width?.value ?? STAND_IN.book_width,
      thickness_mm: thickness?.value ?? STAND_IN.book_thickness,
    },
    leather: { outside: { min_mm: weight.min, max_mm: weight.max } },
    pockets: { construction: pockets.construction, ...(pockets.depth !== null && { depth_mm: pockets.depth }) },
  });
  if (!parsed.ok) return parsed;
  const { job } = parsed;
  const canWidth =
    width !== null && thickness !== null && (pockets.construction === 'separate' || pockets.depth !== null);
  const canHeight = height !== null;
  const design = coverDesign(job);
  const { outside } = design.pieces;
  const { closed, height: high } = design.fitDoubt.spare;
  const cut = (of: Compared['of'], typed: Typed | null, predicted: number, u: number): Compared[] =>
    typed === null
      ? []
      : // A range that is given is as likely anywhere in it.
        [
          {
            cover: job.name,
            leather: cell('leather'),
            of,
            measured: typed.value,
            predicted,
            u: Math.hypot(u, typed.half / Math.sqrt(3)),
          },
        ];
  const compared = [
    ...(canWidth ? cut('cut width', cutWidth, outside.width, closed.u) : []),
    ...(canHeight ? cut('cut height', cutHeight, outside.height, high.u) : []),
  ];
  const outcome = Object.fromEntries(
    Object.entries(gaps).flatMap(([name, typed]) => {
      const isMeasured =
        name === 'front_mm' || name === 'back_mm' ? canWidth && cutWidth !== null : canHeight && cutHeight !== null;
      return typed === null || !isMeasured ? [] : [[name, typed.value]];
    }),
  );
  const made = parseJob({
    ...job,
    outcome,
    pattern: {
      ...job.pattern,
      outsideWidth_mm: canWidth ? (cutWidth?.value ?? null) : null,
      outsideHeight_mm: canHeight ? (cutHeight?.value ?? null) : null,
    },
  });
  if (!made.ok) return made;
  const read = ofOutcome(made.job, compared);
  return read.ok ? { ...read, compared: read.compared.map((each) => ({ ...each, leather: cell('leather') })) } : read;
}

/** Pockets in words: none said or "two ..." sewn on, "turned" ends with their depth where it is given; null for any others. */
function pocketsOf(
  text: string,
  unit: LengthUnit,
): { readonly construction: 'separate' | 'turned'; readonly depth: number | null } | null {
  if (text === '' || /^two\b/i.test(text)) return { construction: 'separate', depth: null };
  if (!/^turned\b/i.test(text)) return null;
  const depth = /^turned\s+(.+?)(\s+each)?$/i.exec(text)?.[1];
  return { construction: 'turned', depth: depth === undefined ? null : (readLength(depth, unit)?.value ?? null) };
}

function readLength(text: string, unit: LengthUnit): Typed | null {
  const [, low, high] = /^([^-]*\d)-(\d.*)$/.exec(text) ?? [];
  const one = (typed: string): number | null => {
    const bare = typed.replace(/^[-−]\s*/, '');
    const read = parseLength(bare, { defaultUnit: unit });
    return read.ok ? (bare === typed ? 1 : -1) * read.value : null;
  };
  if (low === undefined || high === undefined) {
    const value = one(text);
    return value === null ? null : { value, half: 0 };
  }
  const [from, to] = [one(low), one(high)];
  return from === null || to === null ? null : { value: (from + to) / 2, half: Math.abs(to - from) / 2 };
}
