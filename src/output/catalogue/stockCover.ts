import {
  EXAMPLE_JOBS,
  isRecord,
  JOB_MIGRATIONS,
  type Job,
  type JobIssue,
  type JobRecord,
  jobIssue,
  parseJob,
} from '../../core/index.ts';

/** A ready-made cover: a job with cut sizes and leather but without a book. */
export interface StockCover {
  readonly name: string;
  readonly document: JobRecord;
}

export type ReadCovers =
  | { readonly ok: true; readonly covers: readonly StockCover[] }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

const FORMAT = 'coverwright-covers';

/** A book of usual size to check covers with: the rules that involve the book refuse only tiny ones. */
const ANY_BOOK = EXAMPLE_JOBS[0].document.book;

/**
 * Reads a set of ready-made covers: `{"format": "coverwright-covers", "version": 1, "covers": [...]}`. Each cover has
 * the fields of a job but no book; its cut width, cut height and pocket depth must be given, because it is already
 * made.
 * @param value anything read from JSON
 * @returns the covers, or every issue with its place, as `covers.2.leather.outside`; never throws
 */
export function readStockCovers(value: unknown): ReadCovers {
  if (!isRecord(value) || value.format !== FORMAT || value.version !== 1 || !Array.isArray(value.covers))
    return {
      ok: false,
      issues: [
        jobIssue(
          'type',
          '(document)',
          'no set of covers',
          `{"format": "${FORMAT}", "version": 1, "covers": [...]}`,
          'put the covers into such a document',
        ),
      ],
    };
  const covers = value.covers as readonly unknown[];
  const names = covers.map((cover, i) =>
    isRecord(cover) ? (typeof cover.name === 'string' ? cover.name : `Cover ${i + 1}`) : '',
  );
  const issues = covers.flatMap((cover, i) => [
    ...(names.indexOf(names[i]!) < i
      ? [jobIssue('rule', `covers.${i}.name`, JSON.stringify(names[i]), 'another name for each cover', 'rename one')]
      : []),
    ...coverIssues(cover).map((issue) => ({ ...issue, path: `covers.${i}.${issue.path}` })),
  ]);
  if (covers.length === 0)
    issues.push(jobIssue('empty', 'covers', 'an empty list', 'one cover or more', 'list the covers in stock'));
  if (issues.length > 0) return { ok: false, issues };
  return { ok: true, covers: covers.map((cover, i) => ({ name: names[i]!, document: cover as JobRecord })) };
}

function coverIssues(cover: unknown): readonly JobIssue[] {
  if (!isRecord(cover))
    return [jobIssue('type', '(cover)', Array.isArray(cover) ? 'a list' : String(cover), 'an object', 'give a cover')];
  if ('book' in cover)
    return [jobIssue('unknown_field', 'book', 'a book', 'a cover without one', 'list the books in the other file')];
  const parsed = parseJob(coveredBook(cover, ANY_BOOK));
  return parsed.ok ? openSizes(parsed.job) : parsed.issues;
}

function openSizes({ pattern, pockets }: Job): JobIssue[] {
  const sizes = {
    'pattern.outsideWidth_mm': pattern.outsideWidth_mm,
    'pattern.outsideHeight_mm': pattern.outsideHeight_mm,
    'pockets.depth_mm': pockets.depth_mm,
  };
  return Object.entries(sizes)
    .filter(([, size]) => size === null)
    .map(([path]) => jobIssue('missing', path, 'nothing', 'the size as made', 'measure the cover'));
}

/** The job document of a book put into a ready-made cover. */
export const coveredBook = (cover: JobRecord, book: unknown): JobRecord => ({
  ...cover,
  format: 'coverwright-job',
  version: JOB_MIGRATIONS.length + 1,
  book,
});
