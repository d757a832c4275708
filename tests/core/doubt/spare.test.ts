import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDoubt, type Quantity } from '../../../src/core/doubt/coverDoubt.ts';
import { CutChances, chanceOf, type Doubted, doubted, loosestOf, spareOf } from '../../../src/core/doubt/spare.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { jobWith } from './jobWith.ts';

/** Phi(1), Phi(2), Phi(0.5): tables of the normal distribution. */
const [PHI1, PHI2, PHI_HALF] = [0.8413447, 0.9772499, 0.6914625];

/** A cover with two inputs of doubt 2 and 3, of covariance 1.5: the first bears on the wrap, the second on the change of size. */
const made = () => {
  const none = {
    closed: 0,
    flat: 0,
    height: 0,
    seat: 0,
    board: 0,
    widthChange: 0,
    heightChange: 0,
    widthAdds: 0,
    heightAdds: 0,
  };
  const of = (list: Partial<Record<Quantity, number>>): Record<Quantity, number> => ({ wrap: 0, ...none, ...list });
  const first = of({ closed: 2, flat: 1, height: 0.5, widthAdds: 1 });
  const second = of({ widthChange: 0.01, heightChange: 0.02, heightAdds: -1 });
  const names = Object.keys(first) as Quantity[];
  const slopes = Object.fromEntries(names.map((name) => [name, [first[name], second[name]]])) as unknown as Record<
    Quantity,
    readonly number[]
  >;
  const covariance = [
    [4, 1.5],
    [1.5, 9],
  ];
  const means = of({
    closed: 380,
    flat: 370,
    height: 260,
    widthChange: -0.01,
    heightChange: 0.02,
    widthAdds: 0.5,
    heightAdds: 0.25,
  });
  return { inputs: [], covariance, means, slopes };
};

describe('spare room', () => {
  test('is the size once made less what is needed, with the doubt of both', () => {
    const { closed, flat, height } = spareOf(made(), { width: 400, height: 250 });
    expect(closed.mean).toBeCloseTo(400 * 0.99 + 0.5 - 380, 9);
    expect(flat.mean).toBeCloseTo(400 * 0.99 + 0.5 - 370, 9);
    expect(height.mean).toBeCloseTo(250 * 1.02 + 0.25 - 260, 9);
    // d closed = 1 - 2 by the first input, 400 x 0.01 by the second.
    expect(closed.slopes).toEqual([-1, 4]);
    expect(closed.u).toBeCloseTo(Math.sqrt(4 + 16 * 9 - 2 * 4 * 1.5), 9);
    expect(flat.slopes).toEqual([0, 4]);
    expect(flat.u).toBeCloseTo(12, 9);
    // d height = -0.5, and 250 x 0.02 - 1.
    expect(height.slopes).toEqual([-0.5, 4]);
    expect(height.u).toBeCloseTo(Math.sqrt(1 + 144 - 2 * 2 * 1.5), 9);
  });

  test('of a weighted sum has its constant, and no doubt below 0 by rounding', () => {
    const sum = doubted(made(), { closed: 1, flat: -2 }, 7);
    expect(sum).toEqual({ mean: 380 - 740 + 7, u: 0, slopes: [0, 0] });
    const covariance = [
      [1, 1],
      [1, 1 - 1e-15],
    ];
    expect(doubted({ ...made(), covariance }, { closed: 0.5, widthChange: -100 }).u).toBe(0);
    expect(doubted(made(), { closed: 1 }).mean).toBe(380);
  });
});

test('the chance that a length is not negative is that of its normal distribution; without doubt it is 0 or 1', () => {
  expect(chanceOf({ mean: 2, u: 2 })).toBeCloseTo(PHI1, 6);
  expect(chanceOf({ mean: -1, u: 2 })).toBeCloseTo(1 - PHI_HALF, 6);
  expect([1, 0, -1e-10, -1e-8].map((mean) => chanceOf({ mean, u: 0 }))).toEqual([1, 1, 1, 0]);
});

test('the loosest gaps are those of both fore-edges, and of head and tail as they share the height', () => {
  const loosest = { foreEdge_mm: mm(3), head_mm: mm(4), tail_mm: mm(2.5) };
  const job = { ...jobWith(), loosest };
  expect(loosestOf(job, 0)).toEqual({ wrap: 6, height: 5 });
  // The head takes 2 mm more than the tail, or 3 less.
  expect(loosestOf(job, 1)).toEqual({ wrap: 6, height: 6 });
  expect(loosestOf(job, -1.5)).toEqual({ wrap: 6, height: 2 });
  expect(loosestOf(job, 5)).toEqual({ wrap: 6, height: 0 });
});

describe('the chances of a cut', () => {
  const length = (mean: number, u: number, input: number): Doubted => ({
    mean,
    u,
    slopes: [0, 0, 0].with(input, u),
  });
  const unit = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  /** Independent lengths: closed 1 +- 1 with 3 at most, flat 4 +- 2, height 2 +- 2 with 4 at most. */
  const chances = new CutChances(
    { covariance: unit },
    { closed: length(1, 1, 0), flat: length(4, 2, 1), height: length(2, 2, 2) },
    { wrap: 3, height: 4 },
  );
  const closed = PHI1 - (1 - PHI2);
  const height = PHI1 - (1 - PHI1);

  test('of independent lengths are products', () => {
    expect(chances.fits()).toBeCloseTo(closed * PHI2 * height, 6);
    expect(chances.fits('width')).toBeCloseTo(closed * PHI2, 6);
    expect(chances.fits('height')).toBeCloseTo(height, 6);
    expect(chances.goesOn()).toBeCloseTo(PHI1 * PHI2 * PHI1, 6);
    // Closed under 3 and height under 4; flat has no upper bound.
    expect(chances.loose()).toBeCloseTo(1 - PHI2 * PHI1, 6);
    expect(chances.fits()).toBe(chances.fits());
  });

  test('of lengths that one input moves alike are that of the least', () => {
    const one = (mean: number): Doubted => ({ mean, u: 1, slopes: [1] });
    const alike = new CutChances(
      { covariance: [[1]] },
      { closed: one(2), flat: one(1), height: one(3) },
      { wrap: 100, height: 100 },
    );
    expect(alike.goesOn()).toBeCloseTo(PHI1, 4);
  });

  test('without doubt are 0 or 1, and not decided by the noise of a sum', () => {
    const at = (spare: number, high: number) =>
      new CutChances(
        { covariance: unit },
        { closed: length(spare, 0, 0), flat: length(spare, 0, 1), height: length(high, 0, 2) },
        { wrap: 3, height: 4 },
      );
    expect([0, -1e-10, 3, 3 + 1e-10].map((spare) => at(spare, 1).fits())).toEqual([1, 1, 1, 1]);
    expect([-1e-8, 3 + 1e-8].map((spare) => at(spare, 1).fits())).toEqual([0, 0]);
    expect([at(1, 4 + 1e-10).loose(), at(1, 4 + 1e-8).loose()]).toEqual([0, 1]);
  });
});

test('less doubt of an input never lowers the chance of closing of a cover that closes at its mean', () => {
  let [closing, surer] = [0, 0];
  checkLaw(
    fc.property(
      jobDocument,
      fc.record({
        at: fc.nat(),
        by: fc.integer({ min: 0, max: 99 }).map((percent) => percent / 100),
        more: fc.integer({ min: -200, max: 600 }).map((hundredths) => hundredths / 100),
      }),
      (drawn, { at, by, more }) => {
        const job = soundJob(drawn);
        const doubt = coverDoubt(job);
        const cut = { width: (doubt.means.closed + more) / (1 + doubt.means.widthChange), height: doubt.means.height };
        const before = spareOf(doubt, cut).closed;
        if (before.mean < 0) return;
        closing++;
        const input = at % doubt.inputs.length;
        const factor = (i: number): number => (i === input ? by : 1);
        const covariance = doubt.covariance.map((row, i) => row.map((c, k) => c * factor(i) * factor(k)));
        const after = spareOf({ ...doubt, covariance }, cut).closed;
        expect(chanceOf(after)).toBeGreaterThanOrEqual(chanceOf(before) - 1e-12);
        if (chanceOf(after) > chanceOf(before)) surer++;
      },
    ),
    { cost: 0.2 },
  );
  expect(closing).toBeGreaterThan(500);
  expect(surer).toBeGreaterThan(200);
});
