import { describe, expect, test } from 'vitest';
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { cardDesign } from '../../../src/core/mockup/cardDesign.ts';
import type { Drawing, PieceDrawing, PieceId } from '../../../src/core/pattern/drawing.ts';
import { LAYERS } from '../../../src/core/pattern/drawing.ts';
import { liningDifference, wrapPlaces } from '../../../src/core/pattern/foldZones.ts';
import { hatchLines } from '../../../src/core/pattern/hatchLines.ts';
import { mirroredDrawing } from '../../../src/core/pattern/mirrorDrawing.ts';
import { patternDrawing, unwrittenWords } from '../../../src/core/pattern/patternDrawing.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { strapOf } from '../../../src/core/pattern/strap.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import { type Change, coverOf } from './coverOf.ts';
import { LINED, plainSource, TURNED } from './plainSource.ts';

const lined = { lining: { min_mm: 0.7, max_mm: 0.7 } };
const piece = (drawing: Drawing, id: PieceId): PieceDrawing => defined(drawing.pieces.find((each) => each.id === id));
const textOf = (each: PieceDrawing): string =>
  LAYERS.flatMap((layer) => each.layers[layer].flatMap((entity) => (entity.kind === 'text' ? [entity.text] : []))).join(
    '\n',
  );

describe('the drawing of a pattern', () => {
  const design = coverOf({
    leather: lined,
    seam: { cornerRadius_mm: 10 },
    construction: { strap: {}, penLoop: {}, ribbon: { count: 2 } },
  });
  const drawing = patternDrawing(design);

  test('has one group for each piece, with how often it is cut', () => {
    expect(drawing.pieces.map(({ id, count }) => [id, count])).toEqual([
      ['outside', 1],
      ['pocket', 2],
      ['lining', 1],
      ['strap', 1],
      ['penLoop', 1],
    ]);
    expect(drawing.lengths.map(({ name, count }) => [name, count])).toEqual([['Ribbon', 2]]);
  });

  test('has the sizes of the cut pieces', () => {
    const { outside, pocket, lining } = design.pieces;
    expect(piece(drawing, 'outside')).toMatchObject({ width: outside.width, height: outside.height });
    expect(piece(drawing, 'pocket')).toMatchObject({ width: pocket.width, height: pocket.height });
    expect(piece(drawing, 'lining')).toMatchObject({ width: lining!.width, height: lining!.height });
  });

  test('explains every size by a sum that adds up', () => {
    const sums = [...drawing.pieces.flatMap((each) => each.sums), ...drawing.lengths.map(({ sum }) => sum)];
    expect(sums.length).toBeGreaterThanOrEqual(11);
    for (const { total, parts } of sums)
      expect(parts.reduce((sum, { times, each }) => sum + times * each, 0)).toBeCloseTo(total, 9);
  });

  test('names each piece, its side and its count on the piece itself', () => {
    expect(textOf(piece(drawing, 'outside'))).toMatch(/Outside\ncut 1, grain side up/);
    expect(textOf(piece(drawing, 'pocket'))).toMatch(/cut 2, grain side up/);
    for (const id of ['outside', 'pocket', 'lining'] as const)
      expect(textOf(piece(drawing, id))).toContain("this way along the hide's backbone");
    for (const word of ['front', 'back', 'head', 'tail', 'start', 'finish'])
      expect(textOf(piece(drawing, 'outside')).split('\n')).toContain(word);
  });

  test('in card speaks of no grain and no hide: it has an outside face, and no arrow', () => {
    const { job } = coverOf({
      leather: { lining: { min_mm: 0.7, max_mm: 0.8 } },
      construction: { strap: {}, penLoop: {} },
    });
    const card = patternDrawing(cardDesign(job, job.mockup.card));
    expect(card.pieces).toHaveLength(5);
    for (const [drawn, face] of [
      [card, 'outside face up'],
      [mirroredDrawing(card), 'inside face up'],
    ] as const)
      for (const each of drawn.pieces) {
        const said = [textOf(each), ...each.unwritten].join('\n');
        expect(said).toContain(`cut ${each.count}, ${face}`);
        expect(said).not.toMatch(/grain|flesh|hide|direction/);
        expect(each.layers.direction).toEqual([]);
      }
  });

  test('draws no skive zone unless the leather is skived, and then one over each fold', () => {
    expect(piece(drawing, 'outside').layers.skive).toEqual([]);
    const skived = coverOf({ leather: { outside: { foldThickness_mm: 1 } } });
    const zones = piece(patternDrawing(skived), 'outside').layers.skive;
    const { folds } = wrapPlaces(skived);
    expect(zones.length).toBe(folds.length);
    expect(zones.length).toBe(2);
  });

  test('puts the folds of a flat back one spine path and one bend apart', () => {
    const plain = coverOf();
    const { folds } = wrapPlaces(plain);
    const middles = folds.map(({ from, to }) => (from + to) / 2);
    const { thickness, neutral } = plain.needs.thick.leathers.outside;
    expect(nth(middles, 1) - nth(middles, 0)).toBeCloseTo(28 + (Math.PI / 2) * neutral * thickness, 9);
    expect(nth(middles, 0) + nth(middles, 1)).toBeCloseTo(plain.pieces.outside.width, 9);
  });

  test('counts what it draws', () => {
    const seam = seamHoles(design);
    const holes = seam.rows.flatMap((row) => row.holes);
    expect(drawing.holes).toBe(holes.length);
    expect(piece(drawing, 'pocket').layers.hole.length).toBe(
      holes.filter(({ layers }) => layers.includes('frontPocket')).length,
    );
    for (const each of drawing.pieces) expect(each.layers.hole.length).toBe(each.holes);
  });

  test('of a job worked in inches is drawn and labelled in sixteenths', () => {
    const outside = piece(patternDrawing(coverOf({ work: { units: 'in' } })), 'outside');
    expect(outside.width / 1.5875).toBeCloseTo(Math.round(outside.width / 1.5875), 9);
    expect(textOf(outside)).toMatch(/width 15 \d+\/(2|4|8|16) in =/);
  });

  test('mirrored twice is the same again, but for the words', () => {
    const twice = mirroredDrawing(mirroredDrawing(drawing));
    for (const [i, each] of twice.pieces.entries()) {
      for (const layer of ['cut', 'seam', 'hole', 'fold'] as const)
        expect(JSON.parse(JSON.stringify(each.layers[layer]))).toEqual(nearly(nth(drawing.pieces, i).layers[layer]));
    }
    expect(textOf(nth(mirroredDrawing(drawing).pieces, 0))).toContain('flesh side up');
  });
});

describe('what is said beside the pattern', () => {
  const said = (change: Change = {}) => patternDrawing(plainSource(change)).notes;
  const SEWN = 'Sew the strap to the back of the cover before the pockets are joined.';

  test('is nothing for a plain cover', () => expect(said()).toEqual([]));

  test('is when to sew the strap', () => expect(said({ construction: { strap: {} } })).toEqual([SEWN]));

  test('is that no hole catches the pen loop, where the fore-edge has its corners alone', () => {
    const low = { book: { height_mm: 30 }, pattern: { outsideHeight_mm: 36 }, seam: { pitch_mm: 25 } };
    expect(said({ ...low, construction: { penLoop: { width_mm: 20 } } })).toContain(
      'The fore-edge seam has no hole that the pen loop could be caught by.',
    );
  });

  test('is by how much a lining puckers or stands loose', () => {
    const way = (lining: string) => said({ leather: LINED, construction: { lining } });
    expect(way('centre')).toEqual([
      "Round the closed spine the lining's path is 5.1 mm shorter than the outside's: it stands loose by that much when the book is closed.",
    ]);
    expect(way('full')).toEqual([
      "Round the closed spine the full lining's path is 5.1 mm shorter than the outside's. Sewn flat it puckers there by that much. Cemented with the cover bent, it runs over by that much. Trim it, then punch it through the holes of the outside.",
    ]);
  });

  test('says nothing of a lining that overlapping pockets leave no room for', () => {
    expect(said({ leather: LINED, pockets: { depth_mm: 190 } })).toEqual([expect.stringMatching(/^The pockets meet/)]);
  });

  test('is what a piece has no room for', () => {
    const notes = said({ construction: { penLoop: { width_mm: 10, pen_mm: 4, ease_mm: 0 } } });
    expect(notes).toEqual([expect.stringMatching(/^Pen loop, not written on the piece for want of room: .*\.$/)]);
  });

  test('joins the lines of a label', () => {
    expect(unwrittenWords(['Pocket', 'width 58 mm =', '4 edge margin', '54 depth'])).toBe(
      'Pocket; width 58 mm = 4 edge margin; 54 depth',
    );
  });
});

describe('the pieces drawn', () => {
  const ids = (change: Change) => patternDrawing(plainSource(change)).pieces.map(({ id }) => id);

  test('are no pocket where the ends are turned', () => expect(ids(TURNED)).toEqual(['outside']));

  test('are no lining where turned ends leave no room for one', () => {
    const narrow = { ...TURNED, pattern: { outsideWidth_mm: 112 }, leather: LINED, construction: { lining: 'full' } };
    expect(ids(narrow)).toEqual(['outside']);
  });
});

/** The same structure with every number to be met within 1e-9. */
function nearly(value: unknown): unknown {
  if (typeof value === 'number') return expect.closeTo(value, 9);
  if (Array.isArray(value)) return value.map(nearly);
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, nearly(inner)]));
  return value;
}

describe('the lining', () => {
  test('is as much shorter round the spine as its middle lies inside the outside: pi (t + K t_o - K t)', () => {
    const design = coverOf({ leather: lined });
    const { outside, lining } = design.needs.thick.leathers;
    const expected = Math.PI * (0.7 + outside.neutral * outside.thickness - lining!.neutral * 0.7);
    expect(liningDifference(design)).toBeCloseTo(expected, 9);
    expect(patternDrawing(design).notes.join()).toContain(`${expected.toFixed(1)} mm shorter`);
  });

  test('full is cut like the outside, holes and all', () => {
    const design = coverOf({ leather: lined, seam: { cornerRadius_mm: 8 }, construction: { lining: 'full' } });
    const drawing = patternDrawing(design);
    const [outside, lining] = [piece(drawing, 'outside'), piece(drawing, 'lining')];
    expect(lining.outline).toEqual(outside.outline);
    expect(lining.holes).toBe(outside.holes);
  });

  test('full in turned ends lies between the turns, cut to the step below', () => {
    const design = coverOf({ leather: lined, pockets: { construction: 'turned' }, construction: { lining: 'full' } });
    const { outside, lining, pocketDepth } = design.pieces;
    const room = outside.width - 2 * (pocketDepth + design.needs.thick.foreEdge.turn);
    expect(lining!.width).toBeLessThanOrEqual(room);
    expect(lining!.width).toBeGreaterThan(room - 0.5);
    expect(lining!.width * 2).toBeCloseTo(Math.round(lining!.width * 2), 9);
  });
});

describe('the closure strap', () => {
  test('of a book with parallel boards spans T and two leathers, bends half a turn, and lies over the plait of two laces', () => {
    const design = coverOf({
      construction: { strap: { anchor_mm: 30, reach_mm: 40, end_mm: 10 } },
      pattern: { rounding_mm: 0 },
    });
    const { book, leathers } = design.needs.thick;
    expect(book.wedge).toBe(0);
    const { thickness, neutral } = leathers.outside;
    // Laces of 0.8 mm; from the last row 12.7 mm from the edge up to them, and from the fastening.
    const plait = Math.PI * 1.6 + Math.hypot(12.7, 1.6) - 12.7 + Math.hypot(40, 1.6) - 40;
    const expected = 30 + (28 + 2 * thickness) + Math.PI * neutral * thickness + plait + 40 + 10;
    expect(defined(strapOf(design)).sum.total).toBeCloseTo(expected, 9);
  });

  test('has the same holes as the outside under it', () => {
    const design = coverOf({ construction: { strap: {} } });
    const drawing = patternDrawing(design);
    const seam = seamHoles(design).rows.flatMap(({ holes }) => holes).length;
    expect(piece(drawing, 'outside').holes - seam).toBe(piece(drawing, 'strap').holes);
  });
});

describe('a curved mouth', () => {
  test('is scooped by its share of the depth, and never by over a quarter of the height', () => {
    const scoop = (mouthCurve: number, depth_mm: number): number => {
      const design = coverOf({ construction: { mouth: 'curved', mouthCurve }, pockets: { depth_mm } });
      const { outline, width } = piece(patternDrawing(design), 'pocket');
      const arc = outline.find((segment) => segment.kind === 'arc');
      if (arc?.kind !== 'arc') throw new Error('no curved mouth');
      return width - (arc.centre[0] + arc.radius * Math.cos(arc.start + arc.sweep / 2));
    };
    expect(scoop(0.2, 80)).toBeCloseTo(16, 9);
    expect(scoop(0.5, 160)).toBeCloseTo(coverOf().pieces.outside.height / 4, 9);
  });
});

describe('hatching', () => {
  test('fills a square of 10 mm with upright lines 2 mm apart, from edge to edge', () => {
    const lines = hatchLines({
      kind: 'hatch',
      boundary: [
        [1, 1],
        [11, 1],
        [11, 11],
        [1, 11],
      ],
      angle: Math.PI / 2,
      spacing: 2,
    });
    expect(lines.length).toBe(5);
    for (const { from, to } of lines) expect(Math.abs(from[1] - to[1])).toBeCloseTo(10, 9);
  });
});

describe('the construction of a job', () => {
  const withConstruction = (construction: object, rest: object = {}) =>
    parseJob({ ...tideLedger, ...rest, construction });

  test('may be left out: then it is a plain cover', () => {
    const parsed = parseJob(tideLedger);
    expect(parsed.ok && parsed.job.construction).toMatchObject({
      corners: null,
      mouth: 'straight',
      lining: 'centre',
      strap: null,
      penLoop: null,
      ribbon: null,
    });
  });

  test.each([
    [{ corners: 'clipped' }, 'construction.corners'],
    [{ lining: 'full' }, 'construction.lining'],
    [{ strap: { width_mm: 9 } }, 'construction.strap.width_mm'],
    [{ mouthCurve: 0.9 }, 'construction.mouthCurve'],
    [{ mouth: 'wavy' }, 'construction.mouth'],
    [{ handle: {} }, 'construction.handle'],
  ])('%j is refused at its place', (construction, path) => {
    const parsed = withConstruction(construction);
    expect(parsed.ok ? [] : parsed.issues.map((issue) => issue.path)).toEqual([path]);
  });

  test('a pen loop needs a fore-edge seam', () => {
    const parsed = withConstruction({ penLoop: {} }, { pockets: { construction: 'turned' } });
    expect(parsed.ok ? [] : parsed.issues.map((issue) => issue.path)).toEqual(['construction.penLoop']);
  });
});
