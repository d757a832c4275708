import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { MAKING_STATES } from '../../../src/core/job/makingSchema.ts';
import { OPTIONAL_STEPS } from '../../../src/core/job/orderSchema.ts';
import { isStepTaken } from '../../../src/core/job/stepTaken.ts';
import { coverSupplies } from '../../../src/core/materials/coverSupplies.ts';
import { quote } from '../../../src/core/materials/quote.ts';
import { type WorkStep, workSteps } from '../../../src/core/materials/workSteps.ts';
import { defined } from '../../defined.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';

const { document: ledger } = nth(EXAMPLE_JOBS, 0);
const lining = { leather: { ...(ledger.leather as object), lining: { min_mm: 0.6, max_mm: 0.8 } } };
const tooled = { tooling: { designs: [{ kind: 'border', area: 'front' }] } };

const stepsOf = (document: object): readonly WorkStep[] => {
  const job = soundJob(document);
  return workSteps(job, coverSupplies(coverDesign(job)));
};
const ids = (change: object): readonly string[] => stepsOf({ ...ledger, ...change }).map(({ id }) => id);

/** The steps before any could be chosen, written down from that version. */
const OF_BEFORE = ['measure', 'mockup', 'cut', 'edges', 'punch', 'assemble', 'lace', 'finish'];

/** Orders of work that a job with cement, separate pockets and square corners accepts. */
const choice = fc.option(fc.boolean(), { nil: null });
const orderDocument = fc.record({
  ...Object.fromEntries(OPTIONAL_STEPS.filter((id) => id !== 'line').map((id) => [id, choice])),
  dyeing: fc.constantFrom('before tooling', 'after tooling'),
  holes: fc.constantFrom('before joining', 'after cementing'),
});
const jobInOrder = fc
  .record({ job: jobDocument, order: orderDocument, state: fc.constantFrom(...MAKING_STATES), isTooled: fc.boolean() })
  .map(({ job, order, state, isTooled }) => ({ ...job, order, making: { state }, ...(isTooled ? tooled : {}) }));

describe('the order of steps', () => {
  test('of a job of before that is worked dry has exactly the steps and minutes of before', () => {
    expect(ids({})).toEqual(OF_BEFORE);
    expect(ids(lining)).toEqual(OF_BEFORE);
    const usual = { measure: 20, mockup: 25, edges: 30, assemble: 20, finish: 20 };
    const minutes = Object.fromEntries(stepsOf(ledger).map((step) => [step.id, step.minutes]));
    expect(minutes).toMatchObject(usual);
  });

  // Casing and wet-forming wet the leather, dyeing dyes it: what the words mean. That dye is sealed: common practice, no source.
  test('has the steps that working cased, dyed or wet-formed takes', () => {
    const extra = (change: object) => ids(change).filter((id) => !OF_BEFORE.includes(id));
    expect(extra({ making: { state: 'cased' } })).toEqual(['case', 'dry']);
    expect(extra({ making: { state: 'wet-formed' } })).toEqual(['case', 'dry']);
    expect(extra({ making: { state: 'dyed' } })).toEqual(['dye', 'dry', 'dress']);
    expect(extra(tooled)).toEqual(['trace', 'tool']);
    expect(extra({ order: { case: true } })).toEqual(['case', 'dry']);
    expect(extra({ order: { dye: true } })).toEqual(['dye', 'dry', 'dress']);
    expect(extra({ order: { tool: true } })).toEqual(['tool']);
    // Left out by the maker, the leather is wet all the same.
    expect(extra({ making: { state: 'cased' }, order: { case: false } })).toEqual(['dry']);
    expect(extra({ making: { state: 'dyed' }, order: { dye: false } })).toEqual(['dry']);
    expect(extra({ ...tooled, order: { case: true, dye: true } })).toEqual([
      'case',
      'trace',
      'tool',
      'dry',
      'dye',
      'dress',
    ]);
    const first = { case: true, dye: true, dyeing: 'before tooling' };
    expect(extra({ ...tooled, order: first })).toEqual(['dye', 'case', 'trace', 'tool', 'dry', 'dress']);
  });

  test('lines and cements before the holes where those come after cementing', () => {
    const after = { order: { holes: 'after cementing' } };
    expect(ids({ ...lining, ...after }).slice(4, -1)).toEqual(['line', 'cement', 'assemble', 'punch', 'lace']);
    expect(ids(after).slice(4, -1)).toEqual(['cement', 'assemble', 'punch', 'lace']);
  });

  test('has each step once, casing before tooling before drying, dye before dressing, all before joining', () => {
    const before: readonly (readonly [string, string])[] = [
      ['measure', 'cut'],
      ['cut', 'case'],
      ['case', 'trace'],
      ['case', 'tool'],
      ['trace', 'tool'],
      ['case', 'dry'],
      ['tool', 'dry'],
      ['dye', 'dress'],
      ['dry', 'dress'],
      ['dress', 'assemble'],
      ['dress', 'punch'],
      ['line', 'cement'],
      ['cement', 'assemble'],
      ['assemble', 'finish'],
    ];
    checkLaw(
      fc.property(jobInOrder, (document) => {
        const job = soundJob(document);
        const order: readonly string[] = workSteps(job, coverSupplies(coverDesign(job))).map(({ id }) => id);
        expect(new Set(order).size).toBe(order.length);
        const at = (id: string): number => order.indexOf(id);
        for (const [one, other] of before) if (at(one) >= 0 && at(other) >= 0) expect(at(one)).toBeLessThan(at(other));
        expect(at('punch') > at('assemble')).toBe(job.order.holes === 'after cementing');
        for (const id of OPTIONAL_STEPS) expect(at(id) >= 0).toBe(isStepTaken(job, id));
        for (const id of OPTIONAL_STEPS) if (job.order[id] !== null) expect(at(id) >= 0).toBe(job.order[id]);
      }),
    );
  });

  test('is what a quote charges: its hours are the sum of the steps, a line each, and no line for a step left out', () => {
    checkLaw(
      fc.property(jobInOrder, (document) => {
        const design = coverDesign(soundJob({ ...document, rates: { prices: { hour: 60 } } }));
        const supplies = coverSupplies(design);
        const steps = workSteps(design.job, supplies);
        const { lines, hours } = quote(design, supplies);
        const work = lines.filter(({ group }) => group === 'work');
        expect(work.map(({ name }) => name)).toEqual(steps.map(({ name }) => name));
        expect(60 * hours).toBeCloseTo(
          steps.reduce((sum, { minutes }) => sum + minutes, 0),
          6,
        );
      }),
    );
  });

  test('cautions once, and where the work is done, against cement, dye, heat and dust', () => {
    const cautions = (change: object, id: string): string =>
      defined(stepsOf({ ...ledger, ...change }).find((step) => step.id === id)).cautions.join(' ');
    const after = { order: { holes: 'after cementing' } };
    expect(cautions(after, 'cement')).toMatch(/solvent cement is flammable/);
    expect(cautions(after, 'assemble')).toBe('');
    expect(cautions({ making: { state: 'dyed' } }, 'dye')).toMatch(
      /vapour is flammable.*gloves.*data sheet.*local rules/,
    );
    expect(cautions(tooled, 'tool')).toMatch(/Heat pens, hot tools and hot foil burn skin.*local rules/);
    expect(cautions({ order: { clip_mm: 3 } }, 'lace')).toMatch(/^Knife/);
    expect(cautions({}, 'lace')).not.toMatch(/Knife/);
  });
});

describe('holes punched through all layers at once', () => {
  test('are as many as the seam has, however many layers, and those of a strap in two pieces', () => {
    const of = (change: object) => coverSupplies(coverDesign(soundJob({ ...ledger, ...change })));
    const after = { order: { holes: 'after cementing' } };
    expect(of(after).punched).toBe(of({}).holes);
    expect(of(after).punched).toBeLessThan(of({}).punched);
    const strap = { construction: { strap: {} } };
    // Those of the strap are punched before, one piece at a time, and so are as many as they were.
    expect(of({ ...after, ...strap }).punched - of(after).punched).toBe(of(strap).punched - of({}).punched);
    expect(of({ ...after, ...strap }).punched).toBeGreaterThan(of(after).punched);
  });

  test('take the time of their own number alone', () => {
    const minutes = (change: object): number =>
      defined(stepsOf({ ...ledger, rates: { minutes: { punch: 1 } }, ...change }).find(({ id }) => id === 'punch'))
        .minutes;
    const { holes, punched } = coverSupplies(coverDesign(soundJob(ledger)));
    expect(minutes({})).toBe(punched);
    expect(minutes({ order: { holes: 'after cementing' } })).toBe(holes);
  });
});
