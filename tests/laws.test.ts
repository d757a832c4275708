import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { defined } from './defined.ts';
import kept from './laws.json' with { type: 'json' };
import { checkLaw, type KeptCase, LAW_SEED, lawCases } from './laws.ts';
import { nth } from './nth.ts';

/** The numbers that a law over whole numbers draws, in their order. */
function drawn(options: Parameters<typeof checkLaw>[1]): number[] {
  const numbers: number[] = [];
  checkLaw(
    fc.property(fc.nat(), (number) => void numbers.push(number)),
    options,
  );
  return numbers;
}

test('a law draws its cases from the seed of the run, as many as its cost allows', () => {
  expect(LAW_SEED).toBeGreaterThan(0);
  expect(drawn({ cost: 20 })).toEqual(fc.sample(fc.nat(), { seed: LAW_SEED, numRuns: lawCases(20) }));
  expect(lawCases(20)).toBe(lawCases() / 20);
  expect(lawCases(1e9)).toBe(1);
});

test('a case that failed once, kept by its seed and number, is drawn before all others', async () => {
  const seed = 7;
  const failed = fc.check(
    fc.property(fc.nat(), (number) => number < 1000),
    { seed, endOnFailure: true },
  );
  const again: KeptCase = { law: '', seed, case: Number(defined(failed.counterexamplePath).split(':')[0]) };
  const numbers = drawn({ cases: 3, kept: [again] });
  expect(numbers).toHaveLength(4);
  expect(numbers[0]).toBe(defined(failed.counterexample)[0]);
  const asynchronous: number[] = [];
  await checkLaw(
    fc.asyncProperty(fc.nat(), async (number) => void asynchronous.push(number)),
    { cases: 3, kept: [again] },
  );
  expect(asynchronous).toEqual(numbers);
});

test('a law that fails throws with the seed and the path to keep', () => {
  const never = fc.property(fc.nat(), () => false);
  expect(() => checkLaw(never)).toThrow(new RegExp(`seed: ${LAW_SEED}, path: "0`));
});

const sources = readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.test.ts'))
  .map((file) => ({ file, source: readFileSync(join(import.meta.dirname, file), 'utf8') }));

test('every law draws from the seed of the run', () => {
  const own = sources.filter(({ source }) => /\bfc\.assert\(/.test(source)).map(({ file }) => file);
  expect(own).toEqual([]);
});

test('every kept case names the test of a law', () => {
  for (const { law } of kept) {
    const title = nth(law.split(' > '), -1);
    expect([law, sources.some(({ source }) => source.includes(title))]).toEqual([law, true]);
  }
});
