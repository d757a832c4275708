import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import type { Drawing } from '../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { tooledFaces } from '../../src/core/tooling/toolingMarks.ts';
import { tracingDrawing } from '../../src/core/tooling/tracing.ts';
import { parseLength } from '../../src/core/units/parseLength.ts';
import { patternDxf } from '../../src/output/dxf/patternDxf.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { patternSvg } from '../../src/output/svg/patternSvg.ts';
import { type Placement, placements } from '../core/tooling/toolingJobs.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { type CuttingFile, readDxf, readSvg } from '../output/cuttingFileReading.ts';
import { readPdf } from '../output/pdfReading.ts';
import { proofSize } from './proofSize.ts';

/** The most that a design may lie off its place, mm, and a ring off the place that its words name. */
const MOST = 0.1;
const RING_MOST = 0.01;

/** What is seen on one tracing: rings by their middles, words by where they begin, and the lines of the design. */
interface ReadTracing {
  readonly rings: readonly Vec2[];
  readonly words: readonly { readonly text: string; readonly at: Vec2 }[];
  readonly lines: readonly (readonly Vec2[])[];
}

const middle = (points: readonly Vec2[]): Vec2 => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
};
const off = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

function ofCuttingFile({ found }: CuttingFile): ReadTracing {
  return {
    rings: found
      .filter(({ layer, radii }) => layer === 'MARK' && radii.length === 1)
      .map(({ points }) => middle(points)),
    words: found.flatMap(({ text, points }) => (text === null ? [] : [{ text, at: nth(points, 0) }])),
    lines: found.filter(({ layer }) => layer === 'TOOLING').map(({ points }) => points),
  };
}

async function ofPdf(drawing: Drawing, mirrored: boolean): Promise<ReadTracing> {
  // On a roll all is one page.
  const pages = await readPdf(await patternPdf(drawing, { paper: { roll_mm: 1700 }, mirrored }));
  expect(pages.length).toBe(1);
  const { paths, words } = nth(pages, 0);
  const chains = paths.flatMap(({ chains, isDashed, lineWidth }) =>
    isDashed ? [] : chains.map((points) => ({ points, lineWidth })),
  );
  // The legend shows a line of the tooling, just before its name.
  const names = words.filter(({ text }) => text === 'tooling').map(({ at }) => at);
  const isSample = (points: readonly Vec2[]): boolean =>
    points.length === 2 && names.some((at) => off(nth(points, 1), at) < 4 && nth(points, 1)[0] < at[0]);
  return {
    rings: chains
      .map(({ points }) => ({ points, at: middle(points) }))
      .filter(
        ({ points, at }) => points.length > 100 && points.every((point) => Math.abs(off(point, at) - 1.5) < 0.001),
      )
      .map(({ at }) => at),
    words,
    lines: chains
      .filter(({ points, lineWidth }) => Math.abs(lineWidth - 0.25) < 1e-3 && !isSample(points))
      .map(({ points }) => points),
  };
}

/** Where the rings lie on the cut piece, by their letters and words alone, in the frame of its pattern. */
function placesOfRings({ face, design }: Placement, { words }: ReadTracing): Map<string, Vec2> {
  const id =
    face.endsWith('Pocket') && design.pieces.pocket.count > 0 ? 'pocket' : face === 'strap' ? 'strap' : 'outside';
  const { width, height } = defined(patternDrawing(design).pieces.find((piece) => piece.id === id));
  // A pattern begins at the back of the outside, the fore-edge of a pocket, the sewn end of a strap; of a back pocket and a strap the
  // reader's head is its lower edge.
  const isTurned = face === 'strap' || (face === 'backPocket' && id === 'pocket');
  const [low, high] = isTurned ? [height, 0] : [0, height];
  const places = new Map<string, Vec2>();
  const said = words.map(({ text }) => text).join(' ');
  for (const [, tail, head, place] of said.matchAll(
    /rings (\w) and (\w): (corners|[^:]*? from the (?:\w+-?\w*)(?: cut edge| end)?)/g,
  )) {
    const [, size, end] = /(.*) from the (.*)/.exec(defined(place)) ?? [];
    const isLeft = tail === 'A';
    let x = isLeft !== isTurned ? 0 : width;
    if (size !== undefined) {
      const reading = parseLength(size, { defaultUnit: 'mm' });
      if (!reading.ok) throw new Error(`${size}: ${reading.message}`);
      const isFirst = /back cut edge|fore-edge|sewn end/.test(defined(end));
      x = isFirst ? reading.value : width - reading.value;
    }
    places.set(defined(tail), [x, low]);
    places.set(defined(head), [x, high]);
  }
  return places;
}

/** The least-squares turn and shift that lays points on others, after Kabsch; no scaling. */
function rigidFit(from: readonly Vec2[], to: readonly Vec2[]): (point: Vec2) => Vec2 {
  const mean = (points: readonly Vec2[], axis: 0 | 1) =>
    points.reduce((sum, point) => sum + point[axis], 0) / points.length;
  const [a, b]: [Vec2, Vec2] = [
    [mean(from, 0), mean(from, 1)],
    [mean(to, 0), mean(to, 1)],
  ];
  let [dot, cross] = [0, 0];
  from.forEach(([x, y], i) => {
    const [u, v] = nth(to, i);
    dot += (x - a[0]) * (u - b[0]) + (y - a[1]) * (v - b[1]);
    cross += (x - a[0]) * (v - b[1]) - (y - a[1]) * (u - b[0]);
  });
  const angle = Math.atan2(cross, dot);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return ([x, y]) => [b[0] + cos * (x - a[0]) - sin * (y - a[1]), b[1] + sin * (x - a[0]) + cos * (y - a[1])];
}

/** Where the lines of the design belong on the cut piece: as they are placed on the finished face, by the sizes of both pieces. */
function linesOnPiece({ face, design }: Placement): Vec2[][] {
  const { area, designs } = defined(tooledFaces(design, new Map()).find((each) => each.area.face === face));
  const isStrap = face === 'strap';
  const { pieces, made } = design;
  const across = pieces.outside.width / made.outside.width;
  const along = isStrap ? 1 : pieces.outside.height / made.outside.height;
  const isTurned = isStrap || (face === 'backPocket' && pieces.pocket.count > 0);
  return designs.flatMap(({ lines }) =>
    lines.map((line) =>
      line.map(([x, y]): Vec2 => {
        const [u, v] = isTurned ? [area.size[0] - x, area.size[1] - y] : [x, y];
        return [u * across, v * along];
      }),
    ),
  );
}

const table: string[] = [];

const FORMATS = {
  PDF: (drawing: Drawing, mirrored: boolean) => ofPdf(drawing, mirrored),
  SVG: async (drawing: Drawing, mirrored: boolean) => ofCuttingFile(readSvg(patternSvg(drawing, { mirrored }))),
  DXF: async (drawing: Drawing, mirrored: boolean) => ofCuttingFile(readDxf(patternDxf(drawing, { mirrored }))),
} as const;

const whole = placements(200);
const cases = whole
  .slice(0, proofSize(200, 12))
  .flatMap((placement, i) =>
    (Object.keys(FORMATS) as (keyof typeof FORMATS)[]).flatMap((format) =>
      [false, true].map((mirrored) => ({ i, placement, format, mirrored, face: placement.face })),
    ),
  );

describe(`a tracing laid on the cut piece by its rings (${cases.length} files)`, () => {
  test.each(cases)('$i: the $face in $format, mirrored $mirrored', async ({ i, placement, format, mirrored, face }) => {
    const drawing = tracingDrawing(placement.design, tooledFaces(placement.design, new Map()));
    const read = await FORMATS[format](drawing, mirrored);
    expect(read.rings.length).toBe(4);
    const places = placesOfRings(placement, read);
    expect([...places.keys()].sort()).toEqual(['A', 'B', 'C', 'D']);
    // A mirrored tracing is laid on with its drawn face down.
    const seen = ([x, y]: Vec2): Vec2 => (mirrored ? [-x, y] : [x, y]);
    const rings = [...places.keys()].map((name) => {
      const letter = defined(read.words.find(({ text }) => text === name));
      const nearest = read.rings.reduce((best, ring) => (off(ring, letter.at) < off(best, letter.at) ? ring : best));
      return seen(nearest);
    });
    const lay = rigidFit(rings, [...places.values()]);
    const ringOff = Math.max(...rings.map((ring, k) => off(lay(ring), nth([...places.values()], k))));
    expect(ringOff).toBeLessThan(RING_MOST);

    const wanted = linesOnPiece(placement);
    expect(read.lines.length).toBe(wanted.length);
    let worst = 0;
    wanted.forEach((line, k) => {
      const laid = nth(read.lines, k).map((point) => lay(seen(point)));
      // A mirrored line may run the other way.
      const ways = [line, [...line].reverse()].map((way) =>
        way.length === laid.length ? Math.max(...way.map((point, j) => off(point, nth(laid, j)))) : Infinity,
      );
      worst = Math.max(worst, Math.min(...ways));
    });
    expect(worst).toBeLessThan(MOST);
    table.push(
      `${String(i).padStart(3)} ${face.padEnd(11)} ${format} ${mirrored ? 'mirrored' : 'plain   '} rings ${ringOff.toFixed(5)} design ${worst.toFixed(5)} mm`,
    );
  });

  test('is listed, with the worst of all', () => {
    console.info(table.join('\n'));
    expect(table.length).toBe(cases.length);
    const figures = table.map((row) => Number(/design (.*) mm/.exec(row)?.[1]));
    console.info(`worst design ${Math.max(...figures).toFixed(5)} mm in ${figures.length} files`);
  });
});
