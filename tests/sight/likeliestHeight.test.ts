import { expect, test } from 'vitest';
import { likeliestHeight } from '../../src/sight/likeliestHeight.ts';

const peakAt = (height: number) => (tried: number) => -Math.abs(Math.log(tried / height));

test.each([6, 20, 55, 90])('a peak at %s mm is found to a hundredth', (height) => {
  expect(Math.abs((likeliestHeight(peakAt(height)) ?? 0) / height - 1)).toBeLessThan(0.01);
});

test('what fits best at the lowest height is too thin to tell', () => {
  expect(likeliestHeight(peakAt(1))).toBeNull();
});
