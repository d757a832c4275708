import { expect, test } from 'vitest';
import type { Fit } from '../../../src/core/fold/coverFit.ts';
import type { RangePoint } from '../../../src/core/leather/leatherModel.ts';
import { answered } from '../../../src/core/report/check.ts';
import type { Verdict } from '../../../src/core/report/checkSchema.ts';
import { CHECKS } from '../../../src/core/report/checkTable.ts';
import { headline } from '../../../src/core/report/headline.ts';
import type { CheckId } from '../../../src/core/report/reportSchema.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { radians } from '../../../src/core/units/radians.ts';
import { contextOf, designOf, doubtful, fitted, shortBy } from './madeUp.ts';

const sized = designOf();

/** The headline of made-up fits, with these verdicts (and a value of 4.5 mm) and all else fitting. */
const said = (
  verdicts: Partial<Record<CheckId, Verdict>> = {},
  fits: Partial<Record<RangePoint, Partial<Fit>>> = {},
  design = sized,
): string => {
  const checks = CHECKS.map((row) => answered(row, { verdict: verdicts[row.id] ?? 'fits', message: '', value: 4.5 }));
  // Closes in Phi(2) = 0.977, over 0 in height in Phi(1) = 0.841: together 0.822.
  const doubt = doubtful(design, { closed: [2, 1], flat: [9, 1], height: [1, 1] });
  return headline(contextOf(fitted(design, fits), doubt), checks);
};

const CLOSES = 'Closes in 97 of 100 at 1.5 to 2 mm, fits in 82 of 100; ';

test('a cover that closes says in how many cases, over which leather, and its gaps at head and tail', () => {
  expect(said({}, { thin: { head: mm(2) }, thick: { tail: mm(1) } })).toBe(`${CLOSES}head and tail gap 1.0 to 2.0 mm.`);
  expect(said({}, { thin: { head: mm(0), tail: mm(0) } })).toBe(`${CLOSES}head and tail gap 0.0 to 1.5 mm.`);
  const one = designOf({ leather: { outside: { min_mm: 2, max_mm: 2 } } });
  expect(said({}, {}, one)).toBe('Closes in 97 of 100 at 2 mm, fits in 82 of 100; head and tail gap 1.5 mm.');
});

test('the largest overrun at head or tail is named', () => {
  expect(said({}, { thin: { tail: mm(-0.2) }, thick: { head: mm(-0.6) } })).toBe(
    `${CLOSES}head and tail overrun up to 0.6 mm.`,
  );
});

test('what fails, what is too loose and what is close follow in that order, without the row of all edges', () => {
  expect(
    said({
      pocketHolds: 'fails',
      seamMargin: 'fails',
      head: 'loose',
      tail: 'loose',
      foldStrain: 'tight',
      measures: 'tight',
      together: 'loose',
    }),
  ).toBe(
    `${CLOSES}head and tail gap 1.5 mm, but the pockets are too shallow, and the edge margin is too narrow` +
      '; too loose: head 4.5 mm, tail 4.5 mm; close to the limit: grain at the folds, agreement of the measures.',
  );
  // A row that shows in its figures is not named.
  expect(said({ head: 'fails', together: 'tight' })).toBe(`${CLOSES}head and tail gap 1.5 mm.`);
});

test('a cover that is too small says how short it is, and where the book stays open or the boards do not go in', () => {
  const fails = (fits: Partial<Record<RangePoint, Partial<Fit>>>) => said({ closes: 'fails' }, fits);
  expect(fails({ thick: shortBy(2) })).toBe(
    'Closes at 1.5 mm but not at 2 mm: the wrap is 2.0 mm short; the book stays open 29 degrees.',
  );
  expect(fails({ thin: shortBy(1), nominal: shortBy(1), thick: shortBy(2) })).toBe(
    'Does not close at 1.5 to 2 mm: the wrap is 2.0 mm short; the book stays open 29 degrees.',
  );
  expect(fails({ thick: { ...shortBy(9), staysOpen: null } })).toBe(
    'Does not go on at 2 mm: the wrap is 9.0 mm short; the boards do not go in.',
  );
  expect(fails({ thin: { ...shortBy(3), staysOpen: radians(1) }, thick: shortBy(2) })).toMatch(
    / not at 1\.5 mm: the wrap is 3\.0 mm short; the book stays open 58 degrees\.$/,
  );
});

test('a rise that was not measured is named with what is taken for it', () => {
  const book = { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5 };
  const estimated = designOf({ book: { ...book, spine: { shape: 'rounded' } } });
  // A third of a circle: 28 / 2 tan 30 degrees.
  expect(said({}, {}, estimated)).toMatch(/ mm\. The rise of the spine is not measured: 8\.1 mm is taken\.$/);
  expect(said({ closes: 'fails' }, { thick: shortBy(2) }, estimated)).toMatch(
    / degrees\. The rise of the spine is not/,
  );
});
