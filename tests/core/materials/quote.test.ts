import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { coverSupplies } from '../../../src/core/materials/coverSupplies.ts';
import { type Quote, quote } from '../../../src/core/materials/quote.ts';
import { workSteps } from '../../../src/core/materials/workSteps.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { defined } from '../../defined.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';

const ledger = defined(EXAMPLE_JOBS.find(({ id }) => id === 'tide-ledger')).document as object;

const quoted = (document: unknown): Quote => {
  const design = coverDesign(soundJob(document));
  return quote(design, coverSupplies(design));
};

const price = fc.option(fc.double({ min: 0, max: 500, noNaN: true }), { nil: null });
const ratesDocument = fc.record({
  currency: fc.constantFrom('', 'kr', '¤'),
  decimals: fc.integer({ min: 0, max: 3 }),
  prices: fc.record({
    outside_per_dm2: price,
    pocket_per_dm2: price,
    lining_per_dm2: price,
    thread_per_m: price,
    lace_per_m: price,
    cement_per_dm2: price,
    ribbon_per_m: price,
    fastening_each: price,
    hour: price,
  }),
  markup_percent: fc.double({ min: 0, max: 200, noNaN: true }),
  extras: fc.array(
    fc.record({
      name: fc.constantFrom('Strap stud', 'Carriage'),
      amount: fc.double({ min: -100, max: 100, noNaN: true }),
    }),
    { maxLength: 3 },
  ),
});

describe('a quote', () => {
  test('adds up to the last digit as printed, whatever the rates', () => {
    checkLaw(
      fc.property(jobDocument, ratesDocument, (document, rates) => {
        const { lines, net, markup, total, decimals } = quoted({ ...document, rates });
        const scale = 10 ** decimals;
        const whole = (amount: number): number => {
          const units = Math.round(amount * scale);
          expect(Math.abs(amount * scale - units)).toBeLessThan(1e-6);
          return units;
        };
        expect(lines.reduce((sum, { amount }) => sum + whole(amount ?? 0), 0)).toBe(whole(net));
        expect(whole(net) + whole(markup)).toBe(whole(total));
        for (const { quantity, rate, amount } of lines)
          if (rate === null) expect(amount).toBeNull();
          else expect(Math.abs(amount! - quantity * rate)).toBeLessThanOrEqual(0.5 / scale + 2e-6);
      }),
    );
  });

  test('prices pockets by their own leather, and deeper ones by that alone, though it is as thick as the outside', () => {
    const cut = (share: number, pocket_per_dm2: number | null) => {
      const prices = { outside_per_dm2: 10, pocket_per_dm2 };
      const document = { ...ledger, pockets: { share }, rates: { decimals: 3, prices } };
      const { pieces } = coverDesign(soundJob(document));
      const amounts = quoted(document).lines.flatMap(({ name, amount }) => (amount === null ? [] : [[name, amount]]));
      return { pieces, amounts: Object.fromEntries(amounts) as Record<string, number> };
    };
    // A fifth more is bought, for waste.
    const bought = (width: number, height: number, count: number): number => ((1.2 * width * height) / 10_000) * count;
    for (const share of [0.5, 0.75]) {
      const { pieces, amounts } = cut(share, 3);
      const { outside, pocket } = pieces;
      expect(amounts['Outside leather']).toBeCloseTo(10 * bought(outside.width, outside.height, 1), 2);
      expect(amounts['Pocket leather']).toBeCloseTo(3 * bought(pocket.width, pocket.height, 2), 2);
      // Without a price of their own they are cut from the outside's leather.
      expect(cut(share, null).amounts).toEqual({
        'Outside leather': expect.closeTo(
          10 * (bought(outside.width, outside.height, 1) + bought(pocket.width, pocket.height, 2)),
          2,
        ),
      });
    }
    expect(cut(0.75, 3).amounts['Outside leather']).toBe(cut(0.5, 3).amounts['Outside leather']);
  });

  test('is the hand sum of a ledger', () => {
    const rates = {
      currency: 'kr',
      prices: { outside_per_dm2: 12.5, lace_per_m: 4, cement_per_dm2: 1, hour: 300 },
      minutes: { measure: 60, mockup: 0, cut: 0, edges: 0, punch: 0, assemble: 0, lace: 0, finish: 30 },
      markup_percent: 10,
      extras: [{ name: 'Carriage', amount: 49.9 }],
    };
    const design = coverDesign(soundJob({ ...ledger, rates }));
    const supplies = coverSupplies(design);
    const { lines, net, total, hours, unpriced } = quote(design, supplies);
    const { outside, pocket } = design.pieces;
    const leather = (1.2 * (outside.width * outside.height + 2 * pocket.width * pocket.height)) / 10_000;
    expect(lines[0]).toMatchObject({ name: 'Outside leather', unit: 'dm2', rate: 12.5 });
    expect(Math.abs(defined(nth(lines, 0).amount) - 12.5 * leather)).toBeLessThanOrEqual(0.005 + 1e-9);
    expect(nth(lines, 1).amount).toBeCloseTo((4 * defined(supplies.lace).total) / 1000, 2);
    expect(hours).toBeCloseTo(1.5, 9);
    const sum =
      defined(nth(lines, 0).amount) + defined(nth(lines, 1).amount) + defined(nth(lines, 2).amount) + 450 + 49.9;
    expect(net).toBeCloseTo(sum, 6);
    expect(total).toBeCloseTo(Math.round(sum * 110) / 100, 6);
    expect(unpriced).toEqual([]);
  });

  test('without rates names what has no price, and assumes no currency', () => {
    const { currency, total, unpriced, lines } = quoted(ledger);
    expect(currency).toBe('');
    expect(total).toBe(0);
    expect(unpriced.length).toBe(lines.length);
    expect(lines.some(({ name }) => name === 'Lace')).toBe(true);
  });

  test('takes the price of the outside for pockets and lining that have none of their own', () => {
    const two = {
      outside: { min_mm: 2, max_mm: 2.4 },
      pocket: { min_mm: 1, max_mm: 1.2 },
      lining: { min_mm: 0.6, max_mm: 0.8 },
    };
    const { lines } = quoted({
      ...ledger,
      leather: two,
      rates: { prices: { outside_per_dm2: 10, lining_per_dm2: 6 } },
    });
    expect(lines.slice(0, 3).map(({ name, rate }) => [name, rate])).toEqual([
      ['Outside leather', 10],
      ['Pocket leather', 10],
      ['Lining leather', 6],
    ]);
  });
});

describe('the order of work', () => {
  const steps = (document: object) => {
    const job = soundJob(document);
    return workSteps(job, coverSupplies(coverDesign(job)));
  };

  test('has every caution at the step where it matters', () => {
    const at = (id: string): string => defined(steps(ledger).find((step) => step.id === id)).cautions.join(' ');
    expect(at('cut')).toMatch(/away from the hand/);
    expect(at('edges')).toMatch(/dust: extract it or wear a mask/);
    expect(at('punch')).toMatch(/over a board, never toward the palm/);
    expect(at('assemble')).toMatch(
      /flammable and harmful.*flames and sparks away.*safety data sheet and the local rules/,
    );
    expect(at('lace')).toMatch(/never toward the palm/);
  });

  test('makes the holes before the layers are joined, and stitches or laces as the job says', () => {
    const laced = steps(ledger).map(({ id }) => id);
    expect(laced.indexOf('punch')).toBeLessThan(laced.indexOf('assemble'));
    expect(laced.indexOf('assemble')).toBeLessThan(laced.indexOf('lace'));
    expect(steps({ ...ledger, seam: { method: 'stitching' } }).map(({ id }) => id)).toContain('stitch');
  });

  test('counts time by pieces, holes and stitches', () => {
    const document = { ...ledger, rates: { minutes: { cut: 10, punch: 1, lace: 2 } } };
    const job = soundJob(document);
    const supplies = coverSupplies(coverDesign(job));
    const minutes = (id: string): number => defined(workSteps(job, supplies).find((step) => step.id === id)).minutes;
    expect(minutes('cut')).toBe(30);
    expect(minutes('lace')).toBe(2 * supplies.holes);
    expect(minutes('punch')).toBe(supplies.punched);
    const drawn = patternDrawing(coverDesign(job)).pieces.reduce((sum, { holes, count }) => sum + holes * count, 0);
    expect(supplies.punched).toBe(drawn);
    expect(supplies.punched).toBeGreaterThan(supplies.holes);
    expect(supplies.punched).toBeLessThan(2 * supplies.holes);
  });
});

describe('supplies', () => {
  test('have a note where no thread or lace can be worked', () => {
    const notes = (extra: object): string =>
      coverSupplies(coverDesign(soundJob({ ...ledger, ...extra }))).notes.join(' ');
    const stitched = { seam: { method: 'stitching' } };
    expect(notes({ ...stitched, supplies: { threadWorking_mm: 300, threadTail_mm: 200 } })).toContain('thread in hand');
    expect(notes({ supplies: { laceWorking_mm: 300, spliceOverlap_mm: 200 } })).toBe('');
    expect(notes({ seam: { method: 'lacing', style: 'whip' } })).toMatch(/by the way that it runs; .* 2\.5 to 3\.5/);
  });

  test('count the thread or lace that sews a strap on, and price it', () => {
    const priced = { rates: { prices: { thread_per_m: 1000, lace_per_m: 1000 } } };
    for (const method of ['stitching', 'lacing']) {
      const of = (strap: object | null) => {
        const design = coverDesign(soundJob({ ...ledger, ...priced, seam: { method }, construction: { strap } }));
        const supplies = coverSupplies(design);
        const line = defined(quote(design, supplies).lines.find(({ name }) => name === 'Thread' || name === 'Lace'));
        return { supplies, amount: defined(line.amount) };
      };
      const [without, sewn] = [of(null), of({})];
      expect(without.supplies.strap).toBe(0);
      // Two tails alone are 400 mm of thread or 200 of lace.
      expect(sewn.supplies.strap).toBeGreaterThan(method === 'stitching' ? 400 : 200);
      expect(sewn.supplies.strap).toBeLessThan(1500);
      expect(sewn.amount - without.amount).toBeCloseTo(sewn.supplies.strap, 0);
    }
  });

  test('count ribbon and fastening, and price them by rates of their own', () => {
    const fitted = { construction: { strap: {}, penLoop: {}, ribbon: { count: 2, fixed_mm: 25, tail_mm: 40 } } };
    const of = (change: object) => {
      const design = coverDesign(soundJob({ ...ledger, ...change }));
      return { design, supplies: coverSupplies(design), priced: quote(design, coverSupplies(design)) };
    };
    const { design, supplies, priced } = of(fitted);
    // The page is the board less its squares; the ribbon crosses it, cut to the next half millimetre.
    const { book } = design.job;
    const across = Math.hypot(book.width_mm - book.square_mm, book.height_mm - 2 * book.square_mm);
    const each = Math.ceil((25 + across + 40) * 2) / 2;
    expect(supplies.ribbon).toMatchObject({ count: 2, sum: { total: each } });
    expect(supplies.fastening).toMatchObject({ name: 'Brass stud' });
    const line = (quoted: Quote, name: string) => quoted.lines.find((each) => each.name === name);
    expect(line(priced, 'Ribbon')).toMatchObject({ group: 'materials', unit: 'm', rate: null });
    expect(defined(line(priced, 'Ribbon')).quantity).toBeCloseTo((2 * each) / 1000, 9);
    expect(line(priced, 'Brass stud')).toMatchObject({ group: 'materials', unit: 'piece', quantity: 1, rate: null });
    expect(priced.unpriced).toEqual(expect.arrayContaining(['Ribbon', 'Brass stud']));

    const rates = { prices: { ribbon_per_m: 10, fastening_each: 7.5 } };
    const { priced: paid } = of({ ...fitted, rates });
    expect(defined(line(paid, 'Ribbon')).amount).toBeCloseTo(Math.round((2 * each * 10) / 10) / 100, 9);
    expect(defined(line(paid, 'Brass stud')).amount).toBe(7.5);
    expect(paid.total).toBeCloseTo(defined(defined(line(paid, 'Ribbon')).amount) + 7.5, 9);

    const plain = of({ rates });
    expect(plain.supplies).toMatchObject({ ribbon: null, fastening: null });
    for (const name of ['Ribbon', 'Brass stud']) expect(line(plain.priced, name)).toBeUndefined();
  });

  test('of every random job are finite and not negative', () => {
    checkLaw(
      fc.property(jobDocument, (document) => {
        const { thread, lace, areas, cement, holes } = coverSupplies(coverDesign(soundJob(document)));
        const figures = [thread?.total ?? 0, lace?.total ?? 0, cement, holes, ...areas.map(({ gross }) => gross)];
        expect(figures.every((figure) => Number.isFinite(figure) && figure >= 0)).toBe(true);
        expect((thread === null) !== (lace === null)).toBe(true);
      }),
    );
  });
});
