import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { batches, inOrder } from '../../../src/cli/catalogue/inOrder.ts';
import { checkLaw } from '../../laws.ts';

async function* counting(count: number): AsyncGenerator<number> {
  for (let i = 0; i < count; i++) yield i;
}

async function all<T>(items: AsyncIterable<T>): Promise<T[]> {
  const list: T[] = [];
  for await (const item of items) list.push(item);
  return list;
}

describe('work in order', () => {
  test('gives results in the order of the items however they finish, and never runs more than allowed', async () => {
    await checkLaw(
      fc.asyncProperty(
        fc.scheduler(),
        fc.integer({ min: 0, max: 20 }),
        fc.integer({ min: 1, max: 6 }),
        async (s, n, ahead) => {
          let running = 0;
          let most = 0;
          const work = async (item: number) => {
            most = Math.max(most, ++running);
            await s.schedule(Promise.resolve());
            running--;
            return item * item;
          };
          const results = await s.waitFor(all(inOrder(counting(n), work, ahead)));
          expect(results).toEqual(Array.from({ length: n }, (_, i) => i * i));
          expect(most).toBeLessThanOrEqual(ahead);
        },
      ),
    );
  });

  test('throws a failure in its turn', async () => {
    const work = async (item: number) => {
      if (item === 2) throw new Error('two');
      return item;
    };
    const seen: number[] = [];
    await expect(
      (async () => {
        for await (const result of inOrder(counting(9), work, 4)) seen.push(result);
      })(),
    ).rejects.toThrow('two');
    expect(seen).toEqual([0, 1]);
  });
});

test('batches hold all items in order, the last the rest', async () => {
  expect(await all(batches(counting(7), 3))).toEqual([[0, 1, 2], [3, 4, 5], [6]]);
  expect(await all(batches(counting(0), 3))).toEqual([]);
});
