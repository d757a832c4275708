import { describe, expect, test } from 'vitest';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { patched } from '../../../src/core/job/jobDocument.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import type { Hand } from '../../../src/core/stock/hand.ts';
import { knownPatches } from '../../../src/core/stock/knownPatches.ts';
import type { Known, LeatherKnowledge } from '../../../src/core/stock/leatherKnowledge.ts';
import { UNKNOWNS } from '../../../src/core/stock/leatherUnknowns.ts';
import { stockLeatherSchema } from '../../../src/core/stock/stockSchema.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const known = (value: number, u: number, from: Known['from'] = 'tests'): Known => ({ value, u, from });
const byWay = (along: number, across: number, u: number, from?: Known['from']) => ({
  along: known(along, u, from),
  across: known(across, u, from),
});

const knowledge: LeatherKnowledge = {
  neutral: byWay(0.6, 0.7, 0.03),
  bendRatio: byWay(0.15, 0.35, 0.03),
  change: byWay(-0.004, -0.011, 0.001),
  modulus_MPa: byWay(40, 90, 5),
  creaseSet: known(0.7, 0.05),
  density_kg_m3: known(900, 20),
  thickness: known(1.9, 0.1),
  joint: {
    mean: UNKNOWNS.map(() => 0),
    // Along and across each by itself, but for the change across, which hangs on the cutting.
    covariance: UNKNOWNS.map((a) =>
      UNKNOWNS.map((b) => {
        if (a === b)
          return a === 'hand.cutting' ? 0.01 : a === 'hand.margin' ? 0.0025 : a.startsWith('change') ? 1e-6 : 9e-4;
        return [a, b].sort().join() === 'change.dry.across,hand.cutting' ? -0.5 * 0.1 * 0.001 : 0;
      }),
    ),
  },
};
const hand: Hand = { margin_mm: known(0.2, 0.05, 'covers'), cutting_mm: known(-0.3, 0.1, 'covers') };
const leather = stockLeatherSchema.parse({
  format: 'coverwright-leather',
  version: 1,
  name: 'Oak bark shoulder',
  min_mm: 1.8,
  max_mm: 2.2,
  callipered_mm: [1.9, 2, 1.8],
  colour: '#112233',
  price_per_dm2: 2.5,
});

function takenBy(changes: object, piece: 'outside' | 'pocket' | 'lining' = 'outside') {
  const document = { ...nth(EXAMPLE_JOBS, 0).document, ...changes };
  const job = soundJob(document as never);
  const parsed = parseJob(
    patched(document, knownPatches(piece, { id: 'a', revision: 3, leather }, knowledge, hand, job)),
  );
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  return parsed.job;
}

describe('a job that takes a leather', () => {
  test('has its thickness, figures, doubts, looks and price', () => {
    const { leather: leathers, making, doubts, finish, rates, correlations } = takenBy({});
    const { min_mm, max_mm, neutral, bendRatio, modulus_MPa, taken } = leathers.outside;
    expect([min_mm, max_mm, neutral, bendRatio, modulus_MPa]).toEqual([1.8, 2, 0.7, 0.35, 90]);
    expect(taken).toEqual({ id: 'a', revision: 3, name: 'Oak bark shoulder' });
    expect([making.changeAlong, making.changeAcross]).toEqual([-0.004, -0.011]);
    expect(making.hand).toEqual({ margin_mm: 0.2, cutting_mm: -0.3 });
    expect(doubts['leather.outside.bendRatio']).toEqual({ u: 0.03, from: 'measured' });
    // Half of the variance of 0.3 mm is chance, and -2 times 0.05 and 0.1 mm of the hand are not known; of a margin chance alone is left.
    const cut = Math.sqrt(0.3 ** 2 / 2 + (2 * 0.05) ** 2 + 0.1 ** 2);
    expect(doubts['pattern.outsideWidth_mm']?.u).toBeCloseTo(cut, 3);
    expect(doubts['seam.edgeMargin_mm']?.u).toBeCloseTo(0.2 / Math.SQRT2, 3);
    const correlation = {
      a: 'making.changeAcross',
      b: 'pattern.outsideWidth_mm',
      r: expect.closeTo((-0.5 * 0.1) / cut, 3),
    };
    expect(correlations).toContainEqual(correlation);
    expect(finish.outside.colour).toBe('#112233');
    expect(rates.prices.outside_per_dm2).toBe(2.5);
  });

  test('bends it along the backbone where the piece is turned', () => {
    const { outside } = takenBy({ making: { backbone: 'across' } }).leather;
    expect([outside.neutral, outside.bendRatio]).toEqual([0.6, 0.15]);
  });

  test('for a pocket or lining leaves the making of the cover alone', () => {
    const pocket = takenBy({}, 'pocket');
    expect(pocket.leather.pocket.bendRatio).toBe(0.35);
    expect(pocket.finish.pocket?.colour).toBe('#112233');
    expect(pocket.making.changeAcross).toBeNull();
    expect(pocket.making.hand.margin_mm).toBe(0);
    expect(takenBy({}, 'lining').leather.lining?.max_mm).toBe(2);
  });
});
