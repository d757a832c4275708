import {
  coverDesign,
  type Job,
  type JobIssue,
  type JobRecord,
  parseJob,
  severity,
  tableReport,
  type Verdict,
} from '../../core/index.ts';
import { type Cell, type GapRange, gapRange } from './reportColumns.ts';
import { coveredBook, type StockCover } from './stockCover.ts';

/** How one ready-made cover fits one book. */
interface CoverMatch extends GapRange {
  readonly cover: string;
  readonly verdict: Verdict;
}

/** How every ready-made cover fits one book, in stock order, and the best of them. */
export interface StockMatch {
  readonly book: string;
  readonly best: CoverMatch | null;
  readonly covers: readonly CoverMatch[];
}

export type MatchedBook =
  | { readonly ok: true; readonly match: StockMatch }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

type BookInCovers =
  | { readonly ok: true; readonly name: string; readonly jobs: readonly Job[] }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/**
 * The jobs of a book in every ready-made cover, in stock order.
 * @param document a job document, of which name and book are used
 */
export function bookInCovers({ name = 'Untitled book', book }: JobRecord, stock: readonly StockCover[]): BookInCovers {
  const parsed = stock.map(({ document }) => parseJob({ ...coveredBook(document, book), name }));
  const refused = parsed.find(({ ok }) => !ok);
  if (refused !== undefined && !refused.ok) return refused;
  return { ok: true, name: String(name), jobs: parsed.flatMap((each) => (each.ok ? [each.job] : [])) };
}

/** The better verdict goes first, then the smaller largest gap, then stock order. */
const rank = ({ verdict, largest_mm }: CoverMatch): number => severity(verdict) * 1e6 + largest_mm;

/**
 * Tries every ready-made cover on a book.
 * @param book a job document, of which name and book are used
 * @param maxGap_mm largest gap at any edge of the best cover; null for the loosest gaps of each cover itself
 */
export function matchBook(
  document: JobRecord,
  stock: readonly StockCover[],
  maxGap_mm: number | null = null,
): MatchedBook {
  const parsed = bookInCovers(document, stock);
  if (!parsed.ok) return parsed;
  const covers = parsed.jobs.map((job, i): CoverMatch => {
    const report = tableReport(coverDesign(job));
    return { cover: stock[i]!.name, verdict: report.verdict, ...gapRange(report) };
  });
  const isMatch = ({ verdict, largest_mm }: CoverMatch): boolean =>
    verdict !== 'fails' &&
    verdict !== 'unknown' &&
    (maxGap_mm === null ? verdict !== 'loose' : largest_mm <= maxGap_mm);
  const fitting = covers.filter(isMatch);
  const best = fitting.reduce<CoverMatch | null>((a, b) => (a !== null && rank(a) <= rank(b) ? a : b), null);
  return { ok: true, match: { book: parsed.name, best, covers } };
}

/** Columns of the verdict matrix: the best cover of each book, then three columns for every cover. */
export const matchColumns = (stock: readonly StockCover[]): string[] => [
  'book',
  'best',
  ...MATCH_FIELDS.map((field) => `best ${field}`),
  ...stock.flatMap(({ name }) => MATCH_FIELDS.map((field) => `${name} ${field}`)),
];

const MATCH_FIELDS = ['verdict', 'smallest_mm', 'largest_mm'] as const;

/** A match as a row under `matchColumns`. */
export const matchRow = ({ book, best, covers }: StockMatch): Cell[] => [
  book,
  best?.cover ?? null,
  ...MATCH_FIELDS.map((field) => best?.[field] ?? null),
  ...covers.flatMap((cover) => MATCH_FIELDS.map((field) => cover[field])),
];
