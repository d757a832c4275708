import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import choirBook from '../../../public/jobs/choir-book.json' with { type: 'json' };
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { flattened, segmentEnd, segmentStart } from '../../../src/core/math/contour.ts';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import type { Drawing, Entity, PieceDrawing } from '../../../src/core/pattern/drawing.ts';
import { halfCard } from '../../../src/core/pattern/halfCard.ts';
import { oneCard } from '../../../src/core/pattern/oneCard.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { type Draft, draftingSheet } from '../../../src/output/draftingSheet/draftingSheet.ts';
import { draftingSheetPdf } from '../../../src/output/draftingSheet/draftingSheetPdf.ts';
import { coverOf } from '../../core/pattern/coverOf.ts';
import { TURNED } from '../../core/pattern/plainSource.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';
import { constructedJob } from '../../property/constructionArbitrary.ts';
import { apart, toChain } from '../outlineDistance.ts';
import { readPdf } from '../pdfReading.ts';
import { drawnByHand, lengthOf } from './drawnByHand.ts';

const CARDS = { pieces: patternDrawing, one: oneCard, half: halfCard } as const;

/** Every draft of a random job, worked in either unit, on any cards. */
const everyDraft = (cost: number, check: (draft: Draft, design: CoverDesign, drawing: Drawing) => void) =>
  checkLaw(
    fc.property(
      constructedJob,
      fc.constantFrom('mm' as const, 'in' as const),
      fc.constantFrom('pieces' as const, 'one' as const, 'half' as const),
      (document, units, cards) => {
        const design = coverDesign(soundJob({ ...document, work: { units } }));
        const drawing = CARDS[cards](design);
        for (const draft of draftingSheet(design, drawing).drafts) check(draft, design, drawing);
      },
    ),
    { cost },
  );

const edgeOf = ({ outline }: PieceDrawing): Vec2[] => flattened(outline, 1e-3);

/** Lines of a layer from tail to head, as chains. */
const chainsOf = ({ layers }: PieceDrawing, layer: 'centre' | 'mouth' | 'lining' | 'fold'): Vec2[][] =>
  layers[layer].flatMap((entity: Entity) => {
    if (entity.kind !== 'line' && entity.kind !== 'arc') return [];
    const isUpright = Math.abs(segmentStart(entity)[0] - segmentEnd(entity)[0]) < 1e-6;
    return isUpright ? [flattened([entity], 1e-3)] : [];
  });

const NAMES = { centre: /^Centre line/, mouth: /^Mouth/, lining: /^End of the lining/, fold: /^Fold/ } as const;

describe('the drafting sheet, followed sentence by sentence', () => {
  test('gives the cut edge of every piece within 0.1 mm, in mm and in inches', () => {
    let worst = 0;
    everyDraft(2, ({ steps, piece }) => {
      const { outline } = drawnByHand(steps);
      const off = Math.max(apart(outline, edgeOf(piece)), apart(edgeOf(piece), outline));
      worst = Math.max(worst, off);
      expect([piece.name, steps, off < 0.1 ? 0 : off]).toEqual([piece.name, steps, 0]);
    });
    expect(worst).toBeGreaterThan(0);
    console.info(`outline drawn by hand within ${worst.toFixed(3)} mm`);
  });

  test('gives the mouths, the ends of the lining and the centre line within 0.1 mm, folds to what a rule shows', () => {
    everyDraft(4, ({ steps, piece }, design) => {
      const { lines } = drawnByHand(steps);
      for (const [layer, name] of Object.entries(NAMES) as [keyof typeof NAMES, RegExp][]) {
        const wanted = chainsOf(piece, layer).filter((chain) => nth(chain, 0)[0] !== 0);
        const drawn = lines.filter((line) => name.test(line.name));
        expect([piece.name, layer, drawn.length]).toEqual([piece.name, layer, wanted.length]);
        // Half of 1/32 in, or of 0.1 mm.
        const within = layer !== 'fold' ? 0.1 : design.job.work.units === 'in' ? 0.4 : 0.051;
        for (const { points } of drawn)
          expect(Math.min(...wanted.map((chain) => Math.max(apart(points, chain), apart(chain, points))))).toBeLessThan(
            within,
          );
      }
    });
  });

  test('has diagonals to check by that hold on the drawing, to what a rule shows', () => {
    everyDraft(8, ({ steps }, design) => {
      const { checks } = drawnByHand(steps);
      expect(checks).toHaveLength(3);
      const within = design.job.work.units === 'in' ? 0.45 : 0.06;
      for (const { said, drawn } of checks) expect(Math.abs(said - drawn)).toBeLessThan(within);
    });
  });

  test('leaves no sentence over but those of the holes, the fold and the strap', () => {
    everyDraft(8, ({ steps }) => {
      for (const step of drawnByHand(steps).left)
        expect(step).toMatch(
          /hole|Seam lines?: draw|divide (?:it|each) likewise|^Tail and head: |^Each hole is a slit|^AD lies on the folded edge|^The strap is sewn/,
        );
    });
  });

  test('has the holes of a square-cornered cover, from its margin, its corners and the numbers of spaces', () => {
    const square = { corners: 'square' as const };
    let holes = 0;
    checkLaw(
      fc.property(constructedJob, fc.constantFrom('mm' as const, 'in' as const), (document, units) => {
        const job = {
          ...document,
          construction: { ...document.construction, ...square, strap: null },
          work: { units },
        };
        const design = coverDesign(soundJob(job));
        if (design.pieces.pocket.count === 0) return;
        const draft = nth(draftingSheet(design, patternDrawing(design)).drafts, 0);
        const said = draft.steps.join(' ');
        const found = (words: RegExp): string => defined(defined(said.match(words))[1]);
        const margin = lengthOf(found(/Seam line: draw it ([^ ]+(?: \d+\/\d+)? (?:mm|in)) inside every edge/));
        const ends = Number(
          found(/Tail and head: from corner hole to corner hole divide the seam line into (\d+) space/),
        );
        const sides = Number(found(/Fore-edges: divide each likewise into (\d+) space/));
        const { width, height } = draft.piece;
        const share = (from: number, to: number, k: number, n: number): number => from + ((to - from) * k) / n;
        const drawn = [
          ...Array.from({ length: ends + 1 }, (_, k) => share(margin, width - margin, k, ends)).flatMap((x): Vec2[] => [
            [x, margin],
            [x, height - margin],
          ]),
          ...Array.from({ length: sides - 1 }, (_, k) => share(margin, height - margin, k + 1, sides)).flatMap(
            (y): Vec2[] => [
              [margin, y],
              [width - margin, y],
            ],
          ),
        ];
        const wanted = draft.piece.layers.hole.map((hole): Vec2 => {
          if (hole.kind === 'arc') return hole.centre;
          if (hole.kind !== 'line') throw new Error(`a hole drawn as ${hole.kind}`);
          return [(hole.from[0] + hole.to[0]) / 2, (hole.from[1] + hole.to[1]) / 2];
        });
        expect(drawn).toHaveLength(wanted.length);
        for (const [x, y] of drawn)
          expect(Math.min(...wanted.map(([u, v]) => Math.hypot(u - x, v - y)))).toBeLessThan(0.1);
        holes += drawn.length;
      }),
      { cost: 8 },
    );
    expect(holes).toBeGreaterThan(0);
  });
});

describe('the words of the drafting sheet', () => {
  const stepsOf = (design: CoverDesign, drawing = patternDrawing(design)): readonly string[] =>
    nth(draftingSheet(design, drawing).drafts, 0).steps;

  test('give the cut sizes of the job as they are cut, in its unit', () => {
    const inches = coverDesign(soundJob({ ...choirBook, work: { units: 'in' } }));
    const steps = stepsOf(inches);
    expect(nth(steps, 1)).toMatch(/^From A measure [\d /]+ in along it to B\.$/);
    expect(lengthOf(defined(defined(nth(steps, 1).match(/measure (.*) along/))[1]))).toBeCloseTo(
      inches.pieces.outside.width,
      9,
    );
  });

  test('count a row up every tenth space, so that the dividers do not stray', () => {
    const steps = stepsOf(coverOf());
    const row = defined(steps.find((step) => step.startsWith('Check there')));
    const places =
      defined(row.match(/ends at (.*) mm from/))[1]
        ?.split(', ')
        .map(Number) ?? [];
    const pitch = lengthOf(defined(defined(steps.join(' ').match(/spaces of ([\d.]+ mm)/))[1]));
    for (const [i, place] of places.entries())
      expect(Math.abs(place - 10 * (i + 1) * pitch)).toBeLessThan(0.05 + 0.05 * (i + 1));
  });

  test('say where the seam starts, counted from the back corner of the tail', () => {
    const design = coverOf();
    const said = defined(stepsOf(design).find((step) => step.startsWith('The seam starts')));
    const count = Number(defined(said.match(/tail, (\d+) holes from the back corner/))[1]);
    const seam = seamHoles(design);
    const [start, tail] = [nth(seam.starts, 0), nth(seam.rows, 0)];
    // In the frame of the seam the back corner is a margin from the far edge.
    const x = design.pieces.outside.width - design.job.seam.edgeMargin_mm - count * tail.pitch;
    expect(start.at[0]).toBeCloseTo(x, 6);
    expect(start.side).toBe('tail');
  });

  test('say that the holes can be left out where they are made after cementing', () => {
    const notes = (order: object): string => {
      const design = coverOf({ order });
      return draftingSheet(design, patternDrawing(design)).notes.join(' ');
    };
    expect(notes({ holes: 'after cementing' })).toContain('Your order makes the holes after cementing');
    expect(notes({})).not.toContain('Your order');
  });

  test('say of turned ends how far the row begins from the edge, and to prick it through the fold', () => {
    const steps = stepsOf(coverOf(TURNED));
    expect(steps.join(' ')).toContain('Prick the holes that it covers through it.');
    expect(steps.filter((step) => step.startsWith('Fold of the turned end'))).toHaveLength(4);
    expect(steps.filter((step) => step.startsWith('Fold at the spine'))).toHaveLength(2);
  });

  test('are all on the PDF, on A4 and on Letter, none of them cut off', async () => {
    const design = coverOf({ construction: { strap: {}, penLoop: {} } });
    const sheet = draftingSheet(design, patternDrawing(design));
    for (const paper of ['A4', 'Letter'] as const) {
      const pages = await readPdf(await draftingSheetPdf(sheet, { paper }));
      const squeezed = (text: string): string => text.replaceAll(/\s+/g, '');
      const read = squeezed(pages.flatMap(({ words }) => words.map(({ text }) => text)).join(''));
      for (const draft of sheet.drafts) for (const step of draft.steps) expect(read).toContain(squeezed(step));
      for (const page of pages)
        for (const { at, width, text } of page.words) {
          if (text.trim() === '') continue;
          expect(at[0]).toBeGreaterThan(8);
          expect(at[0] + width).toBeLessThan(page.width - 8);
          expect(at[1]).toBeGreaterThan(8);
        }
    }
  });

  test('have every letter of the corners on the figure, outside the piece', async () => {
    const design = coverOf();
    const pages = await readPdf(await draftingSheetPdf(draftingSheet(design, patternDrawing(design))));
    const letters = nth(pages, 0).words.filter(({ text }) => /^[A-D]$/.test(text));
    expect(letters.slice(0, 4).map(({ text }) => text)).toEqual(['A', 'B', 'C', 'D']);
    const cut = defined(nth(pages, 0).paths.find(({ chains }) => nth(chains, 0).length >= 4));
    const chain = nth(cut.chains, 0);
    for (const { at } of letters.slice(0, 4)) expect(toChain(at, chain)).toBeGreaterThan(0.3);
  });
});
