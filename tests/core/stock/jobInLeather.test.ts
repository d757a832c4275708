import { expect, test } from 'vitest';
import { valueAt } from '../../../src/core/job/jobDocument.ts';
import { jobInLeather } from '../../../src/core/stock/jobInLeather.ts';
import { shopKnowledge } from '../../../src/core/stock/shop.ts';
import { stockLeatherSchema } from '../../../src/core/stock/stockSchema.ts';
import { soundJob } from '../../jobArbitrary.ts';

const document = {
  format: 'coverwright-job',
  version: 3,
  book: { width_mm: 150, height_mm: 220, thickness_mm: 30 },
  leather: { outside: { min_mm: 1.6, max_mm: 2, taken: { id: 'own', revision: 1, name: 'Own' } } },
  pattern: { outsideWidth_mm: 350 },
  rates: { prices: { outside_per_dm2: 2 } },
};

const inLeather = (id: string, more: object) => {
  const leather = stockLeatherSchema.parse({
    format: 'coverwright-leather',
    version: 1,
    min_mm: 1,
    max_mm: 1.2,
    ...more,
  });
  return jobInLeather(document, soundJob(document), { id, revision: 1, leather }, shopKnowledge([leather]));
};

test('a cover in another leather is cut anew for it', () => {
  const other = inLeather('other', {});
  expect(valueAt(other, 'leather.outside.max_mm')).toBe(1.2);
  expect(valueAt(other, 'pattern.outsideWidth_mm')).toBeUndefined();
});

test('its price is never that of the leather before it', () => {
  expect(valueAt(inLeather('other', {}), 'rates.prices.outside_per_dm2')).toBeUndefined();
  expect(valueAt(inLeather('other', { price_per_dm2: 3 }), 'rates.prices.outside_per_dm2')).toBe(3);
  // The same leather keeps what the job says of it.
  expect(valueAt(inLeather('own', {}), 'rates.prices.outside_per_dm2')).toBe(2);
});
