import { describe, expect, test } from 'vitest';
import { coverDesign, coverSupplies, coverWeight, designReport, printer } from '../../../src/core/index.ts';
import { customerSheet } from '../../../src/output/customerSheet/customerSheet.ts';
import { PLAIN_OFFER } from '../../../src/output/customerSheet/offer.ts';
import { type LeatherOption, leatherChoice } from '../../../src/output/leatherChoice/leatherChoice.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';

const option = (name: string, outside: object, rest: object = {}): LeatherOption => {
  const design = coverDesign(
    soundJob({
      format: 'coverwright-job',
      version: 3,
      book: { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5 },
      leather: { outside },
      rates: { currency: 'EUR', prices: { outside_per_dm2: 2 } },
      ...rest,
    }),
  );
  return { id: name, name, design, report: designReport(design) };
};
const say = printer('mm');
const thin = option('Calf', { min_mm: 1.2, max_mm: 1.4 });
const thick = option('Shoulder', { min_mm: 2.4, max_mm: 2.8, modulus_MPa: 120, density_kg_m3: 900 });

const cell = (choice: ReturnType<typeof leatherChoice>['maker'], row: string, id: string): string =>
  defined(defined(choice.columns.find((column) => column.id === id)).values[choice.rows.indexOf(row)]);

describe('leathers side by side', () => {
  const { maker, customer } = leatherChoice([thick, thin], say);

  test('show what each is cut to, its chances, its weight and its price, in the order given', () => {
    expect(maker.columns.map(({ name }) => name)).toEqual(['Shoulder', 'Calf']);
    const { width, height } = thick.design.pieces.outside;
    expect(cell(maker, 'Outside, as cut', 'Shoulder')).toBe(`${say.size(width)} × ${say.size(height)}`);
    expect(cell(maker, 'Weight of the cover', 'Shoulder')).toBe(`${Math.round(coverWeight(thick.design))} g`);
    expect(cell(maker, 'Opens', 'Calf')).toBe('flat');
    expect(cell(maker, 'Grain at the folds', 'Calf')).toMatch(/^stretches \d+ %, not tested$/);
    const area = coverSupplies(thin.design).areas.reduce((sum, { gross }) => sum + gross, 0);
    expect(cell(maker, 'Price of the leather', 'Calf')).toBe(say.money((2 * area) / 10_000, thin.design.job.rates));
    for (const { values } of maker.columns) expect(values.every((value) => value !== '')).toBe(true);
  });

  test('mark the one that fits most surely, and say in one sentence what another changes', () => {
    expect(maker.columns.filter(({ isChosen }) => isChosen)).toHaveLength(1);
    const chosen = defined(maker.columns.find(({ isChosen }) => isChosen));
    const other = chosen.id === 'Calf' ? 'Shoulder' : 'Calf';
    expect(maker.sentences).toHaveLength(2);
    expect(maker.sentences[1]).toMatch(
      new RegExp(
        `^${other} in its place: .*mm (more|less) width to cut, \\d+ g (heavier|lighter), EUR [\\d.]+ (dearer|cheaper)\\.$`,
      ),
    );
  });

  test('of one leather alone compare nothing, and alike ones differ in nothing that shows', () => {
    expect(leatherChoice([thin], say).maker.sentences).toEqual([]);
    const twin = { ...thin, id: 'twin', name: 'Twin' };
    expect(leatherChoice([thin, twin], say).maker.sentences).toEqual([
      'All fit as surely.',
      'Twin in its place: no difference that shows.',
    ]);
  });

  test('tell a customer what is seen, held and paid, on the page that is printed for the cover', () => {
    expect(customer.rows).toEqual([
      'Fits',
      'Opens',
      'Thickness in the hand',
      'Weight of the cover',
      'Stiffness of the cover',
      'Price of the leather',
    ]);
    // E t^3 beside that of the surest.
    const [calf, shoulder] = ['Calf', 'Shoulder'].map((id) => cell(customer, 'Stiffness of the cover', id));
    const ratio = 2 * (2.6 / 1.3) ** 3;
    expect([calf, shoulder]).toEqual(
      defined(customer.columns.find(({ isChosen }) => isChosen)).id === 'Calf'
        ? ['100 %', say.share(ratio)]
        : [say.share(1 / ratio), '100 %'],
    );
    const sheet = customerSheet(thin.design, thin.report, PLAIN_OFFER, customer);
    expect(sheet.weights).toBe(customer);
  });

  test('without a price for every leather give none', () => {
    const unpriced = option('Scrap', { min_mm: 1.2, max_mm: 1.4 }, { rates: {} });
    expect(leatherChoice([unpriced], say).maker.rows).not.toContain('Price of the leather');
    expect(cell(leatherChoice([thin, unpriced], say).maker, 'Price of the leather', 'Scrap')).toBe('not priced');
  });
});

test('the weight of a cover is area by thickness by density, each leather by its own', () => {
  const { design } = option('x', { min_mm: 2, max_mm: 2, density_kg_m3: 1000 });
  const [first] = coverSupplies(design).areas;
  // 1 g for each 1,000 mm3.
  expect(coverWeight(design)).toBeCloseTo((defined(first).net * 2) / 1000, 6);
  const lined = option(
    'y',
    { min_mm: 2, max_mm: 2, density_kg_m3: 1000 },
    {
      leather: {
        outside: { min_mm: 2, max_mm: 2, density_kg_m3: 1000 },
        lining: { min_mm: 0.5, max_mm: 0.7, density_kg_m3: 800 },
      },
    },
  ).design;
  const lining = defined(coverSupplies(lined).areas.find(({ leather }) => leather === 'lining'));
  const rest = defined(coverSupplies(lined).areas.find(({ leather }) => leather === 'outside'));
  expect(coverWeight(lined)).toBeCloseTo((rest.net * 2) / 1000 + (lining.net * 0.6 * 0.8) / 1000, 6);
  // 1 lb is 453.59237 g exactly.
  expect([printer('in').mass(453.59237), printer('mm').mass(453.59237)]).toEqual(['1.00 lb', '454 g']);
});
