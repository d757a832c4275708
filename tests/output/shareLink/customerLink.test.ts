import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { patched } from '../../../src/core/job/jobDocument.ts';
import { inCurrentVersion, type JobRecord } from '../../../src/core/job/migrate.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import { customerSheet } from '../../../src/output/customerSheet/customerSheet.ts';
import { type Offer, PLAIN_OFFER } from '../../../src/output/customerSheet/offer.ts';
import { customerFragment, readCustomerFragment } from '../../../src/output/shareLink/customerLink.ts';
import { linkText } from '../../../src/output/shareLink/linkText.ts';
import { soundJob } from '../../jobArbitrary.ts';

/** A job with everything that is the maker's own. */
const makersOwn = {
  rates: { maker: 'The harbour bench', currency: 'kr', prices: { hour: 300, outside_per_dm2: 12 }, markup_percent: 35 },
  hides: { outside: { width_mm: 600, height_mm: 600 } },
  made: { measure: '2026-11-26' },
  mockup: { readings: { front_mm: 1.1, back_mm: 0.9 } },
  outcome: { front_mm: 1.2 },
};

const taken = { id: 'a', revision: 1, name: 'Harness back' };

const offer: Offer = { ...PLAIN_OFFER, date: '2026-11-27' };

function sent(document: JobRecord, asked: Offer = offer) {
  const fragment = customerFragment(document, soundJob(document), asked);
  if (fragment === null) throw new Error('too long for a link');
  const read = readCustomerFragment(fragment);
  if (!read.ok) throw new Error(read.issues[0]?.message);
  return { ...read, fragment };
}

const sheetOf = (job: ReturnType<typeof soundJob>, asked: Offer) => {
  const design = coverDesign(job);
  return customerSheet(design, designReport(design), asked);
};

describe.each(EXAMPLE_JOBS.map(({ id, document }) => [id, document] as const))(
  'the link for a customer of the %s',
  (_id, document) => {
    const whole = patched(inCurrentVersion({ ...document, ...makersOwn }), [
      { path: 'leather.outside.taken', value: taken },
    ]);

    test('shows the page as the maker sees it, prices too', () => {
      const { job, offer: read } = sent(whole);
      expect(sheetOf(job, read)).toEqual(sheetOf(soundJob(whole), offer));
    });

    test('shows no price where the maker shows none', () => {
      const { job, offer: read } = sent(whole, { ...offer, prices: null });
      expect(sheetOf(job, read)).toEqual(sheetOf(soundJob(whole), { ...offer, prices: null }));
      expect(JSON.stringify(read)).not.toMatch(/total/);
    });

    test('carries no rate, hide, tick, reading or name of a leather, only who makes the cover', () => {
      const { document: read, fragment } = sent(whole);
      expect(read.rates).toEqual({ maker: 'The harbour bench' });
      expect(JSON.stringify(read)).not.toContain('Harness');
      for (const key of ['hides', 'made', 'mockup', 'outcome', 'doubts']) expect(Object.keys(read)).not.toContain(key);
      expect(fragment.length).toBeLessThan(900);
    });
  },
);

test('doubts are sent where the page would say something else without them, and only there', () => {
  const [{ document }] = EXAMPLE_JOBS;
  const withDoubt = (doubts: object) => inCurrentVersion({ ...document, doubts });
  const wide = withDoubt({ 'book.thickness_mm': { u: 2 } });
  const { job, document: read, offer: asked } = sent(wide);
  expect(read.doubts).toEqual(wide.doubts);
  expect(sheetOf(job, asked)).toEqual(sheetOf(soundJob(wide), offer));
  expect(sent(withDoubt({ 'book.jointDip_mm': { from: 'usual' } })).document.doubts).toBeUndefined();
});

describe('a link is refused with its reason', () => {
  const { fragment } = sent(EXAMPLE_JOBS[0].document);
  test.each([
    ['cut off', fragment.slice(0, -6)],
    ['of a layout to come', '#customer=9.abc'],
    ['with markup', '#customer=<b>'],
    ['of no offer', `#customer=${linkText({ job: EXAMPLE_JOBS[0].document }, 10)}`],
    ['of a job that is none', `#customer=${linkText({ offer: {}, job: { format: 'x' } }, 10)}`],
    ['of a date that is text', `#customer=${linkText({ offer: { date: '<b>' }, job: EXAMPLE_JOBS[0].document }, 10)}`],
  ])('%s', (_what, text) => {
    const read = readCustomerFragment(text);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.issues[0]?.message).toMatch(/\w/);
  });

  test('a job too long for a link gets none', () => {
    const artworks = Array.from({ length: 3 }, (_, i) => ({
      id: `${i}`.padStart(16, '0'),
      name: 'Drawing',
      kind: 'lines',
      width: 1,
      height: 1,
      lines: Array.from({ length: 30_000 }, (_, k) =>
        String.fromCharCode(65 + Math.floor(26 * ((Math.sin(k + i) * 1e4) % 1) ** 2)),
      ).join(''),
    }));
    expect(
      customerFragment(
        { ...EXAMPLE_JOBS[0].document, tooling: { artworks } },
        soundJob(EXAMPLE_JOBS[0].document),
        offer,
      ),
    ).toBeNull();
  });
});
