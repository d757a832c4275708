import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { strToU8, zlibSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import type { JobRecord } from '../../../src/core/job/migrate.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { isShareFragment } from '../../../src/output/shareLink/isShareFragment.ts';
import { LINK_DICTIONARIES } from '../../../src/output/shareLink/linkDictionary.ts';
import { MAX_LINK_CHARACTERS } from '../../../src/output/shareLink/linkText.ts';
import {
  shareFragment as fragmentOf,
  readShareFragment,
  withoutDrawings,
} from '../../../src/output/shareLink/shareLink.ts';
import { defined } from '../../defined.ts';
import { jobDocument } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';

/** The fragment of a job that is short enough to have one. */
function shareFragment(document: JobRecord): string {
  const fragment = fragmentOf(document);
  if (fragment === null) throw new Error('too long for a link');
  return fragment;
}

const tideLedger = EXAMPLE_JOBS[0].document;

/** A link around any bytes, packed as the real ones are. */
function linkAround(bytes: Uint8Array, dictionary = LINK_DICTIONARIES[1]): string {
  const packed = zlibSync(bytes, { level: 9, dictionary });
  return `#job=1.${Buffer.from(packed).toString('base64url')}`;
}

const codesOf = (fragment: string) => {
  const opened = readShareFragment(fragment);
  return opened.ok ? [] : opened.issues.map(({ code }) => code);
};
const pathsOf = (fragment: string) => {
  const opened = readShareFragment(fragment);
  return opened.ok ? [] : opened.issues.map(({ path }) => path);
};

describe('a share link', () => {
  test('gives back the job that went in, as written', () => {
    checkLaw(
      fc.property(jobDocument, fc.string({ unit: 'binary', maxLength: 200 }), (drawn, name) => {
        const document = JSON.parse(JSON.stringify({ ...drawn, name }));
        const opened = readShareFragment(shareFragment(document));
        expect(opened.ok && opened.document).toEqual(document);
        expect(opened.ok && opened.job).toEqual((parseJob(document) as { job: unknown }).job);
      }),
    );
  });

  test('made by the first version still opens', () => {
    const kept = '#job=1.ePlvp8i-IzUonTPyM4sUwKFJZKCCymHkQAW1ZlAD1RRU3GMGKrCsJTZBEAxVQjmRxOICfwlESR4AAG-tgXQ';
    const opened = readShareFragment(kept);
    // It was written when an ease left out was 1 mm.
    expect(opened.ok && opened.document).toEqual({
      ...EXAMPLE_JOBS[1].document,
      ease: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 },
    });
  });

  test('made by the second version still opens', () => {
    const kept = '#job=2.ePnad5THIzUonTPyM4sUwKFJZKCCGrjIgQrqJqIGqimoHY0ZqMBGLLE1LcFQJdTEIbEdhr9pR0njAgBxF4F1';
    const opened = readShareFragment(kept);
    expect(opened.ok && opened.job).toEqual((parseJob(EXAMPLE_JOBS[1].document) as { job: unknown }).job);
  });

  test('made by the third version still opens', () => {
    const kept = '#job=3.ePn08aAtIzUqnDPyM4sUwKFMZGCDqinkwAblDNTANgWNTmIGNtBSYscvCIY2oYEjEke38A-YUTBkgzOeAPW9iTU';
    const opened = readShareFragment(kept);
    expect(opened.ok && opened.document).toEqual(EXAMPLE_JOBS[1].document);
  });

  test('made by the fourth version still opens', () => {
    const kept = '#job=4.ePkwUgJ9IzUqgoGFQ6pCeinIPxihjTzQjRTchsDARO7pWABrF9TgNgROpVFxZJyUUVfgDCByaBkDx6RxhxYAlfpjxQ';
    const opened = readShareFragment(kept);
    expect(opened.ok && opened.document).toEqual(EXAMPLE_JOBS[2].document);
  });

  test.each([
    [1, '603ad3ee4f59dde3bfa6b4377d4eb007bb342ce9ff3bec1909426269eefae00d'],
    [2, 'e4333847b7dddddf19ec39c935142eff218e0281047493b49b97344fa8930701'],
    [3, '1311cbc4d2835b04d4c841ecf3137d78b8b0f1b9cbeb24c060ccfec918931e2d'],
    [4, '60a4f9073809eced0fb797f0f82931247ca1359f1c8f9a03ad9c05e6d95509c8'],
    [5, '3d9606c875ba411f2a0144bfd02de21e6f20eb82c257351b5288521185e5502b'],
  ] as const)('of layout %i is compressed against a text that never changes', (layout, hash) => {
    expect(createHash('sha256').update(LINK_DICTIONARIES[layout]).digest('hex')).toBe(hash);
  });

  test.each(EXAMPLE_JOBS)('of $id stays short enough for any message', ({ document }) => {
    expect(shareFragment(document).length).toBeLessThan(200);
  });

  test('with every default written out stays under 250 characters', () => {
    const parsed = parseJob(tideLedger);
    if (!parsed.ok) throw new Error('the tide ledger does not parse');
    expect(shareFragment(parsed.job).length).toBeLessThan(250);
  });

  test('is not made of a job too large to be read back', () => {
    const long = (count: number) => ({ ...tideLedger, note: Array.from({ length: count }, (_, i) => Math.sin(i)) });
    expect(fragmentOf(long(100))).not.toBeNull();
    expect(fragmentOf(long(3000))).toBeNull();
    expect(fragmentOf({ ...tideLedger, name: ' '.repeat(200_000) })).toBeNull();
  });

  test('holds at most 128,000 bytes', () => {
    const named = (name: string) => ({ ...tideLedger, name });
    const spare = 128_000 - JSON.stringify(named('')).length;
    expect(fragmentOf(named(' '.repeat(spare)))).not.toBeNull();
    expect(fragmentOf(named(' '.repeat(spare + 1)))).toBeNull();
    const padded = (more: number) => strToU8(JSON.stringify(named('')) + ' '.repeat(spare + more));
    expect([0, 1].map((more) => codesOf(linkAround(padded(more))))).toEqual([[], ['unreadable']]);
  });

  test('of any length holds only characters that an address may have unescaped, and opens with # or without', () => {
    for (let length = 0; length < 200; length++) {
      const name = Array.from({ length }, (_, i) => String.fromCodePoint(33 + ((i * 37 + length) % 90))).join('');
      const fragment = shareFragment({ ...tideLedger, name });
      expect(fragment).toMatch(/^#job=5\.[A-Za-z0-9_-]+$/);
      for (const text of [fragment, fragment.slice(1)]) {
        const opened = readShareFragment(text);
        expect(opened.ok && opened.job.name).toBe(name);
      }
    }
  });
});

describe('a bad share link', () => {
  test.each([
    ['nothing', ''],
    ['another fragment', '#section-3'],
    ['no content', '#job=1.'],
    ['no layout', '#job=AAAA'],
    ['a foreign character', `${shareFragment(tideLedger)}%`],
    ['its end cut off', shareFragment(tideLedger).slice(0, -1)],
    ['something added', `${shareFragment(tideLedger)}AAAA`],
    ['a layout to come', shareFragment(tideLedger).replace('=5.', '=6.')],
    ['another dictionary', linkAround(strToU8(JSON.stringify(tideLedger)), strToU8('another'))],
    ['text that is not JSON', linkAround(strToU8('tide ledger'))],
    ['bytes that are not text', linkAround(new Uint8Array([0x22, 0xff, 0xfe, 0x22]))],
    ['too long', `#job=1.${'A'.repeat(MAX_LINK_CHARACTERS)}`],
    ['too much inside', linkAround(strToU8(' '.repeat(10_000_000)))],
    ['too much inside of a sound job', linkAround(strToU8(JSON.stringify(tideLedger) + ' '.repeat(128_000)))],
  ])('with %s is refused at (link)', (_what, fragment) => expect(pathsOf(fragment)).toEqual(['(link)']));

  test.each([
    ['too long, over 16,000 characters', 'A'.repeat(16_001), 'too_large'],
    ['of no meaning, of 16,000 characters', 'A'.repeat(16_000), 'unreadable'],
    ['with something before it', `a${shareFragment(tideLedger)}`, 'unreadable'],
    ['of a layout far to come', '#job=1234.AAAA', 'choice'],
    ['of a layout of too many digits', '#job=12345.AAAA', 'unreadable'],
    ['of no bytes', '#job=1.AA', 'unreadable'],
    ['of an impossible length of base64', '#job=1.AAAAA', 'unreadable'],
  ])('%s says so', (_what, fragment, code) => expect(codesOf(fragment)).toEqual([code]));

  test('with an invalid job inside says what is wrong with the job', () => {
    expect(pathsOf(shareFragment({ ...tideLedger, book: {} }))).toEqual([
      'book.width_mm',
      'book.height_mm',
      'book.thickness_mm',
    ]);
    expect(pathsOf(shareFragment({ ...tideLedger, version: 9 }))).toEqual(['version']);
  });

  test('never throws: 10,000 fragments of any characters and of any bytes', () => {
    const anyBytes = fc.uint8Array({ maxLength: 400 });
    const fragment = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.base64String().map((text) => `#job=1.${text.replace(/[+/=]/g, '-')}`),
      anyBytes.map((bytes) => `#job=1.${Buffer.from(bytes).toString('base64url')}`),
      anyBytes.map((bytes) => linkAround(bytes)),
      fc.json().map((text) => linkAround(strToU8(text))),
    );
    checkLaw(
      fc.property(fragment, (text) => {
        const opened = readShareFragment(text);
        expect(opened.ok).toBe(false);
        expect(!opened.ok && opened.issues.length).toBeGreaterThan(0);
      }),
      { cost: 0.02 },
    );
  });

  test('opens nothing but what was sent: 10,000 damaged links', () => {
    const edit = fc.record({
      kind: fc.constantFrom('replace' as const, 'drop' as const, 'repeat' as const, 'swap' as const),
      at: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
      span: fc.integer({ min: 1, max: 6 }),
      with: fc.constantFrom(...'ABCXYZabcxyz0189-_'),
    });
    const links = EXAMPLE_JOBS.map(({ document }) => ({ document, link: shareFragment(document) }));
    checkLaw(
      fc.property(fc.constantFrom(...links), fc.array(edit, { minLength: 1, maxLength: 4 }), (sent, edits) => {
        const damaged = edits.reduce((text, { kind, at, span, with: letter }) => {
          const from = Math.floor(at * text.length);
          const part = text.slice(from, from + span);
          const changed = {
            replace: letter.repeat(part.length),
            drop: '',
            repeat: part + part,
            swap: [...part].reverse().join(''),
          };
          return text.slice(0, from) + changed[kind] + text.slice(from + span);
        }, sent.link);
        const opened = readShareFragment(damaged);
        // An edit may change nothing, or only the unused bits of the last character.
        if (opened.ok) expect(opened.document).toEqual(sent.document);
      }),
      { cost: 0.02 },
    );
  });
});

test('a fragment that claims to be a job is told apart from any other', () => {
  expect(isShareFragment('#job=broken')).toBe(true);
  expect(isShareFragment(shareFragment(tideLedger))).toBe(true);
  expect(isShareFragment('job=1.A')).toBe(true);
  expect(isShareFragment('#bench')).toBe(false);
  expect(isShareFragment('#bench#job=1.A')).toBe(false);
  expect(isShareFragment('')).toBe(false);
});

describe('a job without its drawings', () => {
  const border = { kind: 'border', area: 'front' };
  const artwork = { id: 'a', name: 'fish', kind: 'lines', width: 100, height: 50, lines: 'm0,0 100,50' };
  const tooled = (artworks: unknown[], designs: unknown[]): JobRecord => ({
    ...tideLedger,
    tooling: { depth_mm: 0.3, artworks, designs },
  });

  test('keeps its borders and titles and every other field, and opens', () => {
    const title = { kind: 'title', area: 'spine', text: 'Tides' };
    const job = tooled([artwork], [border, { kind: 'drawing', area: 'back', artwork: 'a' }, title]);
    const rest = withoutDrawings(job);
    expect(rest).toEqual({ ...tideLedger, tooling: { depth_mm: 0.3, designs: [border, title] } });
    expect(readShareFragment(shareFragment(defined(rest)))).toMatchObject({ ok: true });
  });

  test('is none where the job has no drawing', () => {
    expect(withoutDrawings(tideLedger)).toBeNull();
    expect(withoutDrawings({ ...tideLedger, tooling: { designs: [border] } })).toBeNull();
  });

  test('is what a link holds where the drawings are too long for it', () => {
    // Digits without a rhythm, which do not compress.
    const long = Array.from({ length: 8000 }, (_, i) => `${(i * 7919) % 9973},${(i * 104_729) % 9967}`).join(' ');
    const job = tooled([{ ...artwork, lines: `m${long}` }], [border]);
    expect(fragmentOf(job)).toBeNull();
    expect(fragmentOf(defined(withoutDrawings(job)))).toMatch(/^#job=/);
  });
});
