import { riseError, riseOf } from '../book/rise.ts';
import type { Job } from '../job/jobSchema.ts';
import { mm } from '../units/mm.ts';

type Book = Job['book'];

/** One measure taken of the book, and how far it may be off. */
export interface Measure {
  readonly id: string;
  readonly title: string;
  readonly value: number;
  /** Either way, mm. */
  readonly error: number;
  /** A book on which this measure alone is `value`. */
  readonly put: (book: Book, value: number) => Book;
}

/**
 * Error of a board's thickness, mm, where the job allows more: it is small enough for a caliper. Common practice, no
 * source.
 */
export const CALIPER_ERROR = 0.1;

/**
 * The measures that this cover was sized from. A thickness at the fore-edge equal to that at the spine is taken as the
 * same measure, as `uncertainty` does.
 */
export function measuresOf({ book }: Job): readonly Measure[] {
  const { error_mm: error, openFlatWidth_mm: openFlat } = book.measured;
  const isWedge = book.foreEdgeThickness_mm !== book.thickness_mm;
  const measure = (id: string, title: string, value: number, put: Measure['put'], off: number = error): Measure => ({
    id,
    title,
    value,
    error: off,
    put,
  });
  return [
    measure('width', 'Width', book.width_mm, (b, value) => ({ ...b, width_mm: mm(value) })),
    measure('height', 'Height', book.height_mm, (b, value) => ({ ...b, height_mm: mm(value) })),
    measure('thickness', isWedge ? 'Thickness at the spine' : 'Thickness', book.thickness_mm, (b, value) => ({
      ...b,
      thickness_mm: mm(value),
      foreEdgeThickness_mm: isWedge ? b.foreEdgeThickness_mm : mm(value),
    })),
    ...(isWedge
      ? [
          measure('foreEdgeThickness', 'Thickness at the fore-edge', book.foreEdgeThickness_mm, (b, value) => ({
            ...b,
            foreEdgeThickness_mm: mm(value),
          })),
        ]
      : []),
    ...(book.spine.shape === 'rounded'
      ? [
          measure(
            'rise',
            'Rise of the spine',
            riseOf(book),
            (b, value) => ({
              ...b,
              spine: { ...b.spine, rise_mm: mm(Math.max(0, Math.min(value, b.thickness_mm / 2))) },
            }),
            riseError(book),
          ),
        ]
      : []),
    ...(openFlat === null
      ? []
      : [
          measure('openFlat', 'Open flat', openFlat, (b, value) => ({
            ...b,
            measured: { ...b.measured, openFlatWidth_mm: mm(value) },
          })),
        ]),
    measure(
      'board',
      'Board',
      book.boardThickness_mm,
      (b, value) => ({ ...b, boardThickness_mm: mm(Math.max(0.1, Math.min(value, 0.49 * b.thickness_mm))) }),
      Math.min(error, CALIPER_ERROR),
    ),
  ];
}
