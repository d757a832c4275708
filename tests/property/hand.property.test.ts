import fc from 'fast-check';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { PieceShapes } from '../../src/app/sheet/PieceShapes.tsx';
import { type CoverDesign, coverDesign } from '../../src/core/fold/coverDesign.ts';
import { flattened } from '../../src/core/math/contour.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import type { Drawing, PieceDrawing } from '../../src/core/pattern/drawing.ts';
import { halfCard } from '../../src/core/pattern/halfCard.ts';
import { oneCard } from '../../src/core/pattern/oneCard.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { benchSheetPdf } from '../../src/output/benchSheet/benchSheetPdf.ts';
import { patternDxf } from '../../src/output/dxf/patternDxf.ts';
import { machinePlan } from '../../src/output/machine/machinePlan.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { patternSvg } from '../../src/output/svg/patternSvg.ts';
import { soundJob } from '../jobArbitrary.ts';
import { checkLaw, lawCases } from '../laws.ts';
import { nth } from '../nth.ts';
import { type CuttingFile, readDxf, readSvg } from '../output/cuttingFileReading.ts';
import { soundMachine } from '../output/machine/machines.ts';
import { boundsOf } from '../output/outlineDistance.ts';
import { type ReadPage, readPdf } from '../output/pdfReading.ts';
import { constructedJob } from './constructionArbitrary.ts';

/** Shapes of a view as chains of points, in any scale: those that may be the cut edge, and those that may be holes. */
interface Seen {
  readonly outlines: readonly (readonly Vec2[])[];
  readonly holes: readonly (readonly Vec2[])[];
  /** Of a view that may lie any way up: its marks, of which start and finish of the seam tell head from tail. */
  readonly marks?: readonly (readonly Vec2[])[];
  /** How the piece may lie. */
  readonly turns: readonly Turn[];
}
type Turn = (at: Vec2) => Vec2;
type Hand = 'plain' | 'mirrored';

const middle = (chain: readonly Vec2[]): Vec2 => {
  const { low, high } = boundsOf(chain);
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
};

const chainOf = (entity: PieceDrawing['layers']['hole'][number]): Vec2[] =>
  entity.kind === 'line' || entity.kind === 'arc' ? flattened([entity], 0.01) : [];

const headUp: Turn = (at) => at;
const headRight: Turn = ([x, y]) => [y, -x];
const anyWay: readonly Turn[] = [headUp, headRight, ([x, y]) => [-x, -y], ([x, y]) => [-y, x]];

/** The hands in which every hole of a piece is found where a view shows its outline, turned by quarters as it may lie. */
function handsOf({ outlines, holes, marks, turns }: Seen, { width, height, layers }: PieceDrawing): Hand[] {
  const places = [...holes, ...(marks ?? [])].map(middle);
  const wanted = [...layers.hole, ...(marks === undefined ? [] : layers.mark)].map((entity) => middle(chainOf(entity)));
  const isThere = (outline: readonly Vec2[], hand: Hand, turn: Turn): boolean => {
    const found = boundsOf(outline);
    const laid = (at: Vec2): Vec2 => turn(hand === 'plain' ? at : [width - at[0], at[1]]);
    const box = boundsOf([laid([0, 0]), laid([width, height])]);
    const scale = found.width / box.width;
    if (Math.abs(found.height / box.height - scale) > 1e-3 * scale) return false;
    return wanted.every((at) => {
      const [x, y] = laid(at);
      const [u, v] = [found.low[0] + scale * (x - box.low[0]), found.low[1] + scale * (y - box.low[1])];
      return places.some((place) => Math.hypot(place[0] - u, place[1] - v) < 0.05 * scale + 1e-3);
    });
  };
  return (['plain', 'mirrored'] as const).filter((hand) =>
    outlines.some((outline) => turns.some((turn) => isThere(outline, hand, turn))),
  );
}

const isClosed = (chain: readonly Vec2[]): boolean =>
  chain.length > 3 && Math.hypot(nth(chain, 0)[0] - nth(chain, -1)[0], nth(chain, 0)[1] - nth(chain, -1)[1]) < 1e-6;

const ofPages = (pages: readonly ReadPage[]): Seen[] =>
  pages.map(({ paths }) => ({
    turns: [headUp, headRight],
    outlines: paths
      .filter(({ lineWidth }) => Math.abs(lineWidth - 0.3) < 1e-3)
      .flatMap(({ chains }) => chains.filter(isClosed)),
    holes: paths
      .filter(({ lineWidth, isDashed }) => !isDashed && Math.abs(lineWidth - 0.2) < 1e-3)
      .flatMap(({ chains }) => chains),
  }));

const ofFile = ({ found }: CuttingFile): Seen[] => [
  {
    turns: [headUp],
    outlines: found.filter(({ layer }) => layer === 'CUT').map(({ points }) => points),
    holes: found.filter(({ layer }) => layer === 'HOLE' || layer === 'SLIT').map(({ points }) => points),
  },
];

const ofMachine = (drawing: Drawing, mirrored: boolean): Seen[] =>
  machinePlan(drawing, soundMachine({ bed: { width_mm: 5000, height_mm: 5000 } }), { mirrored }).beds.map(
    ({ passes }) => {
      const on = (...layers: string[]) =>
        passes.flatMap(({ strokes }) =>
          strokes.filter(({ layer }) => layers.includes(layer)).map(({ path }) => flattened(path, 0.01)),
        );
      return { turns: anyWay, outlines: on('CUT'), holes: on('HOLE', 'SLIT'), marks: on('MARK') };
    },
  );

function ofScreen(piece: PieceDrawing): Seen[] {
  const shapes = renderToStaticMarkup(createElement(PieceShapes, { piece, layers: ['cut', 'hole'], hasWords: false }));
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">${shapes.replaceAll('data-layer', 'class')}</svg>`;
  return ofFile(readSvg(svg));
}

const saidOn = (pages: readonly ReadPage[]): string =>
  pages.flatMap(({ words }) => words.map(({ text }) => text)).join(' ');

/** Jobs that can be told from their mirror image: a strap is sewn to the back, the front fore-edge is the other one. */
const handedJob = constructedJob.filter(({ construction }) => construction.strap !== null);

async function views(design: CoverDesign): Promise<Record<string, { seen: Seen[]; hand: Hand; piece: PieceDrawing }>> {
  const drawing = patternDrawing(design);
  const piece = nth(drawing.pieces, 0);
  const card = nth(oneCard(design).pieces, 0);
  const paper = { roll_mm: 1700 } as const;
  const [template, turned, bench] = await Promise.all(
    [patternPdf(drawing, { paper }), patternPdf(drawing, { paper, mirrored: true }), benchSheetPdf(design)].map(
      async (bytes) => readPdf(await bytes),
    ),
  );
  // Mirrored only where it is asked for, and then the sheet says so.
  expect(saidOn(template!)).toContain('Grain side up, as on the screen: head at the top, front at the right.');
  expect(saidOn(template!)).not.toMatch(/mirrored|flesh side up/i);
  expect(saidOn(turned!)).toContain('Flesh side up, mirrored: for tracing there, head at the top, front at the left.');
  const files = { svg: patternSvg, dxf: patternDxf } as const;
  expect(files.svg(drawing, { mirrored: true })).toContain('seen from the flesh side');
  expect(files.svg(drawing)).not.toContain('flesh side');
  expect(
    machinePlan(drawing, soundMachine({ bed: { width_mm: 5000, height_mm: 5000 } }), { mirrored: true }).title,
  ).toContain('seen from the flesh side');
  for (const make of Object.values(files)) {
    expect(make(drawing)).not.toContain('flesh side up');
    expect(make(drawing, { mirrored: true })).not.toContain('grain side up');
  }
  return {
    screen: { seen: ofScreen(piece), hand: 'plain', piece },
    'template PDF': { seen: ofPages(template!), hand: 'plain', piece },
    'mirrored template PDF': { seen: ofPages(turned!), hand: 'mirrored', piece },
    SVG: { seen: ofFile(readSvg(patternSvg(drawing))), hand: 'plain', piece },
    'mirrored SVG': { seen: ofFile(readSvg(patternSvg(drawing, { mirrored: true }))), hand: 'mirrored', piece },
    DXF: { seen: ofFile(readDxf(patternDxf(drawing))), hand: 'plain', piece },
    'mirrored DXF': { seen: ofFile(readDxf(patternDxf(drawing, { mirrored: true }))), hand: 'mirrored', piece },
    'one card': { seen: ofScreen(card), hand: 'plain', piece },
    'bench sheet': { seen: ofPages(bench!), hand: 'plain', piece },
    bed: { seen: ofMachine(drawing, false), hand: 'plain', piece },
    'mirrored bed': { seen: ofMachine(drawing, true), hand: 'mirrored', piece },
  };
}

describe('the hand of the outside', () => {
  test('is the same in every view, grain side up, and the other one only where it is asked for and said', async () => {
    await checkLaw(
      fc.asyncProperty(handedJob, async (document) => {
        const all = await views(coverDesign(soundJob(document)));
        const hands = Object.fromEntries(
          Object.entries(all).map(([name, { seen, piece }]) => [name, seen.flatMap((each) => handsOf(each, piece))]),
        );
        expect(hands).toEqual(Object.fromEntries(Object.entries(all).map(([name, { hand }]) => [name, [hand]])));
      }),
      { cases: lawCases(100) },
    );
  }, 120_000);

  test('is that of the front half on the half card: its holes are moved, not turned over', () => {
    checkLaw(
      fc.property(handedJob, (document) => {
        const design = coverDesign(soundJob(document));
        const outside = nth(patternDrawing(design).pieces, 0);
        const half = nth(halfCard(design).pieces, 0);
        // From the front fore-edge, which is at the right of both, as far as holes that the fold goes through.
        const xs = (piece: PieceDrawing): number[] =>
          piece.layers.hole
            .map((entity) => piece.width - middle(chainOf(entity))[0])
            .filter((x) => x < outside.width / 2 - 6)
            .sort((a, b) => a - b);
        const [whole, front] = [xs(outside), xs(half)];
        expect(front.length).toBe(whole.length);
        front.forEach((x, i) => {
          expect(x).toBeCloseTo(nth(whole, i), 6);
        });
      }),
      { cost: 4 },
    );
  });
});
