import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../../src/core/fold/coverDesign.ts';
import { createElasticSolvers, elasticFit } from '../../../../src/core/fold/elastic/elasticFit.ts';
import { pressedCrease } from '../../../../src/core/fold/elastic/pressedCrease.ts';
import { sectionInputAt } from '../../../../src/core/fold/elastic/sectionInputAt.ts';
import { solveSection } from '../../../../src/core/fold/elastic/solveSection.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import { soundJob } from '../../../jobArbitrary.ts';
import { nth } from '../../../nth.ts';

const solvers = createElasticSolvers();
const designs = EXAMPLE_JOBS.map(({ id, document }) => ({ id, design: coverDesign(soundJob(document)) }));

/** Places between neighbouring angles that turn. */
const turning = (angles: Float64Array): number[] =>
  Array.from(angles.subarray(1), (angle, i) => angle - nth([...angles], i)).flatMap((turn, i) =>
    turn > 1e-12 ? [i] : [],
  );

describe('the shape that a crease is set to', () => {
  test('turns by half a circle in two folds of inside radius bendRatio t, as far apart as the book is thick', () => {
    const { design } = nth(designs, 0);
    const input = sectionInputAt(design, 'thick', 0);
    const angles = pressedCrease(design, 'thick', 0);
    expect(nth([...angles], angles.length - 1) - nth([...angles], 0)).toBeCloseTo(Math.PI, 9);
    // From the held places, shifted to the fore-edge by the shared spare wrap: two boards, the back, two folds.
    const { book, leathers } = design.needs.thick;
    const t = leathers.outside.thickness;
    const onPath = 2 * book.width + book.thickness + (Math.PI * t) / 2;
    const step = (onPath + design.fits.thick.closedSlack - input.held.front - input.held.back) / (angles.length - 1);
    const places = turning(angles);
    const second = places.findIndex((place, i) => i > 0 && place - nth(places, i - 1) > 1);
    // Within a step at either end of a fold.
    const fold = (Math.PI / 2) * (leathers.outside.bendRatio * t + t / 2);
    expect(Math.abs(second * step - fold)).toBeLessThan(2 * step);
    const apart = (nth(places, second) - nth(places, 0)) * step;
    expect(Math.abs(apart - (book.thickness + (Math.PI / 4) * t))).toBeLessThan(2 * step);
    // Symmetric, as the spare wrap is shared evenly.
    expect(Math.abs(nth(places, 0) - (angles.length - 2 - nth(places, places.length - 1)))).toBeLessThanOrEqual(1);
  });

  test('follows a rounded back, and turns no sharper than the book where its edges are rounder than the fold', () => {
    const { design } = nth(designs, 1);
    const angles = pressedCrease(design, 'nominal', 0);
    const turns = angles.length - 1 - turning(angles).length;
    expect(turns).toBeLessThan(angles.length - 100);
    const round = coverDesign(
      soundJob({
        ...nth(EXAMPLE_JOBS, 0).document,
        book: { ...soundJob(nth(EXAMPLE_JOBS, 0).document).book, cornerRadius_mm: 6 },
      }),
    );
    expect(turning(pressedCrease(round, 'thick', 0)).length).toBeGreaterThan(
      2 * turning(pressedCrease(nth(designs, 0).design, 'thick', 0)).length,
    );
  });

  test('is at rest round the closed book when all of it has stayed: no moment, whatever the stiffness', () => {
    for (const { design } of designs) {
      const at = (set: number) =>
        solveSection(
          sectionInputAt(design, 'thick', 0, { angles: pressedCrease(design, 'thick', 0), set }),
          solvers.section,
        );
      expect(at(0.99).status).toBe('converged');
      expect(Math.abs(at(0.99).moment)).toBeLessThan(0.03 * at(0).moment);
    }
  });

  test('sits where the boards sit: to one side with all of the spare wrap at the other', () => {
    const places = (seating: 'front' | 'back' | 'centred' | 'spine') =>
      turning(pressedCrease(coverDesign(soundJob({ ...nth(EXAMPLE_JOBS, 0).document, seating })), 'thin', 0));
    expect(nth(places('back'), 0)).toBeGreaterThan(nth(places('centred'), 0));
    expect(nth(places('front'), 0)).toBeLessThan(nth(places('centred'), 0));
    expect(places('spine')).toEqual(places('centred'));
  });
});

test('leather creased badly has its least opening where it is softest, and its most where it is stiffest', () => {
  const job = soundJob(nth(EXAMPLE_JOBS, 0).document);
  const outside = { ...job.leather.outside, creaseSet: 0.4 };
  const { creased } = elasticFit(coverDesign({ ...job, leather: { ...job.leather, outside } }), 'thick', solvers).rest;
  expect(creased.opening).toBeGreaterThan(1);
  expect(creased.least.opening).toBeLessThan(creased.opening - 0.5);
  expect(creased.least.force).toBeLessThan(creased.force / 3);
  expect(creased.most.force).toBeGreaterThan(3 * creased.force);
});

describe('the demo books, creased', () => {
  // Computed apart from this code with the same solver, set 0.8, thick end: 0, 0 and 14.5 degrees, 0, 0 and 0.16 N.
  test.each([
    ['tide-ledger', 0, 0],
    ['choir-book', 0, 0],
    ['shore-guide', 14.5, 0.16],
  ] as const)('stay shut or nearly so: %s rests at %f degrees and is held by %f N', (id, degrees, newtons) => {
    const design = designs.find((each) => each.id === id)!.design;
    const { creased, pressedDay } = elasticFit(design, 'thick', solvers).rest;
    // A day under weights takes at least half of what a badly creased, stiff cover opens, and of the force that holds it.
    expect(pressedDay.most.opening).toBeLessThan(0.5 * creased.most.opening);
    expect(pressedDay.most.force).toBeLessThan(0.5 * creased.most.force);
    expect(Math.abs((creased.opening * 180) / Math.PI - degrees)).toBeLessThan(1.5);
    expect(Math.abs(creased.force - newtons)).toBeLessThan(0.03);
    expect(creased.least.opening).toBe(0);
    // Over stiffness and set one book may rest anywhere from shut to half open.
    expect((creased.most.opening * 180) / Math.PI).toBeGreaterThan(85);
  });
});
