import { describe, expect, test } from 'vitest';
import {
  clearanceOf,
  coverDesign,
  coverSupplies,
  hideOf,
  layOut,
  parseJob,
  polygonArea,
  printer,
  type Vec2,
} from '../../../src/core/index.ts';
import { CUTTING_LAYERS } from '../../../src/output/cuttingFile.ts';
import { layoutDxf } from '../../../src/output/layout/layoutDxf.ts';
import { layoutPdf } from '../../../src/output/layout/layoutPdf.ts';
import { layoutSheet, sheetBox } from '../../../src/output/layout/layoutSheet.ts';
import { layoutSvg } from '../../../src/output/layout/layoutSvg.ts';
import { titleBlock } from '../../../src/output/titleBlock.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import { type CuttingFile, readDxf, readSvg } from '../cuttingFileReading.ts';
import { readPdf } from '../pdfReading.ts';

/** A hide about 1.2 m long with a neck, its backbone at a slant, and two defects. */
const OUTLINE: Vec2[] = [
  [-40, 30],
  [300, -60],
  [760, -35],
  [1150, 120],
  [1240, 420],
  [1010, 610],
  [600, 640],
  [260, 700],
  [20, 520],
];
const DEFECTS: Vec2[][] = [
  [
    [200, 150],
    [260, 160],
    [230, 210],
  ],
  [
    [700, 300],
    [760, 300],
    [760, 360],
    [700, 350],
  ],
];
const document = {
  format: 'coverwright-job',
  version: 2,
  name: 'Choir book, café',
  book: { width_mm: 150, height_mm: 220, thickness_mm: 54, boardThickness_mm: 3 },
  leather: { outside: { min_mm: 1.9, max_mm: 2.3 } },
  construction: { strap: {}, penLoop: {} },
  hides: { outside: { outline: OUTLINE, defects: DEFECTS, backbone_deg: 75 } },
};
const parsed = parseJob(document);
if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
const { job } = parsed;
const design = coverDesign(job);
const hide = hideOf(defined(job.hides.outside));
const pieces = coverSupplies(design).outlines.filter(({ leather }) => leather === 'outside');
const layout = layOut(pieces, hide, clearanceOf(job.hides));
const source = { name: job.name, leather: 'outside', units: 'mm', hide, layout } as const;
const sheet = layoutSheet(source);
const mirrored = layoutSheet({ ...source, isMirrored: true });

const on = (file: CuttingFile, layer: string) => file.found.filter((found) => found.layer === layer);
/** Greatest distance of the corners of two polygons, taken in turn. */
const apart = (found: readonly Vec2[], wanted: readonly Vec2[]): number =>
  Math.max(...wanted.map(([x, y], i) => Math.hypot(nth(found, i)[0] - x, nth(found, i)[1] - y)));

test('the layout that the files are tested on has pieces of every size', () => {
  expect(layout.unplaced).toEqual([]);
  expect(layout.placed.length).toBeGreaterThanOrEqual(4);
});

// Read by @xmldom/xmldom with svg-path-properties, and by dxf-parser.
describe.each([
  ['SVG', (of = sheet) => readSvg(layoutSvg(of))],
  ['DXF', (of = sheet) => readDxf(layoutDxf(of))],
] as const)('the layout as %s', (_, read) => {
  const file = read();

  test('has outline, defects and every piece where the layout says, within 0.01 mm', () => {
    expect(apart(nth(on(file, 'HIDE'), 0).points, hide.outline)).toBeLessThan(0.01);
    expect(on(file, 'DEFECT')).toHaveLength(2);
    for (const [i, { points }] of on(file, 'DEFECT').entries())
      expect(apart(points, nth(DEFECTS, i))).toBeLessThan(0.01);
    expect(on(file, 'CUT')).toHaveLength(layout.placed.length);
    on(file, 'CUT').forEach(({ points, isClosed }, i) => {
      expect(isClosed).toBe(true);
      expect(apart(points, nth(layout.placed, i).polygon)).toBeLessThan(0.01);
    });
  });

  test('has the area that the page prints, to the last digit', () => {
    for (const units of ['mm', 'in'] as const) {
      const print = printer(units).area;
      const area = (layer: string) =>
        on(file, layer).reduce((sum, { points }) => sum + polygonArea(points.slice(0, -1)), 0);
      expect(print(area('HIDE'))).toBe(print(polygonArea(hide.outline)));
      expect(print(area('CUT'))).toBe(print(layout.area));
    }
  });

  test('names each piece on itself, and points from its tail to its head', () => {
    const names = on(file, 'TEXT');
    expect(names.map(({ text }) => text)).toEqual(layout.placed.map(({ name }) => name));
    // A shaft and two barbs each.
    const lines = on(file, 'DIRECTION');
    expect(lines).toHaveLength(3 * layout.placed.length);
    layout.placed.forEach(({ quarters }, i) => {
      const [from, to] = nth(lines, 3 * i).points as [Vec2, Vec2];
      const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
      const wanted = (75 * Math.PI) / 180 + (quarters * Math.PI) / 2;
      expect(Math.cos(angle - wanted)).toBeCloseTo(1, 6);
    });
  });

  test('has the cut edges last, and no layer shares a colour', () => {
    expect(nth(file.found, -1).layer).toBe('CUT');
    const layers = new Set(file.found.map(({ layer }) => layer));
    expect([...layers]).toEqual(['HIDE', 'DEFECT', 'TEXT', 'DIRECTION', 'MARK', 'CUT']);
    const colours = [...layers].map((layer) => defined(file.colours.get(layer)));
    expect(new Set(colours).size).toBe(colours.length);
    const ofPatterns = CUTTING_LAYERS.filter(({ name }) => !layers.has(name));
    for (const { aci, colour } of ofPatterns) {
      expect(colours).not.toContain(String(aci));
      expect(colours).not.toContain(colour);
    }
  });

  test('has crosses outside the leather, which the mirrored file has in the same places with the pieces turned over', () => {
    const middles = (of: CuttingFile): Vec2[] =>
      on(of, 'MARK')
        .filter((__, i) => i % 2 === 0)
        .map(({ points: [a, b] }): Vec2 => [(a![0] + b![0]) / 2, (a![1] + b![1]) / 2])
        .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
    expect(middles(file)).toHaveLength(4);
    const [[left, low], [right, high]] = [nth(middles(file), 0), nth(middles(file), 3)];
    for (const [x, y] of OUTLINE) {
      expect(x > left && x < right).toBe(true);
      expect(y > low && y < high).toBe(true);
    }
    const over = read(mirrored);
    expect(middles(over)).toEqual(middles(file));
    on(over, 'CUT').forEach(({ points }, i) => {
      const turned = nth(layout.placed, i).polygon.map(([x, y]): Vec2 => [left + right - x, y]);
      expect(apart(points, turned)).toBeLessThan(0.01);
    });
  });
});

test('the SVG is in true size and shows all of it', () => {
  const svg = layoutSvg(sheet);
  const { x, y } = sheetBox(sheet);
  expect(svg).toContain(`width="${x[1] - x[0]}mm" height="${y[1] - y[0]}mm"`);
  expect(svg).toContain(`viewBox="${x[0]} ${-y[1]} ${x[1] - x[0]} ${y[1] - y[0]}"`);
});

describe('the layout as PDF', () => {
  const block = titleBlock({
    sheet: 'Leather layout',
    job,
    design,
    document,
    date: '2026-11-27',
    address: 'https://leather.example/',
  });

  test.each(['A4', 'Letter', 'A3'] as const)(
    'on %s is one page with all of it to the scale that it names',
    async (paper) => {
      const [page, ...rest] = await readPdf(await layoutPdf(sheet, { paper, block }));
      expect(rest).toEqual([]);
      const { width, height, paths, words } = defined(page);
      const said = words.map(({ text }) => text).join(' ');
      const scale = Number(defined(/Scale 1:(\d+)\./.exec(said))[1]);
      expect(said).toContain(`${printer('mm').area(polygonArea(hide.outline))} in all`);
      expect(said).toContain('Choir book, café');
      expect(said).toContain(block.version);
      for (const { name } of layout.placed) expect(said).toContain(name);
      const chains = paths.flatMap(({ chains }) => chains);
      for (const [x, y] of chains.flat()) {
        expect(x > 5 && x < width - 5).toBe(true);
        expect(y > 5 && y < height - 5).toBe(true);
      }
      // The sides of the outline, in their order, all one scale.
      const sides = OUTLINE.map((from, i) => {
        const to = nth(OUTLINE, (i + 1) % OUTLINE.length);
        return Math.hypot(to[0] - from[0], to[1] - from[1]) / scale;
      });
      const lengths = chains.map((chain) =>
        Math.hypot(nth(chain, -1)[0] - nth(chain, 0)[0], nth(chain, -1)[1] - nth(chain, 0)[1]),
      );
      const first = lengths.findIndex((_, i) =>
        sides.every((side, k) => Math.abs((lengths[i + k] ?? 0) - side) < 0.01),
      );
      expect(first).toBeGreaterThanOrEqual(0);
    },
  );

  test('is the same for the same input, byte for byte', async () => {
    const [a, b] = [await layoutPdf(sheet, { block }), await layoutPdf(sheet, { block })];
    expect(Buffer.from(a).equals(Buffer.from(b))).toBe(true);
  });
});
