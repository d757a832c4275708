import { describe, expect, test } from 'vitest';
import { designReach, designShape } from '../../../../src/app/making/tooling/designShape.ts';
import {
  type Artwork,
  designCopies,
  type LetterFace,
  type MovableDesign,
  onCopy,
  parseJob,
  placedDesign,
  type ToolingArea,
  type Vec2,
} from '../../../../src/core/index.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import { defined } from '../../../defined.ts';
import { nth } from '../../../nth.ts';

/** Letters of two strokes that lean, one below the base line, so that no mirroring or turning goes unseen. */
const FACE: LetterFace = {
  id: 'leaning',
  title: 'Leaning',
  isStroke: true,
  lacks: () => [],
  outline: (text) => ({
    polylines: [
      [
        [0, -0.3],
        [0.4, 1],
      ],
      [
        [0, 0],
        [text.length, 0.5],
      ],
    ],
    width: text.length,
  }),
};
const FACES = new Map([['', FACE]]);

const ARTWORKS: Artwork[] = [
  {
    id: 'fish',
    name: 'fish',
    kind: 'lines',
    width: 10_000,
    height: 4000,
    lines: 'm0,4000 3000,-4000 7000,100z m50,60 7,0',
  },
];

const AREA: ToolingArea = {
  face: 'front',
  piece: 'outside',
  size: [400, 260],
  flat: { x: [220, 380], y: [12, 248] },
  whole: { x: [220, 380], y: [12, 248] },
  obstacles: [],
  clear: { x: [225, 375], y: [17, 243] },
  centre: [298, 130],
  bounds: { left: 'spine fold', right: 'board edge', bottom: 'board edge', top: 'board edge' },
  margins: { left: 5, right: 5, bottom: 5, top: 5 },
  growth: [1, 1],
  isTurned: false,
};

function designOf(written: object): MovableDesign {
  const document = { ...nth(EXAMPLE_JOBS, 0).document, tooling: { designs: [written], artworks: ARTWORKS } };
  const parsed = parseJob(document);
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  const design = nth(parsed.job.tooling.designs, 0);
  if (design.kind === 'border') throw new Error('a border is not placed');
  return design;
}

/** Points of path data of lines: `M1,2 3,4` and `M1,2l3,4z`. */
function pointsOf(data: string): Vec2[] {
  return data
    .split('M')
    .filter((line) => line !== '')
    .flatMap((line) => {
      const isRelative = line.includes('l');
      const pairs = [...line.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]): Vec2 => [Number(x), Number(y)]);
      let at: Vec2 = [0, 0];
      return pairs.map((pair, i) => {
        at = isRelative && i > 0 ? [at[0] + pair[0], at[1] + pair[1]] : pair;
        return at;
      });
    });
}

const PLACED = {
  area: 'front',
  x_mm: 12,
  y_mm: -30,
  turn_deg: 25,
  repeat: { columns: 2, rows: 3, stepX_mm: 31, stepY_mm: 17 },
};

describe.each([
  ['a title that reads across', { kind: 'title', text: 'abc', height_mm: 9 }],
  ['a title that reads down', { kind: 'title', text: 'abcdef', height_mm: 9, reading: 'down' }],
  ['a title that reads up, mirrored', { kind: 'title', text: 'abcdef', height_mm: 4, reading: 'up', mirrored: true }],
  ['a drawing', { kind: 'drawing', artwork: 'fish', width_mm: 42 }],
  ['a drawing, mirrored', { kind: 'drawing', artwork: 'fish', width_mm: 42, mirrored: true }],
])('%s', (_, written) => {
  const design = designOf({ ...PLACED, ...written });
  const shape = designShape(design, ARTWORKS, FACES);

  test('is drawn where it is tooled, every copy', () => {
    const drawn = designCopies(design, AREA.centre).flatMap((copy) =>
      pointsOf(shape.data).map(([u, v]) => onCopy(copy)([u * shape.scale, -v * shape.scale])),
    );
    const { lines } = placedDesign(design, AREA, ARTWORKS, FACES);
    // Path data close a line by a letter, not by its first point again.
    const placed = lines.flatMap((line) =>
      line.filter((point, i) => i === 0 || i < line.length - 1 || `${point}` !== `${nth(line, 0)}`),
    );
    expect(drawn).toHaveLength(placed.length);
    placed.forEach(([x, y], i) => {
      const [atX, atY] = nth(drawn, i);
      expect(atX).toBeCloseTo(x, 2);
      expect(atY).toBeCloseTo(y, 2);
    });
  });

  test('reaches as far as its lines, and no line goes beyond', () => {
    const reach = designReach(design, shape);
    const { lines } = placedDesign(design, AREA, ARTWORKS, FACES);
    for (const [x, y] of lines.flat()) {
      expect(x - AREA.centre[0] - design.x_mm).toBeGreaterThan(reach.x[0] - 0.01);
      expect(x - AREA.centre[0] - design.x_mm).toBeLessThan(reach.x[1] + 0.01);
      expect(y - AREA.centre[1] - design.y_mm).toBeGreaterThan(reach.y[0] - 0.01);
      expect(y - AREA.centre[1] - design.y_mm).toBeLessThan(reach.y[1] + 0.01);
    }
  });
});

test('a design without its letters or its drawing has an empty shape, as it has no lines', () => {
  const title = designOf({ kind: 'title', area: 'front', text: 'A', face: 'lost' });
  expect(designShape(title, ARTWORKS, new Map()).data).toBe('');
  const drawing = designOf({ kind: 'drawing', area: 'front', artwork: 'fish' });
  expect(designShape(drawing, [], FACES).data).toBe('');
});

test('the same drawing is the same text whatever its place and size, so that a drag moves it without drawing it again', () => {
  const data = (written: object) =>
    designShape(designOf({ kind: 'drawing', area: 'front', artwork: 'fish', ...written }), ARTWORKS, FACES).data;
  expect(data({ x_mm: 5, width_mm: 80 })).toBe(data({ turn_deg: 20 }));
  expect(defined(data({}))).toContain('l3000,-4000 7000,100z');
});
