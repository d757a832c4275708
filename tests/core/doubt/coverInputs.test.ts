import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDoubt } from '../../../src/core/doubt/coverDoubt.ts';
import { coverInputs, truthAt, truthMoved } from '../../../src/core/doubt/coverInputs.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { defined } from '../../defined.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';
import { jobWith } from './jobWith.ts';

const pathsOf = (job: Job): string[] => coverInputs(job).map(({ path }) => path);

/** The truth of a job with one input moved to a value. */
function moved(job: Job, path: string, value: number) {
  const inputs = coverInputs(job);
  expect(pathsOf(job)).toContain(path);
  return truthAt(
    job,
    inputs,
    inputs.map((each) => (each.path === path ? value : each.value)),
  );
}

describe('the inputs of a cover', () => {
  test('at their own values are the job itself', () => {
    checkLaw(
      fc.property(jobDocument, (document) => {
        const job = soundJob(document);
        const inputs = coverInputs(job);
        const truth = truthAt(
          job,
          inputs,
          inputs.map(({ value }) => value),
        );
        expect(truth.book).toBe(job.book);
        expect(truth.leather).toBe(job.leather);
        expect(truth).toMatchObject({ heightChange: 0, widthChange: 0, width: 0, height: 0 });
      }),
    );
  });

  test('moved one at a time give the truth with that one at its value and the others at theirs', () => {
    checkLaw(
      fc.property(jobDocument, fc.constantFrom(-3, -0.2, 0, 0.2, 30), (document, by) => {
        const job = soundJob(document);
        const inputs = coverInputs(job);
        const at = inputs.map(({ value }) => value);
        for (const [i, input] of inputs.entries())
          expect(truthMoved(job, input, input.value + by)).toEqual(truthAt(job, inputs, at.with(i, input.value + by)));
      }),
    );
  });

  test('of a parallel book have one thickness, which is both; of a wedge two', () => {
    const parallel = jobWith();
    expect(pathsOf(parallel)).not.toContain('book.foreEdgeThickness_mm');
    expect(moved(parallel, 'book.thickness_mm', 30).book).toMatchObject({ thickness_mm: 30, foreEdgeThickness_mm: 30 });
    const wedge = jobWith({ book: { foreEdgeThickness_mm: 24 } });
    expect(moved(wedge, 'book.thickness_mm', 30).book).toMatchObject({ thickness_mm: 30, foreEdgeThickness_mm: 24 });
    expect(moved(wedge, 'book.foreEdgeThickness_mm', 25).book).toMatchObject({
      thickness_mm: 28,
      foreEdgeThickness_mm: 25,
    });
  });

  test('have one leather where pocket and outside are the same, and two where they are not', () => {
    const one = jobWith();
    expect(pathsOf(one)).not.toContain('leather.pocket');
    expect(pathsOf(one)).not.toContain('leather.pocket.bendRatio');
    const thick = moved(one, 'leather.outside', 1.9).leather;
    expect([thick.outside, thick.pocket].map(({ min_mm, max_mm }) => [min_mm, max_mm])).toEqual([
      [1.9, 1.9],
      [1.9, 1.9],
    ]);
    expect(moved(one, 'leather.outside.bendRatio', 0.3).leather.pocket.bendRatio).toBe(0.3);
    // Worked by themselves: K of the pocket is another fold.
    expect(moved(one, 'leather.outside.neutral', 0.5).leather.pocket.neutral).not.toBe(0.5);

    const two = jobWith({ leather: { pocket: { min_mm: 1, max_mm: 1.2 } } });
    expect(moved(two, 'leather.outside', 1.9).leather.pocket).toMatchObject({ min_mm: 1, max_mm: 1.2 });
    expect(moved(two, 'leather.pocket', 1.1).leather.outside).toMatchObject({ min_mm: 1.5, max_mm: 2 });
    expect(moved(two, 'leather.pocket.bendRatio', 0.3).leather.outside.bendRatio).not.toBe(0.3);

    const folded = jobWith({ leather: { pocket: { min_mm: 1.5, max_mm: 2, bendRatio: 0.5 } } });
    expect(pathsOf(folded)).not.toContain('leather.pocket');
    expect(pathsOf(folded)).toContain('leather.pocket.bendRatio');
  });

  test('of turned ends have one leather whatever the pocket says, and no margin at the fore-edge', () => {
    const turned = jobWith({
      leather: { pocket: { min_mm: 1, max_mm: 1.2, bendRatio: 0.5 } },
      pockets: { construction: 'turned' },
    });
    expect(pathsOf(turned).filter((path) => path.startsWith('leather.pocket'))).toEqual([]);
    expect(pathsOf(turned).filter((path) => path === 'seam.edgeMargin_mm')).toHaveLength(1);
    expect(pathsOf(jobWith()).filter((path) => path === 'seam.edgeMargin_mm')).toHaveLength(2);
    expect(moved(turned, 'leather.outside.neutral', 0.5).leather.pocket.neutral).toBe(0.5);
    expect(moved(turned, 'seam.edgeMargin_mm', 0.2)).toMatchObject({ width: 0, height: -Math.SQRT2 * 0.2 });
  });

  test('are there only where the book or the cover has them', () => {
    const plain = pathsOf(jobWith());
    for (const path of [
      'book.spine.rise_mm',
      'book.cornerRadius_mm',
      'book.measured.openFlatWidth_mm',
      'leather.lining',
      'leather.outside.foldThickness_mm',
    ])
      expect(plain).not.toContain(path);
    const full = pathsOf(
      jobWith({
        book: { spine: { shape: 'rounded', rise_mm: 5 }, cornerRadius_mm: 1, measured: { openFlatWidth_mm: 345 } },
        leather: {
          outside: { min_mm: 1.5, max_mm: 2, foldThickness_mm: 1 },
          lining: { min_mm: 1, max_mm: 1, foldThickness_mm: 0.6 },
        },
      }),
    );
    for (const path of [
      'book.spine.rise_mm',
      'book.cornerRadius_mm',
      'book.measured.openFlatWidth_mm',
      'leather.lining',
      'leather.lining.foldThickness_mm',
      'leather.outside.foldThickness_mm',
    ])
      expect(full).toContain(path);
    // The open width takes the place of the dip.
    expect(full).not.toContain('book.jointDip_mm');
    expect(plain).toContain('book.jointDip_mm');
  });

  test('move cut and punched edges: two margins of an edge pair are sqrt 2 of one', () => {
    expect(moved(jobWith(), 'pattern.outsideWidth_mm', 0.3)).toMatchObject({ width: 0.3, height: 0 });
    expect(moved(jobWith(), 'pattern.outsideHeight_mm', 0.3)).toMatchObject({ width: 0, height: 0.3 });
    const both = moved(jobWith(), 'seam.edgeMargin_mm', 0.2);
    expect(both.width).toBeCloseTo(-Math.SQRT2 * 0.2, 12);
    expect(both.height).toBeCloseTo(-Math.SQRT2 * 0.2, 12);
    expect(moved(jobWith(), 'making.changeAcross', 0.01)).toMatchObject({ widthChange: 0.01, heightChange: 0 });
  });

  /** A book, leathers and cover with every input. */
  const everything = jobWith({
    book: {
      foreEdgeThickness_mm: 26,
      boardThickness_mm: 2.5,
      cornerRadius_mm: 1,
      pageGive: 0.05,
      spine: { shape: 'rounded', rise_mm: 5 },
      measured: { openFlatWidth_mm: 345 },
    },
    leather: {
      outside: { min_mm: 1.5, max_mm: 2, foldThickness_mm: 1 },
      pocket: { min_mm: 1.5, max_mm: 1.8, bendRatio: 0.5 },
      lining: { min_mm: 0.9, max_mm: 1.1, foldThickness_mm: 0.6 },
    },
  });
  /** Every value of a truth by its path. */
  const leaves = (value: unknown, path = ''): [string, unknown][] =>
    typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([key, each]) => leaves(each, path === '' ? key : `${path}.${key}`))
      : [[path, value]];
  /** What a moved input changes in the truth. */
  const changed = (job: Job, path: string, value: number): Record<string, unknown> => {
    const inputs = coverInputs(job);
    const still = Object.fromEntries(
      leaves(
        truthAt(
          job,
          inputs,
          inputs.map((each) => each.value),
        ),
      ),
    );
    return Object.fromEntries(leaves(moved(job, path, value)).filter(([key, each]) => each !== still[key]));
  };

  test('change what they are of, and nothing else', () => {
    for (const [path, value] of [
      ['book.width_mm', 166],
      ['book.height_mm', 241],
      ['book.thickness_mm', 29],
      ['book.foreEdgeThickness_mm', 25],
      ['book.boardThickness_mm', 2.6],
      ['book.spine.rise_mm', 6],
      ['book.cornerRadius_mm', 2],
      ['book.measured.openFlatWidth_mm', 347],
      ['book.pageGive', 0.1],
      ['leather.outside.foldThickness_mm', 1.2],
      ['leather.outside.neutral', 0.5],
      ['leather.outside.bendRatio', 0.3],
      ['leather.pocket.bendRatio', 0.4],
      ['leather.lining.foldThickness_mm', 0.7],
    ] as const)
      expect(changed(everything, path, value), path).toEqual({ [path]: value });
    for (const leather of ['outside', 'pocket', 'lining'])
      expect(changed(everything, `leather.${leather}`, 1.6), leather).toEqual({
        [`leather.${leather}.min_mm`]: 1.6,
        [`leather.${leather}.max_mm`]: 1.6,
      });
    expect(changed(everything, 'making.changeAlong', 0.01)).toEqual({ heightChange: 0.01 });
    expect(changed(everything, 'making.changeAcross', 0.01)).toEqual({ widthChange: 0.01 });
    expect(changed(jobWith({ book: { jointDip_mm: 1 } }), 'book.jointDip_mm', 2)).toEqual({ 'book.jointDip_mm': 2 });
  });

  test('of a leather have the middle of its range', () => {
    const value = (path: string) => defined(coverInputs(everything).find((each) => each.path === path)).value;
    expect(['outside', 'pocket', 'lining'].map((leather) => value(`leather.${leather}`))).toEqual([1.75, 1.65, 1]);
  });

  test('stop at the least that there can be', () => {
    for (const [path, value, least] of [
      ['book.boardThickness_mm', -1, 0.1],
      ['book.cornerRadius_mm', -1, 0],
      ['book.spine.rise_mm', -1, 0],
      ['book.pageGive', -1, 0],
      ['book.pageGive', 2, 0.9],
      ['leather.outside.foldThickness_mm', -1, 0.2],
      ['leather.outside.bendRatio', -1, 0.02],
      ['leather.pocket.bendRatio', -1, 0.02],
      ['leather.lining.foldThickness_mm', -1, 0.2],
    ] as const)
      expect(changed(everything, path, value), path).toEqual({ [path]: least });
    expect(changed(jobWith({ book: { jointDip_mm: 1 } }), 'book.jointDip_mm', -1)).toEqual({ 'book.jointDip_mm': 0 });
    expect(moved(everything, 'leather.lining', -1).leather.lining).toMatchObject({ min_mm: 0.2, max_mm: 0.2 });
    // Two boards go into the thinner edge of a wedge.
    const wedge = jobWith({ book: { boardThickness_mm: 1.5, foreEdgeThickness_mm: 4 } });
    expect(changed(wedge, 'book.boardThickness_mm', 3)).toEqual({ 'book.boardThickness_mm': 0.49 * 4 });
  });

  test('are two leathers where one end of their ranges differs', () => {
    for (const pocket of [
      { min_mm: 1.5, max_mm: 1.8 },
      { min_mm: 1.2, max_mm: 2 },
    ])
      expect(pathsOf(jobWith({ leather: { pocket } }))).toContain('leather.pocket');
    expect(pathsOf(jobWith({ leather: { lining: { min_mm: 1, max_mm: 1 } } }))).not.toContain(
      'leather.lining.foldThickness_mm',
    );
  });

  test('of an estimated rise follow the thickness', () => {
    const job = jobWith({ book: { spine: { shape: 'rounded' } } });
    // T / 2 tan 30 degrees.
    const rise = (thickness: number): number => (thickness / 2) * Math.tan(Math.PI / 6);
    expect(moved(job, 'book.spine.rise_mm', 1).book.spine.rise_mm).toBeCloseTo(rise(28) + 1, 9);
    const inputs = coverInputs(job);
    const both = inputs.map(({ path, value }) =>
      path === 'book.thickness_mm' ? 30 : path === 'book.spine.rise_mm' ? -2 : value,
    );
    expect(truthAt(job, inputs, both).book.spine.rise_mm).toBeCloseTo(rise(30) - 2, 9);
  });

  test('never give a book or leather that cannot be', () => {
    checkLaw(
      fc.property(
        jobDocument,
        fc.array(fc.integer({ min: -8, max: 8 }), { minLength: 30, maxLength: 30 }),
        (document, z) => {
          const job = soundJob(document);
          const inputs = coverInputs(job);
          const { book, leather } = truthAt(
            job,
            inputs,
            inputs.map(({ value, u }, i) => value + nth(z, i) * u),
          );
          const thinnest = Math.min(book.thickness_mm, book.foreEdgeThickness_mm);
          expect(thinnest).toBeGreaterThan(0);
          expect(2 * book.boardThickness_mm).toBeLessThan(thinnest);
          expect(book.boardThickness_mm).toBeGreaterThan(0);
          expect(book.spine.rise_mm ?? 0).toBeLessThanOrEqual(book.thickness_mm / 2);
          expect(book.cornerRadius_mm).toBeLessThanOrEqual(book.thickness_mm / 2);
          expect(book.pageGive).toBeLessThan(1);
          for (const piece of [leather.outside, leather.pocket]) {
            expect(piece.min_mm).toBeGreaterThan(0);
            expect(piece.bendRatio).toBeGreaterThan(0);
          }
        },
      ),
    );
  });
});

describe('the scale of a tool', () => {
  const scaleOf = (job: Job, tool = 'ruler A') =>
    defined(coverInputs(job).find(({ path }) => path === `scale of ${tool}`));

  test('is off by 1 mm in 1 m, not at all where measures count as exact', () => {
    expect(scaleOf(jobWith())).toMatchObject({ value: 0, u: 0.001, distribution: 'normal', from: 'assumed' });
    expect(scaleOf(jobWith({ book: { measured: { error_mm: 0.25 } } })).u).toBe(0.0005);
    expect(scaleOf(jobWith({ book: { measured: { error_mm: 2 } } })).u).toBe(0.001);
    expect(scaleOf(jobWith({ book: { measured: { error_mm: 0 } } })).u).toBe(0);
  });

  test('stretches every length by the tool, and none by another', () => {
    const { book } = moved(jobWith(), 'scale of ruler A', 0.01);
    expect([book.width_mm, book.height_mm, book.thickness_mm, book.foreEdgeThickness_mm].map((x) => x / 1.01)).toEqual(
      [165, 240, 28, 28].map((x) => expect.closeTo(x, 9)),
    );
    expect(book.boardThickness_mm).toBe(2.5);
    const other = jobWith({
      doubts: { 'book.height_mm': { with: 'tape B' }, 'book.boardThickness_mm': { with: 'ruler A' } },
    });
    expect(moved(other, 'scale of ruler A', 0.01).book).toMatchObject({
      height_mm: 240,
      width_mm: expect.closeTo(166.65, 9),
      boardThickness_mm: expect.closeTo(2.525, 9),
    });
    expect(moved(other, 'scale of tape B', 0.01).book).toMatchObject({
      height_mm: expect.closeTo(242.4, 9),
      width_mm: 165,
    });
  });

  test('of nothing is no input', () => {
    const none = Object.fromEntries(
      ['width_mm', 'height_mm', 'thickness_mm', 'measured.closedWrap_mm', 'measured.rolledHalf_mm'].map((key) => [
        `book.${key}`,
        { with: '' },
      ]),
    );
    expect(pathsOf(jobWith({ doubts: none })).filter((path) => path.startsWith('scale'))).toEqual([]);
  });

  test('moves a need by what the lengths that the tool measured move it, each by its own size', () => {
    const job = jobWith({ book: { foreEdgeThickness_mm: 26 } });
    const { inputs, slopes } = coverDoubt(job);
    const at = (path: string): number => inputs.findIndex((each) => each.path === path);
    for (const quantity of ['closed', 'height', 'wrap'] as const) {
      const slope = (path: string): number => nth(slopes[quantity], at(path));
      const sum = (['width_mm', 'height_mm', 'thickness_mm', 'foreEdgeThickness_mm'] as const).reduce(
        (all, key) => all + job.book[key] * slope(`book.${key}`),
        0,
      );
      expect(slope('scale of ruler A')).toBeCloseTo(sum, 1);
    }
    // 2 W + T of a flat back.
    const plain = coverDoubt(jobWith());
    const scale = plain.inputs.findIndex(({ path }) => path === 'scale of ruler A');
    expect(nth(plain.slopes.closed, scale)).toBeCloseTo(2 * 165 + 28, 6);
    expect(nth(plain.slopes.height, scale)).toBeCloseTo(240, 6);
  });

  test('stretches the width of the open book, and each thickness of a wedge by itself', () => {
    const job = jobWith({
      book: { foreEdgeThickness_mm: 26, measured: { openFlatWidth_mm: 345 } },
      doubts: {
        'book.measured.openFlatWidth_mm': { with: 'tape B' },
        'book.foreEdgeThickness_mm': { with: 'callipers C' },
      },
    });
    expect(moved(job, 'scale of tape B', 0.01).book.measured.openFlatWidth_mm).toBeCloseTo(345 * 1.01, 9);
    expect(moved(job, 'scale of tape B', 0.01).book.width_mm).toBe(165);
    expect(moved(job, 'scale of ruler A', 0.01).book).toMatchObject({
      thickness_mm: expect.closeTo(28.28, 9),
      foreEdgeThickness_mm: 26,
      measured: { openFlatWidth_mm: 345 },
    });
    expect(moved(job, 'scale of callipers C', 0.01).book).toMatchObject({
      thickness_mm: 28,
      foreEdgeThickness_mm: expect.closeTo(26.26, 9),
    });
  });

  test('is no input for a tool that took no length of the book', () => {
    const job = jobWith({ doubts: { 'leather.outside': { with: 'gauge D' } } });
    expect(pathsOf(job)).not.toContain('scale of gauge D');
  });

  test('is an input too where the tool took nothing but a strip round the book', () => {
    const job = jobWith({
      book: { measured: { closedWrap_mm: 358 } },
      doubts: { 'book.measured.closedWrap_mm': { with: 'tape B' } },
    });
    expect(scaleOf(job, 'tape B').u).toBe(0.001);
    expect(moved(job, 'scale of tape B', 0.01).book).toEqual(job.book);
  });
});

test('nothing that is judged depends on friction, which therefore is no input', () => {
  checkLaw(
    fc.property(jobDocument, fc.constantFrom(0, 0.15, 1.5), (document, friction) => {
      const job = soundJob(document);
      const { outside, pocket, lining } = job.leather;
      const rough = {
        ...job,
        leather: {
          outside: { ...outside, friction },
          pocket: { ...pocket, friction },
          lining: lining && { ...lining, friction },
        },
      };
      const [{ doubt, fits, fitDoubt }, other] = [coverDesign(job), coverDesign(rough)];
      expect([other.doubt.means, other.doubt.slopes, other.fits]).toEqual([doubt.means, doubt.slopes, fits]);
      expect([other.fitDoubt.spare, other.fitDoubt.gaps]).toEqual([fitDoubt.spare, fitDoubt.gaps]);
      expect([other.fitDoubt.held, other.fitDoubt.loading]).toEqual([fitDoubt.held, fitDoubt.loading]);
    }),
  );
});
