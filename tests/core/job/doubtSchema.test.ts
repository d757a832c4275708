import { describe, expect, test } from 'vitest';
import { parseJob, parseJobText } from '../../../src/core/job/parseJob.ts';
import { soundJob } from '../../jobArbitrary.ts';

const document = (change: object = {}) => ({
  format: 'coverwright-job',
  version: 2,
  book: { width_mm: 165, height_mm: 240, thickness_mm: 28 },
  leather: { outside: { min_mm: 1.6, max_mm: 2 } },
  ...change,
});

/** The issues of a job, as path and what was got. */
function issuesOf(change: object): readonly (readonly [path: string, got: string])[] {
  const parsed = parseJob(document(change));
  return parsed.ok ? [] : parsed.issues.map(({ path, got }) => [path, got]);
}

const doubt = (value: object) => issuesOf({ doubts: { 'book.width_mm': value } });
const AT = 'doubts.book.width_mm';

describe('a doubt', () => {
  test('of 0, of any distribution, origin and tool is sound', () => {
    const given = { u: 0, distribution: 'even', from: 'photograph', with: 'tape B' };
    expect(soundJob(document({ doubts: { 'book.width_mm': given } })).doubts['book.width_mm']).toEqual(given);
    expect(doubt({})).toEqual([]);
  });

  test.each([
    ['negative', { u: -0.1 }, `${AT}.u`, '-0.1'],
    ['null, as JSON writes NaN', { u: null }, `${AT}.u`, 'null'],
    ['NaN itself', { u: Number.NaN }, `${AT}.u`, 'NaN'],
    ['infinite', { u: Number.POSITIVE_INFINITY }, `${AT}.u`, 'Infinity'],
    ['a text', { u: '0.25' }, `${AT}.u`, '"0.25"'],
    ['over 20 mm', { u: 20.1 }, `${AT}.u`, '20.1'],
    ['of an unknown distribution', { distribution: 'triangular' }, `${AT}.distribution`, '"triangular"'],
    ['of an unknown origin', { from: 'heard' }, `${AT}.from`, '"heard"'],
    ['by a tool that is no text', { with: 1 }, `${AT}.with`, '1'],
    ['with an unknown field', { sigma: 0.1 }, `${AT}.sigma`, 'a field that a job does not have'],
  ])('that is %s is refused by its path', (_what, value, path, got) => {
    expect(doubt(value)).toEqual([[path, got]]);
    const parsed = parseJob(document({ doubts: { 'book.width_mm': value } }));
    expect(!parsed.ok && parsed.issues[0]).toMatchObject({
      allowed: expect.stringMatching(/./),
      remedy: expect.stringMatching(/./),
    });
  });

  test('is bounded by what its input may come to', () => {
    for (const [path, most] of [
      ['book.boardThickness_mm', 3],
      ['book.pageGive', 0.45],
      ['leather.outside.neutral', 0.2],
      ['making.changeAcross', 0.05],
      ['pattern.outsideWidth_mm', 5],
    ] as const) {
      expect(issuesOf({ doubts: { [path]: { u: most } } }), path).toEqual([]);
      expect(issuesOf({ doubts: { [path]: { u: 1.01 * most } } }).map(([at]) => at)).toEqual([`doubts.${path}.u`]);
    }
  });

  test('of an input that there is not is refused', () => {
    expect(issuesOf({ doubts: { 'book.weight': { u: 1 } } }).map(([path]) => path)).toEqual(['doubts.book.weight']);
    expect(issuesOf({ doubts: [] }).map(([path]) => path)).toEqual(['doubts']);
  });

  test('of NaN in a file is no JSON', () => {
    const text = JSON.stringify(document({ doubts: { 'book.width_mm': { u: 1 } } })).replace('"u":1', '"u":NaN');
    const parsed = parseJobText(text);
    expect(!parsed.ok && parsed.issues).toMatchObject([{ code: 'not_json', path: '(file)' }]);
  });
});

describe('correlations', () => {
  const one = { a: 'book.width_mm', b: 'book.height_mm', r: 0.5 };
  const of = (...correlations: unknown[]) => issuesOf({ correlations });

  test('from -1 to 1 are sound, perfect ones too', () => {
    expect(of(one)).toEqual([]);
    for (const r of [-1, 0, 1]) expect(of({ ...one, r })).toEqual([]);
  });

  test.each([
    ['beyond 1', { ...one, r: 1.01 }, 'correlations.0.r'],
    ['under -1', { ...one, r: -1.01 }, 'correlations.0.r'],
    ['null', { ...one, r: null }, 'correlations.0.r'],
    ['of an unknown input', { ...one, a: 'book.weight' }, 'correlations.0.a'],
    ['without an input', { a: one.a, r: 0.5 }, 'correlations.0.b'],
    ['of an input with itself', { ...one, b: one.a }, 'correlations.0'],
  ])('%s are refused by their place', (_what, value, path) => {
    expect(of(value).map(([at]) => at)).toEqual([path]);
  });

  test('of a pair given twice, either way round, are refused at the second', () => {
    expect(of(one, one)).toEqual([['correlations.1', expect.stringContaining('book.width_mm and book.height_mm')]]);
    expect(of(one, { ...one, a: one.b, b: one.a }).map(([path]) => path)).toEqual(['correlations.1']);
  });

  test('that cannot hold together are refused as a whole', () => {
    // Both close to the third, and against each other: det = 1 + 2 abc - a^2 - b^2 - c^2 < 0.
    const third = 'book.thickness_mm';
    const three = (r: number) =>
      of({ a: one.a, b: third, r: 0.9 }, { a: one.b, b: third, r: 0.9 }, { a: one.a, b: one.b, r });
    // The bound is 0.9^2 - (1 - 0.9^2) = 0.62.
    expect(three(0.63)).toEqual([]);
    expect(three(0.61)).toEqual([['correlations', 'a list of 3']]);
  });

  test('that are no list, or over 100, are refused', () => {
    expect(issuesOf({ correlations: {} }).map(([path]) => path)).toEqual(['correlations']);
    expect(issuesOf({ correlations: Array(101).fill(one) }).map(([path]) => path)).toContain('correlations');
  });
});

test.each([0.499, 0.9991, -1, null, '0.95'])('a wished share of %j is refused', (share) => {
  expect(issuesOf({ ease: { share } }).map(([path]) => path)).toEqual(['ease.share']);
});

test('a wished share of 0.5 to 0.999 is sound', () => {
  for (const share of [0.5, 0.999]) expect(soundJob(document({ ease: { share } })).ease.share).toBe(share);
});

test.each([
  ['making.changeAlong', -0.051],
  ['making.changeAcross', 0.031],
  ['making.state', 'boiled'],
])('%s of %j is refused', (path, value) => {
  expect(issuesOf({ making: { [path.slice('making.'.length)]: value } }).map(([at]) => at)).toEqual([path]);
});
