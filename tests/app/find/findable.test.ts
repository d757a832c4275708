import { describe, expect, test } from 'vitest';
import { fieldPlace } from '../../../src/app/fields/goToField.ts';
import { labelAt } from '../../../src/app/fields/issueWords.ts';
import { type Findable, found, meantTerm } from '../../../src/app/find/findable.ts';
import { findables } from '../../../src/app/find/findables.ts';
import { createBench } from '../../../src/app/state/bench.ts';
import { startHistory } from '../../../src/app/state/jobHistory.ts';
import { PLACES } from '../../../src/app/state/place.ts';
import { EXAMPLE_JOBS, EXPLORE_RESULTS, JOB_PATHS, termOf, WORDS } from '../../../src/core/index.ts';
import { nth } from '../../nth.ts';

const { document } = EXAMPLE_JOBS[0];
const history = startHistory({ document, typed: {} }, document);
const store = createBench(history);
const all = findables(store);
const names = (list: readonly Findable[]): readonly string[] => list.map(({ name }) => name);

const thing = (name: string, also = ''): Findable => ({ name, where: '', also, go: () => {} });

describe('the order of what is found', () => {
  const list = [thing('Edge margin'), thing('Width', 'girth'), thing('Head margin'), thing('Marginal note')];

  test('a name that begins with the text comes first, then one with a word that does, then one that holds it', () => {
    expect(names(found([thing('Submarginal'), ...list], 'margin'))).toEqual([
      'Marginal note',
      'Edge margin',
      'Head margin',
      'Submarginal',
    ]);
  });

  test('every word must be met, in any order', () => {
    expect(names(found(list, 'margin ed'))).toEqual(['Edge margin']);
    expect(found(list, 'margin width')).toEqual([]);
  });

  test('another word for it leads to it, and so does its own word with an accent or a capital', () => {
    expect(names(found(list, 'girth'))).toEqual(['Width']);
    expect(names(found(list, 'HÉAD'))).toEqual(['Head margin']);
  });
});

describe('what can be found', () => {
  test('before anything is typed: every place, and what is done most', () => {
    const usual = names(found(all, ''));
    expect(usual).toEqual(expect.arrayContaining([...PLACES.map(({ title }) => title), 'New cover', 'Print']));
    expect(usual.length).toBeLessThan(25);
  });

  test('every field that has a place and a label', () => {
    const fields = JOB_PATHS.filter(
      (path) => fieldPlace(path) !== undefined && labelAt(path) !== path && path !== 'work.units',
    );
    expect(fields.length).toBeGreaterThan(100);
    expect(fields.filter((path) => !names(found(all, labelAt(path))).includes(labelAt(path)))).toEqual([]);
  });

  test('every check of the report, every example and every result of Explore', () => {
    const { report } = store.getState();
    const wanted = [
      ...report.checks.map(({ title }) => `Check: ${title}`),
      ...EXAMPLE_JOBS.map((example) => `Example: ${String(example.document.name).toLowerCase()}`),
      ...EXPLORE_RESULTS.map(({ title }) => `Curve: ${title}`),
    ];
    expect(wanted.filter((name) => !names(all).includes(name))).toEqual([]);
  });

  test('a word that a term is never called leads to whatever has the term in its name', () => {
    const holds = (text: string, word: string) => new RegExp(`(?<![\\p{L}-])${word}(?![\\p{L}-])`, 'iu').test(text);
    const lost = WORDS.flatMap((word) => {
      // In "Card trial" the term is "card trial", not "card".
      const longer = WORDS.filter((other) => other !== word && holds(other, word));
      const named = all.filter(({ name }) => holds(name, word) && !longer.some((other) => holds(name, other)));
      return termOf(word).not.flatMap((wrong) => {
        const hits = found(all, wrong);
        return named.filter((each) => !hits.includes(each)).map(({ name }) => `${wrong}: ${name}`);
      });
    });
    expect(lost).toEqual([]);
    expect(names(found(all, 'page give'))).toContain('Squash of the pages');
  });

  test("a maker's own words for the cards and the order of work lead to them", () => {
    const first = (text: string) => nth(names(found(all, text)), 0);
    expect(['half pattern', 'one card', 'transfer'].map(first)).toEqual(Array(3).fill('Template'));
    expect(names(found(all, 'tracing'))).toContain('Template');
    expect(first('draft by ruler')).toBe('Drafting sheet');
    expect(['punch after', 'holes after cementing', 'prick before'].map(first)).toEqual(Array(3).fill('Your order'));
    expect(first('tick')).toBe('Work step by step');
  });

  test('nothing is listed twice', () => {
    const keys = all.map(({ name, where }) => `${name}, ${where}`);
    expect(keys).toEqual([...new Set(keys)]);
  });

  test('undo is found while there is something to take back', () => {
    expect(names(all)).not.toContain('Undo');
    const changed = createBench(history);
    changed.getState().dispatch({ type: 'edit', patches: [{ path: 'book.width_mm', value: 170 }] });
    const before = changed.getState().history.document;
    const undo = findables(changed).find(({ name }) => name === 'Undo');
    undo?.go();
    expect(changed.getState().history.document).not.toEqual(before);
    expect(changed.getState().history.document).toEqual(document);
  });
});

test('a text means a term when it is its word, its plural, or what it is never called', () => {
  expect(['Stop', 'stops', 'seat', 'sleeve', 'shoelace', ''].map(meantTerm)).toEqual([
    'stop',
    'stop',
    'stop',
    'pocket',
    null,
    null,
  ]);
});
