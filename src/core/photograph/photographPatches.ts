import type { Patch } from '../job/jobDocument.ts';
import type { Job } from '../job/jobSchema.ts';
import type { MeasuredBook } from './bookMeasures.ts';

/** Figures of the job are kept to a hundredth of a millimetre; doubts are rounded up to it. */
const hundredths = (value: number): number => Math.round(value * 100) / 100;
const roundedUp = (u: number): number => Math.max(0.01, Math.ceil(u * 100 - 1e-9) / 100);

/** Correlations below this say nothing. */
const LEAST = 0.05;
/** What is left of a correlation in the job, so that rounding leaves all of them possible together. */
const KEPT = 0.98;

/**
 * What a book measured by photograph changes in a job: its measures, their doubts, and the correlations between them.
 *
 * @param ruler with which the print was checked, whose own scale these lengths share; '' for a print that was not checked
 */
export function photographPatches(
  { correlations }: Job,
  { measures, correlation }: Pick<MeasuredBook, 'measures' | 'correlation'>,
  ruler: string,
): Patch[] {
  const own = new Set<string>(measures.map(({ path }) => path));
  const thickness = measures.find(({ path }) => path === 'book.thickness_mm');
  return [
    ...(own.has('book.spine.rise_mm') ? [{ path: 'book.spine.shape', value: 'rounded' } as const] : []),
    ...measures.map(({ path, value }): Patch => ({ path, value: hundredths(value) })),
    // A book that is no wedge stays none.
    ...(thickness !== undefined && !own.has('book.foreEdgeThickness_mm')
      ? [{ path: 'book.foreEdgeThickness_mm', value: hundredths(thickness.value) } as const]
      : []),
    ...measures.map(
      ({ path, u }): Patch => ({
        path: `doubts.${path}`,
        value: { u: roundedUp(u), distribution: 'normal', from: 'photograph', with: ruler },
      }),
    ),
    {
      path: 'correlations',
      value: [
        ...correlations.filter(({ a, b }) => !(own.has(a) && own.has(b))),
        ...measures.flatMap(({ path: a }, i) =>
          measures.slice(0, i).flatMap(({ path: b }, k) => {
            const r = Math.round(KEPT * correlation[i]![k]! * 1000) / 1000;
            return Math.abs(r) < LEAST ? [] : [{ a: b, b: a, r }];
          }),
        ),
      ],
    },
  ];
}
