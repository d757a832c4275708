import { aciHex } from '@tarikjabiri/dxf';
import { describe, expect, test } from 'vitest';
import { type Drawing, LAYERS, type Layer } from '../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { patternDxf } from '../../src/output/dxf/patternDxf.ts';
import { patternSvg } from '../../src/output/svg/patternSvg.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { type CuttingFile, readDxf, readSvg } from './cuttingFileReading.ts';
import { cuttingJobs } from './cuttingJobs.ts';

const laced = patternDrawing(coverOf({ construction: { strap: {} }, leather: { outside: { foldThickness_mm: 1 } } }));
const smallest = defined(cuttingJobs().find(({ name }) => name === 'the smallest book')).drawing;
const forLaser = { kerf_mm: 0.2 };
const silent = { ...forLaser, layers: LAYERS.filter((layer) => layer !== 'text') };

const svg = (drawing: Drawing, options: object = forLaser): CuttingFile => readSvg(patternSvg(drawing, options));
const dxf = (drawing: Drawing, options: object = forLaser): CuttingFile => readDxf(patternDxf(drawing, options));

describe.each([
  ['SVG', svg],
  ['DXF', dxf],
] as const)('the %s for a cutter', (format, file) => {
  test('gives every layer a colour of its own, because a machine tells its passes apart by colour', () => {
    const { colours } = file(laced);
    expect(colours.size).toBeGreaterThanOrEqual(9);
    expect(new Set(colours.values()).size).toBe(colours.size);
  });

  test('has the slits in a layer of their own', () => {
    const { found } = file(laced);
    const slits = laced.pieces.reduce((sum, { holes, count }) => sum + holes * count, 0);
    expect(found.filter(({ layer }) => layer === 'SLIT').length).toBe(slits);
  });

  test('cuts every piece free last, after its marks and then its slits', () => {
    const { found } = file(laced);
    const layers = found.map(({ layer }) => layer).filter((layer) => layer !== 'CAUTION');
    const pieces = layers.join(' ').split(/(?<=CUT)/);
    expect(pieces.length).toBe(4);
    for (const piece of pieces) expect(piece.trim()).toMatch(/^((?!CUT|SLIT)\w+ )+(SLIT )+CUT$/);
  });

  test('has its words in the layer of words only, and none at all without it', () => {
    const { found } = file(laced);
    for (const { text, layer } of found) if (text !== null) expect(layer).toMatch(/^(TEXT|CAUTION)$/);
    expect(file(laced, silent).found.filter(({ text }) => text !== null)).toEqual([]);
  });

  test('leaves out words that name marks which are left out', () => {
    const said = (layers: readonly Layer[]): string =>
      file(laced, { layers })
        .found.map(({ text }) => text)
        .join();
    expect(said(LAYERS)).toMatch(/fastening.*along the hide's backbone/);
    const few = said(['cut', 'text']);
    expect(few).toContain('Outside');
    expect(few).not.toMatch(/backbone|fastening|start/);
  });

  test('has its cautions in a layer of their own, or in a comment where words are left out', () => {
    const { found } = file(laced);
    const said = found.filter(({ layer }) => layer === 'CAUTION').map(({ text }) => text);
    expect(said.join(' ')).toMatch(/never.*PVC.*hydrogen chloride.*chromium.*local rules/);
    const text = format === 'SVG' ? patternSvg(laced, silent) : patternDxf(laced, silent);
    expect(text.replace(/\s+/g, ' ')).toMatch(/never.*PVC.*hydrogen chloride/);
  });
});

test('the cautions of the smallest job stand on its page', () => {
  const { found, size } = svg(smallest);
  const cautions = found.filter(({ layer }) => layer === 'CAUTION');
  expect(cautions.length).toBeGreaterThan(3);
  for (const { points, text, height, width } of cautions) {
    const [x, y] = nth(points, 0);
    expect([text, x >= 0 && x + (width ?? text!.length * height * 0.5) <= size![0]]).toEqual([text, true]);
    expect(-y - height >= 0 && -y + 0.3 * height <= size![1]).toBe(true);
  }
});

test('the colours of the SVG are those that the palette of DXF gives the same layers', () => {
  const [inSvg, inDxf] = [svg(laced).colours, dxf(laced).colours];
  for (const [layer, colour] of inSvg) {
    expect([layer, colour]).toEqual([layer, `#${aciHex(Number(inDxf.get(layer))).toLowerCase()}`]);
  }
});

test('the height of letters in DXF is that of a capital, 0.718 of the body as in Helvetica', () => {
  const heights = (file: CuttingFile): number[] =>
    file.found.flatMap(({ layer, height }) => (layer === 'TEXT' ? [height] : []));
  const [inSvg, inDxf] = [heights(svg(laced)), heights(dxf(laced))];
  expect(inDxf.length).toBe(inSvg.length);
  inDxf.forEach((height, i) => {
    expect(height / nth(inSvg, i)).toBeCloseTo(0.718, 3);
  });
});
