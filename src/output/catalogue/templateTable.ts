import { EXAMPLE_JOBS, type JobPath, MM_PER_OUNCE, valueAt } from '../../core/index.ts';
import type { Cell } from './reportColumns.ts';

/** Columns that most jobs need; any other field of a job may be added, by its path. */
const COLUMNS = [
  'name',
  'book.kind',
  'book.width_mm',
  'book.height_mm',
  'book.thickness_mm',
  'book.boardThickness_mm',
  'book.spine.shape',
  'book.spine.rise_mm',
  'leather.outside',
  'leather.pocket',
  'leather.lining',
  'seam.method',
  'seam.edgeMargin_mm',
  'seam.pitch_mm',
] as const satisfies readonly JobPath[];

/** A table of jobs to fill in: the names of its columns, and the example jobs as rows to write over. */
export const templateTable = (): Cell[][] => [
  [...COLUMNS],
  ...EXAMPLE_JOBS.map(({ document }) => COLUMNS.map((path) => typed(valueAt(document, path)))),
];

/** A value as a maker would type it in its column; empty where the example leaves it to its usual value. */
function typed(value: unknown): Cell {
  if (typeof value === 'number' || typeof value === 'string') return value;
  if (!isThickness(value)) return null;
  const ounces = [value.min_mm, value.max_mm].map((end) => end / MM_PER_OUNCE);
  return ounces.every(Number.isInteger) ? `${ounces.join('-')} oz` : `${value.min_mm}-${value.max_mm} mm`;
}

const isThickness = (value: unknown): value is { readonly min_mm: number; readonly max_mm: number } =>
  typeof value === 'object' && value !== null && 'min_mm' in value && 'max_mm' in value;
