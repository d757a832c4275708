import {
  EXAMPLE_JOBS,
  fieldNote,
  JOB_MIGRATIONS,
  type Job,
  type JobDocument,
  type JobPath,
  KIND_DEFAULTS,
  type LengthUnit,
  parseJob,
  patched,
  printer,
  readField,
} from '../../core/index.ts';
import { issueWords } from '../fields/issueWords.ts';
import type { Written } from '../state/jobHistory.ts';

/** The figures that a new cover needs, in the order in which they are asked. */
const ENTRIES = [
  { path: 'book.width_mm', title: 'Width', asks: 'How wide is the book?' },
  { path: 'book.height_mm', title: 'Height', asks: 'How high is the book?' },
  { path: 'book.thickness_mm', title: 'Thickness', asks: 'How thick is the book?' },
  { path: 'book.spine.rise_mm', title: 'Rise of the spine', asks: 'How far does the spine rise?' },
  { path: 'book.boardThickness_mm', title: 'Board', asks: 'How thick is one board?' },
  { path: 'leather.outside', title: 'Leather weight', asks: 'What does the leather weigh?' },
] as const satisfies readonly { path: JobPath; title: string; asks: string }[];

export type Entry = (typeof ENTRIES)[number];

/** What has been answered of a new cover. */
export interface Answers {
  readonly kind: keyof typeof KIND_DEFAULTS;
  readonly spine: 'flat' | 'rounded';
  readonly texts: Readonly<Partial<Record<Entry['path'], string>>>;
  /** Unit of a figure without one. */
  readonly units: LengthUnit;
}

/** What is asked: the rise of a rounded spine only. */
export const entriesFor = ({ spine }: Answers): readonly Entry[] =>
  ENTRIES.filter(({ path }) => spine === 'rounded' || path !== 'book.spine.rise_mm');

export const entryHelp = ({ path }: Entry): string =>
  path === 'leather.outside' ? 'As sold: 4-5 oz or 1.6-2.0 mm.' : fieldNote(path).description;

/** What holds where an entry is left empty; null where it is needed. */
export function usualOf({ path }: Entry, { kind, units }: Answers): string | null {
  if (path === 'book.boardThickness_mm') return `${printer(units).size(KIND_DEFAULTS[kind].boardThickness_mm)}, usual`;
  return path === 'book.spine.rise_mm' ? 'or estimated' : null;
}

/** What stands in an empty entry: what holds then, else the unit of a figure without one. */
export const emptyWords = (entry: Entry, answers: Answers): string =>
  usualOf(entry, answers) ?? (entry.path === 'leather.outside' ? 'oz or mm' : answers.units);

const textOf = ({ texts }: Answers, { path }: Entry): string => (texts[path] ?? '').trim();

/** How an entry was understood, where that says more than the text itself. */
export function echoOf(entry: Entry, answers: Answers): string | null {
  const text = textOf(answers, entry);
  const reading = text === '' ? null : readField(entry.path, text, answers.units);
  return reading?.ok && reading.understood !== text ? reading.understood : null;
}

/** The new job, complete or not. All that is not answered starts at its default. */
export function writtenJob(answers: Answers): Written {
  const { kind, spine, units } = answers;
  const filled = entriesFor(answers).filter((entry) => textOf(answers, entry) !== '');
  const patches = filled.flatMap((entry) => {
    const reading = readField(entry.path, textOf(answers, entry), units);
    return reading.ok ? reading.value : [];
  });
  const blank: JobDocument = {
    format: 'coverwright-job',
    version: JOB_MIGRATIONS.length + 1,
    name: 'Untitled cover',
    work: { units },
    book: { kind, ...(spine === 'rounded' && { spine: { shape: spine } }) },
  };
  const typed = filled.map((entry) => [entry.path, { text: textOf(answers, entry), unit: units }] as const);
  return { document: patched(blank, patches), typed: Object.fromEntries(typed) };
}

/** What is wrong with each entry that cannot be used, by its path. */
export function refusalsOf(answers: Answers): Readonly<Partial<Record<Entry['path'], string>>> {
  const parsed = parseJob(writtenJob(answers).document);
  const refused = entriesFor(answers).flatMap((entry) => {
    const text = textOf(answers, entry);
    const reading = text === '' ? null : readField(entry.path, text, answers.units);
    if (reading?.ok === false) return [[entry.path, reading.message]];
    // Without any leather it is the leather as a whole that is missing.
    const issue = parsed.ok
      ? undefined
      : parsed.issues.find(({ path }) => path.startsWith(entry.path) || entry.path.startsWith(`${path}.`));
    return issue === undefined ? [] : [[entry.path, text === '' ? 'Needed to start a cover.' : issueWords(issue)]];
  });
  return Object.fromEntries(refused);
}

/** The book as far as it is answered, to be pictured; the rest is that of an example. */
export function picturedBook(answers: Answers): Job['book'] {
  const example = parseJob(EXAMPLE_JOBS[0].document);
  if (!example.ok) throw new Error('The first example does not parse.');
  const { width_mm, height_mm, thickness_mm } = example.job.book;
  const { document } = writtenJob(answers);
  const book = { width_mm, height_mm, thickness_mm, ...(document.book as object) };
  const parsed = parseJob({ ...EXAMPLE_JOBS[0].document, book });
  return (parsed.ok ? parsed : example).job.book;
}
