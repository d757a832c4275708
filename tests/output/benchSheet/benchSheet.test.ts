import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { OPTIONAL_STEPS } from '../../../src/core/job/orderSchema.ts';
import { coverSupplies } from '../../../src/core/materials/coverSupplies.ts';
import { workSteps } from '../../../src/core/materials/workSteps.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import { benchSheetContent } from '../../../src/output/benchSheet/benchSheetContent.ts';
import { benchSheetPdf } from '../../../src/output/benchSheet/benchSheetPdf.ts';
import { setInColumns } from '../../../src/output/benchSheet/sheetFlow.ts';
import { brokenLines } from '../../../src/output/brokenLines.ts';
import { defined } from '../../defined.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';
import { boundsOf } from '../outlineDistance.ts';
import { readPdf } from '../pdfReading.ts';

const designs = EXAMPLE_JOBS.map(({ id, document }) => [id, coverDesign(soundJob(document))] as const);
const tide = nth(designs, 0)[1];

/** All words of a PDF in their order, one space between them. */
const wordsOf = async (bytes: Uint8Array): Promise<string> =>
  (await readPdf(bytes)).flatMap(({ words }) => words.map(({ text }) => text)).join(' ');

/** Names of the steps, as they are numbered. */
const workNames = (design: typeof tide): string[] =>
  benchSheetContent(design).blocks.flatMap((block) =>
    block.kind === 'item' && block.box !== 'none' ? [block.text] : [],
  );

describe('the bench sheet', () => {
  test.each(designs)('of the %s takes at most two pages, inside their margins', async (_id, design) => {
    for (const paper of ['A4', 'Letter'] as const) {
      const pages = await readPdf(await benchSheetPdf(design, { paper }));
      expect(pages.length).toBeLessThanOrEqual(2);
      for (const { width, height, words } of pages)
        for (const { at } of words) {
          expect(at[0]).toBeGreaterThan(10);
          expect(at[0]).toBeLessThan(width - 10);
          expect(at[1]).toBeGreaterThan(10);
          expect(at[1]).toBeLessThan(height - 10);
        }
    }
  });

  test.each(designs)(
    'of the %s draws each piece once with what its lines mean, and fills its pages',
    async (_id, design) => {
      const pages = await readPdf(await benchSheetPdf(design));
      const [front] = pages;
      const drawing = patternDrawing(design);
      // Closed outlines in the line of a cut edge, alike in shape to the pieces.
      const outlines = front!.paths.filter(({ lineWidth, isDashed, chains }) => {
        const chain = nth(chains, 0);
        return !isDashed && Math.abs(lineWidth - 0.3) < 1e-3 && chains.length === 1 && chain.length > 4;
      });
      const shapes = outlines.map(({ chains }) => boundsOf(nth(chains, 0))).map(({ width, height }) => width / height);
      expect(shapes.map((shape) => shape.toFixed(3)).toSorted()).toEqual(
        drawing.pieces.map(({ width, height }) => (width / height).toFixed(3)).toSorted(),
      );
      const words = front!.words.map(({ text }) => text).join(' ');
      for (const name of ['cut edge', 'folds', 'seam line', 'holes and slits', 'Not in true size'])
        expect(words).toContain(name);
      expect(words).not.toContain('tooling');
      for (const { words, height, paths } of pages) {
        const ends = [
          ...words.filter(({ text }) => !/page \d of \d/.test(text)).map(({ at }) => at[1]),
          ...paths.flatMap(({ chains }) => chains.flat()).map(([, y]) => y),
        ];
        expect(ends.reduce((least, end) => Math.min(least, end))).toBeLessThan(0.2 * height);
      }
    },
  );

  test('can be read back as text: sizes, holes, lace, and every caution', async () => {
    const words = await wordsOf(await benchSheetPdf(tide));
    const supplies = coverSupplies(tide);
    for (const wanted of [
      'Tide ledger',
      `width ${tide.pieces.outside.width} mm =`,
      '2 x 165 board width',
      `${supplies.holes} slits through the cover`,
      `${(defined(supplies.lace).total / 1000).toFixed(2)} m`,
      'cut away from the hand',
      'extract it or wear a mask',
      'never toward the palm',
      'flammable and harmful',
      'safety data sheet of each product and the local rules come first',
    ])
      expect(words).toContain(wanted);
  });

  test('names the leather of the maker’s own that the cover is cut from', async () => {
    const taken = { id: 'a', revision: 1, name: 'Harness back' };
    const job = soundJob({ ...nth(EXAMPLE_JOBS, 0).document, leather: { outside: { min_mm: 1.6, max_mm: 2, taken } } });
    const { blocks } = benchSheetContent(coverDesign(job));
    expect(blocks.map(({ text }) => text)).toContain('From your leathers: Harness back.');
  });

  test('says the chance wished and reached, and what each doubt costs of an ease that is worked out', () => {
    const said = (document: object): string => {
      const { blocks } = benchSheetContent(coverDesign(soundJob({ ...nth(EXAMPLE_JOBS, 0).document, ...document })));
      const at = blocks.findIndex(({ text }) => text === 'How sure');
      const end = blocks.findIndex(({ kind }, i) => i > at && kind === 'heading');
      return blocks
        .slice(at + 1, end)
        .map(({ text }) => text)
        .join(' ');
    };
    const { doubt } = designReport(tide);
    const sized = said({});
    expect(sized).toContain(
      `Wished: fits in 95 of 100. Reached: ${Math.floor(100 * doubt.chance.fits)} of 100, if the doubts assumed are right.`,
    );
    const parts = defined(/Fore-edge ease (\d\.\d) mm: (.*?)\. Head/.exec(sized));
    const costs = [...nth(parts, 2).matchAll(/(\d\.\d\d) mm/g)].map(([, cost]) => Number(cost));
    expect(costs.length).toBeGreaterThan(2);
    expect(costs).toEqual(costs.toSorted((a, b) => b - a));
    // The smallest are left out.
    const sum = costs.reduce((a, b) => a + b, 0);
    expect(sum).toBeLessThan(Number(parts[1]) + 0.05);
    expect(sum).toBeGreaterThan(0.7 * Number(parts[1]));
    expect(said({ ease: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 } })).not.toContain('ease');
    expect(said({ making: { state: 'cased' } })).toContain('No size reaches 95 of 100.');
  });

  test('says how much larger leather is cut that shrinks until it is made', () => {
    const words = (state: string): string =>
      JSON.stringify(
        benchSheetContent(coverDesign(soundJob({ ...nth(EXAMPLE_JOBS, 0).document, making: { state } }))).blocks,
      );
    // 1 % of a width of 387 and a height of 264.5 mm, each over 1 % more.
    expect(words('cased')).toContain('The outside is cut 3.9 mm larger in width, 2.6 mm larger in height: it changes');
    expect(words('dry')).not.toContain('The outside is cut');
  });

  test('says each caution at its step', () => {
    const { blocks } = benchSheetContent(tide);
    const stepOf = (words: string): string => {
      const at = blocks.findIndex((block) => block.kind === 'caution' && block.text.includes(words));
      expect(at).toBeGreaterThan(0);
      const step = blocks.slice(0, at).findLast((block) => block.kind === 'item');
      return step?.text ?? '';
    };
    expect(stepOf('flammable')).toContain('Assemble');
    expect(stepOf('mask')).toContain('Skive');
    expect(stepOf('palm')).toContain('slits');
  });

  test('writes each caution out once, and refers to it by number at every later step', () => {
    for (const [, design] of designs) {
      const { blocks } = benchSheetContent(design);
      const steps = workSteps(design.job, coverSupplies(design));
      const said = blocks.filter(({ kind }) => kind === 'caution').map(({ text }) => text);
      expect(said).toHaveLength(steps.flatMap(({ cautions }) => cautions).length);
      const full = [...new Set(steps.flatMap(({ cautions }) => cautions))];
      full.forEach((words, i) => {
        expect(said.filter((text) => text.includes(words))).toEqual([`Caution ${i + 1}. ${words}`]);
        const uses = steps.filter(({ cautions }) => cautions.includes(words)).length;
        const again = said.filter((text) => text.startsWith(`See caution ${i + 1}: `));
        expect(again).toHaveLength(uses - 1);
        for (const text of again)
          expect(words.toLowerCase()).toContain(text.slice(text.indexOf(': ') + 2, -1).toLowerCase());
      });
      expect(said.filter((text) => text.includes('cut away from the hand'))).toHaveLength(1);
    }
  });

  const { job } = tide;
  const full = coverDesign(
    soundJob({
      ...job,
      leather: { ...job.leather, outside: { ...job.leather.outside, foldThickness_mm: 1.2 } },
      construction: { ...job.construction, strap: {}, penLoop: {}, ribbon: {} },
    }),
  );

  test('lists ribbon and fastening with the supplies, and which pieces the leather is for', () => {
    const supplies = (design: typeof tide): string[] => {
      const { blocks } = benchSheetContent(design);
      const from = blocks.findIndex((block) => block.kind === 'heading' && block.text === 'Supplies');
      const to = blocks.findIndex((block, i) => i > from && block.kind === 'heading');
      return blocks.slice(from, to).map((block) => `${block.text} ${'aside' in block ? block.aside : ''}`.trim());
    };
    const fitted = supplies(full).join('\n');
    expect(fitted).toMatch(/^Ribbon 0\.\d\d m/m);
    expect(fitted).toMatch(/^Cut 1 of 3\d\d(\.5)? mm/m);
    expect(fitted).toMatch(/^Fastening brass stud$/m);
    expect(fitted).toMatch(/in the pieces \(outside, 2 pockets?, closure strap, pen loop\)/);
    expect(supplies(tide).join('\n')).not.toMatch(/Ribbon|Fastening|strap|loop/);
  });

  test('gives what is sewn on, laid in and skived at its step', () => {
    const step = (design: typeof tide, name: string): string => {
      const { blocks } = benchSheetContent(design);
      const at = blocks.findIndex((block) => block.kind === 'item' && block.text.includes(name));
      const end = blocks.findIndex((block, i) => i > at && block.kind !== 'text');
      return blocks
        .slice(at + 1, end)
        .map(({ text }) => text)
        .join(' ');
    };
    expect(step(full, 'Fit strap, ribbon, pen loop')).toMatch(
      /First sew the strap.*stud on at its mark.*ribbon at the head.*pen loop/,
    );
    expect(step(full, 'Assemble')).toContain('Lay the pockets on');
    expect(step(full, 'Skive')).toMatch(/skived to: 1.2 mm.*Skive the outside in the hatched zones/);
    for (const name of workNames(tide)) expect(step(tide, name)).not.toMatch(/strap|stud|ribbon|loop/);
    expect(step(tide, 'Skive')).not.toContain('hatched');
  });

  test('says with its number why a step cannot be done', () => {
    const troubles = (change: object): string => {
      const { blocks } = benchSheetContent(coverDesign(soundJob({ ...nth(EXAMPLE_JOBS, 0).document, ...change })));
      const from = blocks.findIndex((block) => block.kind === 'item' && block.text.includes('Load the book'));
      return blocks
        .slice(from)
        .map(({ text }) => text)
        .join(' ');
    };
    // A board of 165 mm, 150 mm of it in the pocket: acos(1 - 0.9) = 84 degrees and more; the book bends back 60.
    const deep = troubles({ pockets: { depth_mm: 160 }, book: { ...tide.job.book, foldBack_deg: 60 } });
    expect(deep).toMatch(/do not go in: they would have to bend back 8\d degrees, more than the 60 degrees they can/);
    // The book is 240 mm high, and both seams take 2 margins off the height at least.
    expect(troubles({ pattern: { outsideHeight_mm: 240 } })).toMatch(
      /do not go in: they are [12]\d(\.\d)? mm too tall/,
    );
    const tight = troubles({ pattern: { outsideWidth_mm: 370 } });
    expect(tight).toMatch(/does not close: at the thick end of the leather it is/);
    const overrun = defined(/Overrun at each fore-edge: ([\d.]+) mm to ([\d.]+) mm/.exec(tight));
    expect(Number(overrun[1])).toBeLessThan(Number(overrun[2]));
    expect(troubles({})).toMatch(/Gap at each fore-edge: [\d.]+ to [\d.]+ mm/);
    expect(troubles({})).not.toMatch(/do not go in|does not close/);
  });

  test('keeps every caution on the page and in the column of its step', async () => {
    for (const [, design] of designs) {
      const { blocks } = benchSheetContent(design);
      const set = setInColumns(
        blocks,
        { left: 14, width: 86, between: 9, count: 2, bottom: 280, firstTop: 30, top: 14 },
        3,
        (words, size) => words.length * size * 0.5,
      );
      const columnOf = (i: number): string => `${nth(set, i).page} ${nth(set, i).left > 100}`;
      set.forEach(({ block }, i) => {
        if (block.kind !== 'caution') return;
        const step = blocks.slice(0, i).findLastIndex(({ kind }) => kind === 'item');
        expect(columnOf(i)).toBe(columnOf(step));
      });
    }
  });

  describe('follows the order of the job', () => {
    const [{ document }] = EXAMPLE_JOBS;
    const ordered = (change: object) => coverDesign(soundJob({ ...document, ...change }));
    const stepWords = (design: typeof tide, name: string): string => {
      const { blocks } = benchSheetContent(design);
      const at = blocks.findIndex((block) => block.kind === 'item' && block.text.includes(name));
      const end = blocks.findIndex((block, i) => i > at && block.kind === 'item');
      return blocks
        .slice(at, end < 0 ? undefined : end)
        .map(({ text }) => text)
        .join(' ');
    };

    test('with holes after cementing: a scribed line, its pitches, and one hole through all layers', () => {
      const after = ordered({ order: { holes: 'after cementing' } });
      const names = workNames(after).map((name) => name.replace(/^\d+\. /, ''));
      expect(names.slice(4, 8)).toEqual(['Cement the layers', 'Assemble', 'Cut the slits', 'Lace the seam']);
      const slits = stepWords(after, 'Cut the slits');
      expect(slits).toContain('Scribe the seam line 6.35 mm from the edge.');
      expect(slits).toContain(`through all layers: ${coverSupplies(after).holes}`);
      const pitches = [...slits.matchAll(/(tail|back fore-edge|head|front fore-edge) (\d+) at [\d.]+ mm/g)];
      expect(pitches.reduce((sum, [, , count]) => sum + Number(count), 0)).toBe(coverSupplies(after).holes);
      expect(stepWords(after, 'Assemble')).not.toMatch(/in line|cement a band/);
      expect(stepWords(tide, 'Assemble')).toMatch(/slits in line; cement a band/);
      expect(stepWords(tide, 'Cut the slits')).not.toContain('Scribe');
      const seam = (design: typeof tide): string =>
        benchSheetContent(design)
          .blocks.map(({ text }) => text)
          .join(' ');
      expect(seam(after)).toContain('Punched after cementing, through all layers at once.');
      expect(seam(after)).not.toContain('In the pieces: ');
      expect(seam(tide)).toContain('In the pieces: ');
    });

    test('with a strap and a pen loop, which are fitted before the holes of the seam', () => {
      const fitted = ordered({ construction: { strap: {}, penLoop: {} }, order: { holes: 'after cementing' } });
      const names = workNames(fitted).map((name) => name.replace(/^\d+\. /, ''));
      expect(names.indexOf('Fit strap and pen loop')).toBe(names.indexOf('Cement the layers') - 1);
      expect(stepWords(fitted, 'Fit strap')).toMatch(/punch the holes of the strap/);
      expect(stepWords(fitted, 'Fit strap')).not.toMatch(/in line/);
    });

    test('with clipped corners: by how much, in the unit of the job', () => {
      expect(stepWords(ordered({ order: { clip_mm: 3 } }), 'Lace the')).toContain('mark 3 mm along both edges');
      const inches = ordered({ order: { clip_mm: 3.175 }, work: { units: 'in' } });
      expect(stepWords(inches, 'Lace the')).toContain('mark 1/8 in along both edges');
      expect(stepWords(tide, 'Lace the')).not.toContain('Clip');
    });

    test('with every step there is, on two pages, each step once, and dressed once', async () => {
      const order = Object.fromEntries(OPTIONAL_STEPS.map((id) => [id, true]));
      const lined = { ...tide.job.leather, lining: { min_mm: 0.6, max_mm: 0.8 } };
      const every = ordered({
        leather: lined,
        order: { ...order, clip_mm: 3 },
        construction: { strap: {}, penLoop: {}, ribbon: {} },
      });
      const names = workNames(every);
      expect(names).toHaveLength(19);
      expect(new Set(names).size).toBe(19);
      expect(stepWords(every, 'Burnish')).not.toContain('and dress');
      const bytes = await benchSheetPdf(every);
      expect(await readPdf(bytes)).toHaveLength(2);
      const words = await wordsOf(bytes);
      for (const name of names) expect(words).toContain(name);
    });

    test('with a tick and the day at a step that is done, and a plain box at the others', async () => {
      const made = ordered({ made: { measure: null, cut: '2026-11-26', lace: '2027-03-01' } });
      const { blocks } = benchSheetContent(made);
      const boxes = blocks.flatMap((block) =>
        block.kind === 'item' && block.box !== 'none' ? [[block.text, block.aside, block.box]] : [],
      );
      expect(boxes.filter(([, , box]) => box === 'ticked')).toEqual([
        ['1. Measure and draft', '20 min, done', 'ticked'],
        ['3. Cut the leather', '25 min, done 26 Nov 2026', 'ticked'],
        ['7. Lace the seam', expect.stringMatching(/ min, done 1 Mar 2027$/), 'ticked'],
      ]);
      expect(boxes.filter(([, , box]) => box === 'open')).toHaveLength(7);
      expect(await wordsOf(await benchSheetPdf(made))).toContain('done 26 Nov 2026');
      expect(await wordsOf(await benchSheetPdf(tide))).not.toContain('done');
    });
  });

  test('has the same bytes for the same job, and other bytes for another job', async () => {
    const [once, again] = [await benchSheetPdf(tide), await benchSheetPdf(coverDesign(tide.job))];
    expect(Buffer.from(once).equals(Buffer.from(again))).toBe(true);
    expect(Buffer.from(once).equals(Buffer.from(await benchSheetPdf(nth(designs, 1)[1])))).toBe(false);
  });

  test('of a job worked in inches gives its lengths in inches', () => {
    const words = benchSheetContent(coverDesign(soundJob({ ...tide.job, work: { units: 'in' } })))
      .blocks.map(({ text }) => text)
      .join('\n');
    expect(words).toMatch(/width \d+ \d+\/\d+ in =/);
    expect(words).not.toMatch(/(^|x )0 /m);
  });

  test('prints a title in letters that the font lacks, without failing', async () => {
    const design = coverDesign({ ...tide.job, name: 'Książka 潮 – ledger' });
    expect(await wordsOf(await benchSheetPdf(design))).toContain('ledger');
  });

  test('names every piece with its count and holes, for random jobs, on few pages', async () => {
    await checkLaw(
      fc.asyncProperty(jobDocument, async (document) => {
        const design = coverDesign(soundJob({ ...document, construction: { strap: {}, ribbon: {} } }));
        const bytes = await benchSheetPdf(design);
        const words = await wordsOf(bytes);
        for (const { name } of patternDrawing(design).pieces) expect(words).toContain(name);
        expect((await readPdf(bytes)).length).toBeLessThanOrEqual(2);
      }),
      { cost: 20 },
    );
  });
});

describe('setting in columns', () => {
  const measure = (words: string, size: number): number => words.length * size * 0.5;
  const columns = { left: 10, width: 60, between: 5, count: 2, bottom: 100, firstTop: 40, top: 10 };

  test('breaks lines that fit, and loses no word', () => {
    const words = 'one two three four five six seven eight nine ten';
    const lines = brokenLines(words, 12, (line) => line.length);
    expect(lines.join(' ')).toBe(words);
    expect(lines.every((line) => line.length <= 12)).toBe(true);
    expect(brokenLines('incomprehensibilities', 5, (line) => line.length)).toEqual(['incomprehensibilities']);
  });

  test('breaks no figure from its fraction or its unit', () => {
    const lines = brokenLines('ends at 7 7/8, 9 15/32 in and 4 mm', 9, (line) => line.length);
    expect(lines).toEqual(['ends at', '7 7/8,', '9 15/32 in', 'and 4 mm']);
  });

  test('keeps every block in its column, and a heading with what follows', () => {
    const blocks = Array.from({ length: 80 }, (_, i) =>
      i % 5 === 0
        ? ({ kind: 'heading', text: `Heading ${i}`, startsPage: false } as const)
        : ({ kind: 'text', text: 'word '.repeat(1 + ((i * 7) % 23)).trim() } as const),
    );
    const set = setInColumns(blocks, columns, 3, measure);
    set.forEach(({ block, lines, top, size, page, left }, i) => {
      expect(top).toBeGreaterThanOrEqual(page === 0 ? 40 : 10);
      expect(top + lines.length * size * 1.4).toBeLessThanOrEqual(100 + 1e-9);
      const next = set[i + 1];
      if (block.kind === 'heading' && next !== undefined) {
        expect(next.page).toBe(page);
        expect(Math.abs(next.left - left)).toBeLessThan(columns.width);
      }
    });
  });
});

describe('the tooling on a bench sheet', () => {
  const tooled = (designs: readonly object[]) =>
    coverDesign(soundJob({ ...nth(EXAMPLE_JOBS, 0).document, tooling: { designs } }));

  test('is listed face by face, with its length, and where it comes too near to something, titles too', async () => {
    const words = await wordsOf(
      await benchSheetPdf(
        tooled([
          { kind: 'border', area: 'front', lines: 2 },
          { kind: 'title', area: 'spine', text: 'LEDGER', height_mm: 25 },
        ]),
      ),
    );
    expect(words).toMatch(/Tooling .*Spine .*clear.*Title “LEDGER” on both centre lines\./);
    expect(words).toMatch(/The title (goes .* beyond|runs over|comes .* from) the spine fold/);
    expect(words).toMatch(/Front .*clear.*Border of two lines along the clear part\. About [\d.]+ m of line\./);
    expect(words).toMatch(/Tool the design.*Designs: 2\. In all: about [\d.]+ m of line/);
  });

  test('is not named where there is none', async () => {
    expect(await wordsOf(await benchSheetPdf(tooled([])))).not.toMatch(/tooling|of line/i);
  });
});
