import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EXAMPLE_JOBS, fitReport, type Patch, parseJob, patched } from '../../../src/core/index.ts';
import { run } from '../../cli/commandLine.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';

/** An independent validator of what the command line prints. `unit` is a note, which no standard names. */
const schema: Documents = JSON.parse((await run('fit', ['--schema'])).stdout);
const ajv = new Ajv2020({ allErrors: true, strictTypes: false }).addVocabulary(['unit']).addSchema(schema, 'documents');
const isValid = (part: 'job' | 'report', value: unknown) =>
  ajv.validate(`documents#/$defs/${part}`, JSON.parse(JSON.stringify(value)));
const whereWrong = () => ajv.errors?.map(({ instancePath }) => instancePath) ?? [];

const TIDE_LEDGER = EXAMPLE_JOBS[0].document;

describe('the JSON Schema that fit prints', () => {
  test.each(EXAMPLE_JOBS)('takes the job $id, and its report', ({ document }) => {
    expect(isValid('job', document)).toBe(true);
    const report = fitReport(soundJob(document));
    expect(isValid('report', report)).toBe(true);
    const tried = fitReport(soundJob(document), { trials: { draws: 20 } });
    expect(tried.doubt.trials?.draws).toBe(20);
    for (const either of [document, report, tried])
      expect(ajv.validate('documents', JSON.parse(JSON.stringify(either)))).toBe(true);
  });

  test('takes a job with doubts, correlations and a change of size, and its report', () => {
    const document = {
      ...TIDE_LEDGER,
      doubts: { 'book.width_mm': { u: 0.1, distribution: 'even', from: 'measured', with: 'tape B' } },
      correlations: [{ a: 'book.width_mm', b: 'book.height_mm', r: 0.5 }],
      making: { state: 'cased', changeAlong: -0.01, changeAcross: null },
    };
    expect(isValid('job', document)).toBe(true);
    expect(isValid('report', fitReport(soundJob(document)))).toBe(true);
    expect(isValid('job', { ...document, doubts: { 'book.width_mm': { u: -1 } } })).toBe(false);
  });

  test('takes every job that the parser takes, and its report', () => {
    checkLaw(
      fc.property(jobDocument, (job) => {
        expect(isValid('job', job)).toBe(true);
        expect(isValid('report', fitReport(soundJob(job)))).toBe(true);
      }),
      { cost: 10 },
    );
  });

  test.each([
    ['book.width_mm', '165'],
    ['book.width_mm', -165],
    ['book.thickness_mm', null],
    ['book.kind', 'scroll'],
    ['book.widht_mm', 165],
    ['leather.outside.neutral', 2],
    ['version', 99],
  ])('refuses a job whose %s is %j, as the parser does, at the same place', (path, value) => {
    const document = patched(TIDE_LEDGER, [{ path, value } as Patch]);
    expect(parseJob(document).ok).toBe(false);
    expect(isValid('job', document)).toBe(false);
    const place = `/${path.replaceAll('.', '/')}`;
    // An unknown field is named at the object that holds it.
    expect(whereWrong().some((wrong) => place === wrong || place.replace(/\/[^/]*$/, '') === wrong)).toBe(true);
  });

  test('refuses a report that lacks a verdict or holds another unit', () => {
    const report = fitReport(soundJob(TIDE_LEDGER));
    expect(isValid('report', { ...report, verdict: undefined })).toBe(false);
    expect(isValid('report', { ...report, checks: [{ ...report.checks[0], unit: 'inch' }] })).toBe(false);
  });

  test('gives title, help, unit, range and default of a field, also a default of 0 or null', () => {
    const at = (...path: readonly string[]) =>
      path.reduce((part: Part | undefined, name) => part?.properties?.[name], schema.$defs.job);
    expect(at('book', 'width_mm')).toEqual({
      title: 'Width',
      description: expect.stringContaining('board'),
      unit: 'mm',
      type: 'number',
      minimum: 30,
      maximum: 1000,
    });
    expect(at('seam', 'cornerRadius_mm')).toMatchObject({ default: 0, minimum: 0, maximum: 60 });
    expect(at('pockets')?.properties).toMatchObject({ depth_mm: { default: null }, hold_mm: { default: 40 } });
  });

  test('has a title for every field of a job', () => {
    // Where a part may also be null, what it is otherwise.
    const filled = (part: Part): Part => part.anyOf?.find(({ type }) => type !== 'null') ?? part;
    const untitled = (outer: Part, place: readonly string[]): string[] => {
      const { title, properties } = filled(outer);
      if (properties === undefined) return (outer.title ?? title) || place.length < 2 ? [] : [place.join('.')];
      return Object.entries(properties).flatMap(([name, inner]) => untitled(inner, [...place, name]));
    };
    expect(untitled(schema.$defs.job, [])).toEqual([]);
  });
});

interface Documents {
  readonly $defs: { readonly job: Part };
}

interface Part {
  readonly type?: string;
  readonly title?: string;
  readonly properties?: Readonly<Record<string, Part>>;
  readonly anyOf?: readonly Part[];
}
