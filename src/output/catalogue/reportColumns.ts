import { type FitAt, RANGE_POINTS, type TableReport } from '../../core/index.ts';

/** One cell of a table. */
export type Cell = string | number | null;

/** The gaps of a report at its four edges, over the whole weight range; gap positive, overrun negative. */
export interface GapRange {
  readonly smallest_mm: number;
  readonly largest_mm: number;
}

const edgeGaps = ({ foreEdge, head_mm, tail_mm }: FitAt): number[] => [
  foreEdge.front_mm,
  foreEdge.back_mm,
  head_mm,
  tail_mm,
];

/** Smallest and largest gap at any edge in any leather of the range. */
export function gapRange({ fit }: Pick<TableReport, 'fit'>): GapRange {
  const gaps = RANGE_POINTS.flatMap((point) => edgeGaps(fit[point]));
  return { smallest_mm: micron(Math.min(...gaps)), largest_mm: micron(Math.max(...gaps)) };
}

/** Rounded to 0.001 mm, without floating-point noise. */
const micron = (value: number): number => Math.round(value * 1000) / 1000;

/** A chance in percent, rounded down to 0.01, so that it is never overstated. */
const percent = (chance: number): number => Math.floor(chance * 10_000) / 100;

const size = (piece: { width_mm: number; height_mm: number } | null): Cell[] =>
  piece === null ? [null, null] : [micron(piece.width_mm), micron(piece.height_mm)];

/** Columns of a report as one row of a table: cut sizes, worst fit, verdict. */
export const REPORT_COLUMNS = [
  'name',
  'verdict',
  'outside.width_mm',
  'outside.height_mm',
  'pocket.width_mm',
  'pocket.height_mm',
  'pocket.count',
  'lining.width_mm',
  'lining.height_mm',
  'wrap.closed_mm',
  'wrap.flat_mm',
  'gap.smallest_mm',
  'gap.largest_mm',
  'chance.closes_percent',
  'chance.fits_percent',
  'fails',
  'headline',
  'origin',
] as const;

/** A report as a row under `REPORT_COLUMNS`. */
export function reportRow(name: string, report: TableReport): Cell[] {
  const { pattern, wrap, doubt, checks, verdict, headline, origin } = report;
  const { smallest_mm, largest_mm } = gapRange(report);
  return [
    name,
    verdict,
    ...size(pattern.outside),
    ...size(pattern.pocket),
    pattern.pocket.count,
    ...size(pattern.lining),
    micron(wrap.closed_mm),
    micron(wrap.flat_mm),
    smallest_mm,
    largest_mm,
    percent(doubt.chance.closes),
    percent(doubt.chance.fits),
    checks
      .filter((check) => check.verdict === 'fails')
      .map(({ id }) => id)
      .join(' '),
    headline,
    origin,
  ];
}
