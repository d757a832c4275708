import fc from 'fast-check';
import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { jobSchema } from '../../../src/core/job/jobSchema.ts';
import { quickParser, REFUSED } from '../../../src/core/job/quickParser.ts';
import { fullRangeDocument } from '../../fullRangeJob.ts';
import { checkLaw } from '../../laws.ts';

const parse = quickParser(jobSchema);

/** Parts that a job may have besides, sound and broken. */
const parts = fc.record(
  {
    name: fc.string({ maxLength: 210 }),
    seating: fc.constantFrom('front', 'nowhere'),
    work: fc.constantFrom({}, { units: 'in', cutStep_mm: 1.588 }, { units: 'in', cutStep_mm: 2 }, null),
    seam: fc.constantFrom(
      { method: 'lacing', iron: { kind: 'lacing chisel', pitch_mm: 5, tooth_mm: 2, teeth: [1, 4] } },
      { style: 'whip' },
      { method: 'lacing', style: undefined },
      { iron: { kind: 'lacing chisel', pitch_mm: 5, tooth_mm: 2, teeth: [1.5] } },
      [],
    ),
    doubts: fc.constantFrom({ 'book.width_mm': { u: 0.5, from: 'typed' } }, { 'leather.lining': { u: -1 } }, { a: {} }),
    correlations: fc.constantFrom(
      [{ a: 'book.width_mm', b: 'book.height_mm', r: 0.5 }],
      [{ a: 'book.width_mm', b: 'book.width_mm', r: 0.5 }],
    ),
    construction: fc.constantFrom(
      { strap: {}, penLoop: null, ribbon: { count: 2 } },
      { ribbon: { count: 5 } },
      { lining: 'full' },
    ),
    tooling: fc.constantFrom(
      { designs: [{ kind: 'title', area: 'front', text: 'A' }] },
      { designs: [{ kind: 'drawing', area: 'front', artwork: 'none' }] },
    ),
    finish: fc.constantFrom({ edgeColour: '#123456', pocket: null }, { edgeColour: 'brown' }),
    made: fc.constantFrom({ cut: '2026-11-26', case: null }, { cut: '2026-02-30' }),
    rates: fc.constantFrom({ decimals: 2 ** 60, maker: 'A' }, { prices: { hour: 30 }, extras: [] }),
    mockup: fc.constantFrom({ readings: { closes: true, opening_deg: 3 } }, { again: { spine_mm: 3 } }),
    hides: fc.constantFrom({ outside: { outline: [[0, 0]] } }, { outside: {} }),
    order: fc.constantFrom({ clip_mm: 2 }, { case: true }, { case: 'yes' }),
    unknown: fc.constant(1),
  },
  { requiredKeys: [] },
);

/** One value of a document in place of another. */
const damages = fc.constantFrom<[section: string, key: string, value: unknown]>(
  ['book', 'width_mm', Number.NaN],
  ['book', 'width_mm', '165'],
  ['book', 'width_mm', 29.999],
  ['book', 'height_mm', 1500.001],
  ['book', 'height_mm', Number.POSITIVE_INFINITY],
  ['book', 'thickness_mm', undefined],
  ['book', 'cornerRadius_mm', undefined],
  ['book', 'jointDip_mm', undefined],
  ['book', 'jointDip_mm', null],
  ['book', 'colour', 1],
  ['book', '__proto__x', 1],
  ['leather', 'pocket', undefined],
  ['leather', 'outside', null],
  ['pockets', 'depth_mm', null],
);

test('a job compiled from its schema is the one that zod makes of it, and is refused where zod refuses it', () => {
  const count = { read: 0, refused: 0 };
  const law = fc.property(
    fullRangeDocument,
    fc.option(parts, { freq: 2 }),
    fc.option(damages, { freq: 1 }),
    (sound, more, damage) => {
      const whole: Record<string, unknown> = { ...sound, version: 3, ...more };
      const [section, key, value] = damage ?? ['book', 'kind', 'limp'];
      const document = { ...whole, [section]: { ...(whole[section] as object), [key]: value } };
      const expected = z.safeParse(jobSchema, document);
      const read = parse(document);
      if (expected.success) {
        // Keys in the same order, and those with no value too.
        expect(read).toStrictEqual(expected.data);
        expect(JSON.stringify(read)).toBe(JSON.stringify(expected.data));
      } else expect(read).toBe(REFUSED);
      count[expected.success ? 'read' : 'refused']++;
    },
  );
  checkLaw(law);
  expect(count.read).toBeGreaterThan(20);
  expect(count.refused).toBeGreaterThan(20);
});

test('what many jobs share cannot be changed in one of them', () => {
  const leather = { outside: { min_mm: 1, max_mm: 2 } };
  const book = { width_mm: 165, height_mm: 240, thickness_mm: 28 };
  const { hides } = parse({ format: 'coverwright-job', version: 3, book, leather }) as z.output<typeof jobSchema>;
  expect(() => {
    hides.edge_mm = 9 as typeof hides.edge_mm;
  }).toThrow(TypeError);
});

test.each([[null], [undefined], [[]], ['job'], [3], [{}]])('refuses %j as a job', (value) => {
  expect(parse(value)).toBe(REFUSED);
});
