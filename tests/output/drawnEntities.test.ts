import DxfParser, { type ITextEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { rectangle } from '../../src/core/math/contour.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { type Drawing, LAYERS, noLayers, type PieceDrawing, path } from '../../src/core/pattern/drawing.ts';
import { textWidth } from '../../src/core/pattern/textBox.ts';
import { cuttingFile } from '../../src/output/cuttingFile.ts';
import { patternDxf } from '../../src/output/dxf/patternDxf.ts';
import { LASER_CAUTION } from '../../src/output/laserCaution.ts';
import { pathData } from '../../src/output/svg/pathData.ts';
import { patternSvg } from '../../src/output/svg/patternSvg.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { type Found, readDxf, readSvg } from './cuttingFileReading.ts';

const arc = (centre: Vec2, radius: number, start: number, sweep: number) =>
  ({ kind: 'arc', centre, radius, start, sweep }) as const;
const line = (from: Vec2, to: Vec2) => ({ kind: 'line', from, to }) as const;
const text = (at: Vec2, words: string, rotation: number, align: 'start' | 'middle') =>
  ({ kind: 'text', at, height: 4, rotation, align, text: words }) as const;

const ARCS = [arc([50, 25], 5, 0.5, 1), arc([50, 25], 4, 2, -1), arc([50, 25], 3, 0, 1.5 * Math.PI)];

function piece(id: 'outside' | 'pocket', count: number, width: number, height: number): PieceDrawing {
  const outline = rectangle([0, 0], [width, height]);
  const layers = { ...noLayers(), cut: [path(outline, true)] };
  const name = id === 'outside' ? 'Outside' : 'Pocket';
  return { id, name, count, width, height, outline, layers, sums: [], holes: 0, unwritten: [] };
}

const outside = piece('outside', 1, 100, 50);
/** One entity of every kind on a piece of 100 x 50 mm, and two pieces of 40 x 30 mm that stand in a row under it. */
const drawing: Drawing = {
  title: 'Entities',
  units: 'mm',
  faceUp: 'grain side up',
  pieces: [
    {
      ...outside,
      layers: {
        ...outside.layers,
        hole: [arc([10, 20], 1, 0, 2 * Math.PI), line([30, 20], [34, 20])],
        mark: ARCS,
        seam: [
          path([line([5, 5], [45, 5]), arc([45, 10], 5, -Math.PI / 2, Math.PI / 2), line([50, 10], [50, 40])], false),
        ],
        fold: [line([70, 0], [70, 50])],
        skive: [
          {
            kind: 'hatch',
            boundary: [
              [59, 10],
              [65, 10],
              [65, 20],
              [59, 20],
            ],
            angle: Math.PI / 2,
            spacing: 2,
          },
        ],
        text: [text([80, 10], 'Up', Math.PI / 2, 'start'), text([80, 40], 'Level', 0, 'middle')],
      },
    },
    piece('pocket', 2, 40, 30),
  ],
  lengths: [],
  holes: 0,
  notes: [],
};

const near = ([x, y]: Vec2) => [expect.closeTo(x, 4), expect.closeTo(y, 4)];
const silent = { layers: LAYERS.filter((layer) => layer !== 'text') };

/** With the lower left corner of the pieces at the origin, as in DXF; in SVG it stands a gap from the left and 100 mm down. */
const moved = (found: Found): Found => ({ ...found, points: found.points.map(([x, y]): Vec2 => [x - 10, y + 100]) });

describe.each([
  ['SVG', () => readSvg(patternSvg(drawing)).found.map(moved), 4],
  ['DXF', () => readDxf(patternDxf(drawing)).found, 4 * 0.718],
] as const)('the %s of a drawing made by hand', (_, read, letters) => {
  const on = (layer: string): Found[] => read().filter((each) => each.layer === layer);

  test('has its pieces in rows, the first row on top, every outline closed', () => {
    const cut = on('CUT');
    expect(cut.map(({ isClosed }) => isClosed)).toEqual([true, true, true]);
    const corners = (width: number, height: number, [x, y]: Vec2) =>
      rectangle([x, y], [x + width, y + height]).map(({ kind, ...segment }) => near((segment as { from: Vec2 }).from));
    expect(cut.map(({ points }) => points.slice(0, 4))).toEqual([
      corners(100, 50, [0, 40]),
      corners(40, 30, [0, 0]),
      corners(40, 30, [50, 0]),
    ]);
  });

  test('has a hole as a circle, and a slit as a line in a layer of its own', () => {
    const [holes, slits] = [on('HOLE'), on('SLIT')];
    expect(holes.map(({ radii, isClosed, points }) => [radii, isClosed, points[0]])).toEqual([
      [[1], true, near([11, 60])],
    ]);
    expect(slits.map(({ points }) => points)).toEqual([[near([30, 60]), near([34, 60])]]);
  });

  test('has arcs that turn their own way, the short way or the long', () => {
    const marks = on('MARK');
    expect(marks.length).toBe(ARCS.length);
    marks.forEach(({ points, radii, isClosed }, i) => {
      const { radius, start, sweep } = nth(ARCS, i);
      expect([radii, isClosed]).toEqual([[expect.closeTo(radius, 4)], false]);
      const at = (angle: number): Vec2 => [50 + radius * Math.cos(angle), 65 + radius * Math.sin(angle)];
      const ends = [nth(points, 0), nth(points, -1)].sort((a, b) => a[0] - b[0]);
      expect(ends).toEqual([at(start), at(start + sweep)].sort((a, b) => a[0] - b[0]).map(near));
      const toMiddle = points.map(([x, y]) => Math.hypot(x - at(start + sweep / 2)[0], y - at(start + sweep / 2)[1]));
      expect(Math.min(...toMiddle)).toBeLessThan(0.25);
    });
  });

  test('has an open path from its start to its end, through its arc', () => {
    const seam = nth(on('SEAM'), 0);
    expect(seam).toMatchObject({ isClosed: false, radii: [expect.closeTo(5, 4)] });
    expect([seam.points[0], seam.points[1], seam.points.at(-1)]).toEqual(
      [
        [5, 45],
        [45, 45],
        [50, 80],
      ].map((at) => near(at as [number, number])),
    );
    // The arc bulges away from its centre: its middle stands 5 mm from (45, 50), to the lower right.
    const middle: Vec2 = [45 + 5 * Math.SQRT1_2, 50 - 5 * Math.SQRT1_2];
    expect(Math.min(...seam.points.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1])))).toBeLessThan(0.25);
  });

  test('has a hatch as upright lines 2 mm apart', () => {
    const lines = on('SKIVE').map(({ points }) => [...points].sort((a, b) => a[1] - b[1]));
    lines.sort((a, b) => nth(a, 0)[0] - nth(b, 0)[0]);
    expect(lines).toEqual([60, 62, 64].map((x) => [near([x, 50]), near([x, 60])]));
  });

  test('has words at the start of their base line, of their height and width, upright or level', () => {
    const [up, level] = [textWidth('Up', 4), textWidth('Level', 4)];
    expect(
      on('TEXT').map(({ text, points, rotation, width, height }) => ({ text, at: points[0], rotation, width, height })),
    ).toEqual([
      {
        text: 'Up',
        at: near([80, 50]),
        rotation: expect.closeTo(Math.PI / 2, 6),
        width: expect.closeTo(up, 4),
        height: expect.closeTo(letters, 4),
      },
      {
        text: 'Level',
        at: near([80 - level / 2, 80]),
        rotation: 0,
        width: expect.closeTo(level, 4),
        height: expect.closeTo(letters, 4),
      },
    ]);
  });

  test('has its cautions in rows of 4.5 mm, a gap under the pieces', () => {
    const cautions = on('CAUTION');
    expect(cautions.length).toBeGreaterThan(3);
    cautions.forEach(({ points, text, width, rotation }, i) => {
      expect(points[0]).toEqual(near([0, -10 - 4.5 * i]));
      expect([width, rotation]).toEqual([expect.closeTo(textWidth(text!, 3), 4), 0]);
    });
  });
});

test('cautions are broken where the next word would go beyond the pieces, and no word is lost', () => {
  const { cautions } = cuttingFile(drawing, {}, 10);
  expect(cautions.join(' ')).toBe(LASER_CAUTION.join(' '));
  cautions.forEach((row, i) => {
    expect(textWidth(row, 3)).toBeLessThanOrEqual(100);
    const next = cautions[i + 1]?.split(' ')[0];
    const isSentenceEnd = LASER_CAUTION.some((sentence) => sentence.endsWith(row));
    if (next !== undefined && !isSentenceEnd) expect(textWidth(`${row} ${next}`, 3)).toBeGreaterThan(100);
  });
  expect(cuttingFile(drawing, silent, 10).cautions).toEqual([]);
});

test('a row of the cautions may be as wide as the pieces', () => {
  const row = nth(LASER_CAUTION, 0).split(' ').slice(0, 6).join(' ');
  const narrow = { ...drawing, pieces: [piece('outside', 1, textWidth(row, 3), 50)] };
  expect(cuttingFile(narrow, {}, 10).cautions[0]).toBe(row);
});

test('no row of the cautions is empty, though a word is wider than the pieces', () => {
  const narrow = { ...drawing, pieces: [piece('outside', 1, 5, 50)] };
  expect(cuttingFile(narrow, {}, 10).cautions[0]).toBe('Laser:');
});

describe('the SVG', () => {
  const groups = (svg: string) =>
    [...svg.matchAll(/<g id="([^"]+)"(?: class="(\w+)" ([^>]+))?>/g)].map((match) => match.slice(1));

  test('names its groups, draws lines by stroke with the dashes of their layer, and fills words', () => {
    const found = groups(patternSvg(drawing));
    expect(found.filter(([, name]) => name === undefined).map(([id]) => id)).toEqual([
      'outside',
      'pocket-1',
      'pocket-2',
    ]);
    const style = (id: string) => defined(found.find(([each]) => each === id))[2];
    expect(style('outside-FOLD')).toBe('fill="none" stroke="#0000ff" stroke-width="0.2" stroke-dasharray="6 2"');
    expect(style('outside-CUT')).toBe('fill="none" stroke="#ff0000" stroke-width="0.2"');
    expect(style('outside-TEXT')).toBe('fill="#008100"');
    expect(style('CAUTION')).toBe('fill="#ff7f00"');
    expect(groups(patternSvg(drawing, silent)).map(([id]) => id)).not.toContain('CAUTION');
  });

  test('leaves a gap all round, and room for its cautions', () => {
    const rows = cuttingFile(drawing, {}, 10).cautions.length;
    expect(readSvg(patternSvg(drawing)).size).toEqual([120, 110 + 4.5 * rows]);
    expect(readSvg(patternSvg(drawing, { ...silent, gap_mm: 3 })).size).toEqual([106, 89]);
  });

  test('holds nothing but its elements where words are left out', () => {
    const shapes = patternSvg(drawing, silent).replace(/<(title|desc)>.*<\/\1>/g, '');
    expect(shapes.replace(/<[^>]*>/g, '').trim()).toBe('');
  });

  test('says in its title that it is mirrored, and only then', () => {
    expect(patternSvg(drawing)).toContain('<title>Entities</title>');
    expect(patternSvg(drawing, { mirrored: true })).toContain('<title>Entities, seen from the flesh side</title>');
  });

  test('writes a whole circle as two halves, an arc of over half a turn as a large one, and y down', () => {
    const down = ([x, y]: Vec2): Vec2 => [x, -y];
    expect(pathData([arc([0, 0], 1, 0, Math.PI / 2)], down)).toBe('M1 0A1 1 0 0 0 0 -1');
    expect(pathData([arc([0, 0], 1, Math.PI / 2, -Math.PI / 2)], down)).toBe('M0 -1A1 1 0 0 1 1 0');
    expect(pathData([arc([0, 0], 1, 0, 1.5 * Math.PI)], down)).toBe('M1 0A1 1 0 1 0 0 1');
    expect(pathData([arc([0, 0], 2, 0, 2 * Math.PI)], down)).toBe('M2 0A2 2 0 0 0 -2 0A2 2 0 0 0 2 0');
    expect(pathData([], down)).toBe('');
  });
});

describe('the DXF', () => {
  test('has a line type for every dashed layer, a gap as a negative length, and none for the others', () => {
    const dxf = patternDxf(drawing);
    const types = defined(new DxfParser().parseSync(dxf)).tables.lineType.lineTypes;
    expect(types.FOLD).toMatchObject({ description: 'fold lines', pattern: [6, -2] });
    expect(types.CENTRE).toMatchObject({ pattern: [8, -1.5, 1, -1.5] });
    expect(types.CUT).toBeUndefined();
    const typeOf = (layer: string) =>
      new RegExp(`AcDbLayerTableRecord\\s+2\\s+${layer}\\s[\\s\\S]*?\\n\\s*6\\s+(\\w+)`).exec(dxf)?.[1];
    expect([typeOf('FOLD'), typeOf('CUT')]).toEqual(['FOLD', 'Continuous']);
  });

  test('turns its words by the angle of their base line, for readers that fit no words between two points', () => {
    const { entities } = defined(new DxfParser().parseSync(patternDxf(drawing)));
    const words = entities.filter(({ type }) => type === 'TEXT') as ITextEntity[];
    expect(words.length).toBeGreaterThan(5);
    for (const { text, rotation } of words)
      expect([text, rotation ?? 0]).toEqual([text, expect.closeTo(text === 'Up' ? 90 : 0, 6)]);
  });

  test('names the tool that wrote it', () => expect(patternDxf(drawing)).toMatch(/\$LASTSAVEDBY\s+1\s+Coverwright/));
});
