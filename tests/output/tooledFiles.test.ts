import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../src/core/job/examples.ts';
import { LAYERS } from '../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { tooledFaces, tooledPattern } from '../../src/core/tooling/toolingMarks.ts';
import { tracingDrawing } from '../../src/core/tooling/tracing.ts';
import { patternDxf } from '../../src/output/dxf/patternDxf.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { patternSvg } from '../../src/output/svg/patternSvg.ts';
import { soundJob } from '../jobArbitrary.ts';
import { nth } from '../nth.ts';
import { type Found, readDxf, readSvg } from './cuttingFileReading.ts';
import { type ReadPath, readPdf } from './pdfReading.ts';
import { wordsOnLines } from './wordsOnLines.ts';

const ZIGZAG = {
  id: 'z',
  name: 'zigzag',
  kind: 'lines',
  width: 60,
  height: 10,
  lines: 'm0,10 10,-10 10,10 10,-10 10,10 10,-10 10,10',
};

/** The tide ledger with two borders and rows of zigzags over its front, a zigzag on its spine and one on its back pocket. */
const job = soundJob({
  ...nth(EXAMPLE_JOBS, 0).document,
  tooling: {
    designs: [
      { kind: 'border', area: 'front', lines: 2, corners: 'notched' },
      { kind: 'drawing', area: 'front', artwork: 'z', width_mm: 100, repeat: { rows: 6, stepY_mm: 30 } },
      { kind: 'drawing', area: 'spine', artwork: 'z', width_mm: 40, turn_deg: -90 },
      { kind: 'drawing', area: 'backPocket', artwork: 'z', width_mm: 30 },
    ],
    artworks: [ZIGZAG],
  },
});
const design = coverDesign(job);
const pattern = tooledPattern(design, new Map());

describe.each([
  ['SVG', (options: object) => readSvg(patternSvg(pattern, options)).found],
  ['DXF', (options: object) => readDxf(patternDxf(pattern, options)).found],
] as const)('the %s of a job that is tooled', (_, file: (options: object) => Found[] | readonly Found[]) => {
  test('has the tooling in a pass of its own, after the holes and before the cut edge that frees the piece', () => {
    const passes = file({})
      .map(({ layer }) => layer)
      .filter((layer) => ['HOLE', 'SLIT', 'TOOLING', 'CUT'].includes(layer))
      .filter((layer, i, all) => layer !== all[i - 1]);
    // The outside, the front pocket without a design, and the back pocket with one; the lining has none.
    expect(passes.join(' ')).toMatch(/^SLIT TOOLING CUT SLIT CUT SLIT TOOLING CUT( SLIT CUT)*$/);
  });

  test('keeps every line of the tooling where it is, whatever the kerf', () => {
    const tooling = (kerf_mm: number) => file({ kerf_mm }).filter(({ layer }) => layer === 'TOOLING');
    expect(tooling(0).length).toBe(2 + 6 + 1 + 1);
    const [plain, kerfed] = [tooling(0), tooling(0.6)];
    // The whole file may move with the outline, every line by as much.
    const by = (i: number, k: number, axis: 0 | 1): number =>
      nth(nth(kerfed, i).points, k)[axis] - nth(nth(plain, i).points, k)[axis];
    plain.forEach(({ points }, i) => {
      points.forEach((_, k) => {
        expect([by(i, k, 0), by(i, k, 1)]).toEqual([expect.closeTo(by(0, 0, 0), 4), expect.closeTo(by(0, 0, 1), 4)]);
      });
    });
  });

  test('leaves the tooling areas out unless they are chosen', () => {
    const has = (options: object) => file(options).some(({ layer }) => layer === 'AREA');
    expect([has({}), has({ layers: LAYERS })]).toEqual([false, true]);
  });
});

test('a tracing shows its area in a file, too', () => {
  const tracings = tracingDrawing(design, tooledFaces(design, new Map()));
  expect(readSvg(patternSvg(tracings)).found.some(({ layer }) => layer === 'AREA')).toBe(true);
});

test.each([
  ['the pattern', pattern],
  ['the tracings', tracingDrawing(design, tooledFaces(design, new Map()))],
])('no words lie on a line of the tooling or on a centre line: %s', async (_, drawing) => {
  for (const mirrored of [false, true]) {
    const pages = await readPdf(await patternPdf(drawing, { paper: { roll_mm: 1700 }, mirrored }));
    // Lines of the tooling are 0.25 mm wide; dashes of centre lines are 8 mm long.
    const isTooling = ({ lineWidth, dash }: ReadPath) =>
      Math.abs(lineWidth - 0.25) < 1e-3 || Math.abs((dash[0] ?? 0) - 8) < 1e-3;
    for (const page of pages) expect(wordsOnLines(page, isTooling)).toEqual([]);
  }
});

test('a job without designs has the pattern that it had', () => {
  const plain = coverDesign(soundJob(nth(EXAMPLE_JOBS, 0).document));
  expect(tooledPattern(plain, new Map())).toEqual(patternDrawing(plain));
});
