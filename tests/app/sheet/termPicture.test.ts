import { describe, expect, test } from 'vitest';
import { termPicture } from '../../../src/app/sheet/termPicture.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { TERM_DRAWINGS, type TermPart } from '../../../src/core/words/term.ts';
import { termOf } from '../../../src/core/words/vocabulary.ts';
import { WORDS } from '../../../src/core/words/words.ts';
import { defined } from '../../defined.ts';

const designOf = (changes: object) => {
  const parsed = parseJob({ ...BASE, ...changes });
  if (!parsed.ok) throw new Error(parsed.issues.map(({ message }) => message).join('\n'));
  return coverDesign(parsed.job);
};

const BASE = {
  format: 'coverwright-job',
  version: 2,
  book: {
    width_mm: 160,
    height_mm: 240,
    thickness_mm: 40,
    boardThickness_mm: 3,
    spine: { shape: 'rounded', rise_mm: 9 },
  },
  leather: { outside: { min_mm: 1.6, max_mm: 2 }, lining: { min_mm: 0.8, max_mm: 1 } },
};

const turned = { pockets: { construction: 'turned' } };

const litIn = (picture: ReturnType<typeof termPicture>): string[] =>
  defined(picture).marks.flatMap(({ kind, d }) => (kind.startsWith('lit') ? [d] : []));

/** Coordinates of path data that has lines only. */
const pointsOf = (d: string): [number, number][] =>
  [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

const extent = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

describe('the picture of a term', () => {
  const parts = Object.entries(TERM_DRAWINGS).flatMap(([drawing, names]) =>
    names.map((name) => `${drawing}.${name}` as TermPart),
  );

  test.each(parts)('%s lights something that lies within its drawing', (part) => {
    const picture = defined(termPicture(designOf(part === 'pattern.ends' ? turned : {}), part));
    const [left, top, width, height] = picture.box;
    const points = litIn(picture).flatMap(pointsOf);
    expect(litIn(picture).length).toBeGreaterThan(0);
    for (const [x, y] of points) {
      expect(x).toBeGreaterThan(left);
      expect(x).toBeLessThan(left + width);
      expect(y).toBeGreaterThan(top);
      expect(y).toBeLessThan(top + height);
    }
  });

  test('every part of a drawing is the meaning of a term', () => {
    const shown = WORDS.map((word) => termOf(word).shown);
    expect(parts.filter((part) => !shown.includes(part))).toEqual([]);
  });

  test('a gap is as wide as the fit says, and a rise as long as it is given', () => {
    const design = designOf({ ease: { foreEdge_mm: 3 } });
    const gap = pointsOf(defined(litIn(termPicture(design, 'edge.gap'))[0]));
    expect(extent(gap.map(([x]) => x))).toBeCloseTo(design.fits.nominal.foreEdge.front, 1);
    const rise = pointsOf(defined(litIn(termPicture(design, 'spine.rise'))[0]));
    expect(extent(rise.map(([x]) => x))).toBeCloseTo(9, 2);
  });

  test('a book that lies open lies across the drawing, and one a little open is not flat', () => {
    const { book } = designOf({}).job;
    const spread = (part: TermPart) => pointsOf(litIn(termPicture(designOf({}), part)).join(' '));
    const flat = spread('open.boards');
    expect(extent(flat.map(([x]) => x))).toBeGreaterThan(2 * book.width_mm);
    expect(extent(flat.map(([, y]) => y))).toBeLessThan(book.thickness_mm);
    const ajar = spread('ajar.wrap');
    // Each board has turned by 15 degrees.
    expect(extent(ajar.map(([, y]) => y))).toBeGreaterThan(book.thickness_mm + book.width_mm * Math.sin(Math.PI / 12));
  });

  test('the pages are squashed where the pockets lie on them', () => {
    const design = designOf({});
    const lit = pointsOf(litIn(termPicture(design, 'edge.squash')).join(' '));
    const { book } = design.needs.nominal;
    // Drawn to 0.01 mm.
    const off = (x: number, wanted: number): number => Math.abs(x - wanted);
    expect(off(Math.min(...lit.map(([x]) => x)), book.width - design.fits.nominal.pocket.held)).toBeLessThan(0.0051);
    expect(off(Math.max(...lit.map(([x]) => x)), book.width - book.square)).toBeLessThan(0.0051);
  });

  test('what a cover does not have is not drawn', () => {
    const plain = designOf({
      leather: { outside: BASE.leather.outside },
      book: { ...BASE.book, spine: { shape: 'flat' } },
    });
    expect(termPicture(plain, 'edge.lining')).toBeNull();
    expect(termPicture(plain, 'spine.rise')).toBeNull();
    expect(termPicture(plain, 'pattern.ends')).toBeNull();
    expect(termPicture(designOf(turned), 'edge.margin')).toBeNull();
  });

  test.each(EXAMPLE_JOBS)(
    'every term of $id is drawn or left out, never with a point that is no number',
    ({ document }) => {
      const parsed = parseJob(document);
      if (!parsed.ok) throw new Error('an example does not parse');
      const design = coverDesign(parsed.job);
      for (const part of parts) expect(JSON.stringify(termPicture(design, part))).not.toMatch(/NaN|Infinity|null,/);
    },
  );
});
