import { describe, expect, test } from 'vitest';
import { flattened, segmentEnd, segmentStart } from '../../../src/core/math/contour.ts';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import type { PieceDrawing } from '../../../src/core/pattern/drawing.ts';
import { mirroredDrawing } from '../../../src/core/pattern/mirrorDrawing.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { onCutPiece } from '../../../src/core/tooling/toolingArea.ts';
import { tooledFaces } from '../../../src/core/tooling/toolingMarks.ts';
import { tracingDrawing } from '../../../src/core/tooling/tracing.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import type { Change } from '../pattern/coverOf.ts';
import { nearly } from '../pattern/plainSource.ts';
import { plainCover } from './plainCover.ts';
import { placements } from './toolingJobs.ts';

const border = (area: string) => ({ kind: 'border', area });
const traced = (areas: readonly string[], change: Change = {}) => {
  const design = plainCover({ ...change, tooling: { designs: areas.map(border) } } as Change);
  return tracingDrawing(design, tooledFaces(design, new Map()));
};
const rings = ({ layers }: PieceDrawing) => layers.mark.flatMap((mark) => (mark.kind === 'arc' ? [mark.centre] : []));
const words = ({ layers }: PieceDrawing) => layers.text.flatMap((each) => (each.kind === 'text' ? [each.text] : []));

describe('the tracings', () => {
  test('are none where nothing is tooled, and one for each face that is', () => {
    expect(traced([]).pieces).toEqual([]);
    const { pieces } = traced(['front', 'front', 'spine', 'backPocket']);
    expect(pieces.map(({ name }) => name)).toEqual(['Spine tracing', 'Front tracing', 'Back pocket tracing']);
  });

  test('show the front up to its cut edge, 360 mm from the other: rings on its corners, and 170 mm before it', () => {
    const sheet = nth(traced(['front']).pieces, 0);
    // The board begins 163 mm from the cut edge; the next whole step of 10 mm is 170.
    const [a, b, c, d] = rings(sheet);
    expect([a, b, c, d].map((ring) => ring![0] - c![0])).toEqual(nearly([-170, -170, 0, 0]));
    expect([a, b, c, d].map((ring) => ring![1] - a![1])).toEqual(nearly([0, 228, 0, 228]));
    expect(words(sheet)).toEqual(
      expect.arrayContaining([
        'rings A and B: 170 mm from the front cut edge',
        'rings C and D: corners',
        'head',
        'tail',
      ]),
    );
  });

  test('show the spine alone, its rings whole steps from the nearer cut edge and no nearer together than it is wide', () => {
    const sheet = nth(traced(['spine'], { work: { units: 'in' } }).pieces, 0);
    // 165 mm are 6 1/2 in less 0.1 mm: the whole half inch before it is 6 in.
    expect(words(sheet)).toEqual(
      expect.arrayContaining([
        'rings A and B: 6 in from the back cut edge',
        'rings C and D: 6 in from the front cut edge',
      ]),
    );
    const [a, , c] = rings(sheet);
    expect(c![0] - a![0]).toBeCloseTo(360 - 2 * 6 * 25.4, 6);
  });

  test('have the rings of rounded corners where the edge is straight again', () => {
    const { pieces } = traced(['back'], { seam: { cornerRadius_mm: 12 } });
    expect(words(nth(pieces, 0))).toContain('rings A and B: 20 mm from the back cut edge');
  });

  test('are as the piece is cut, and say by how much and why', () => {
    const artwork = { id: 'd', name: 'diagonal', kind: 'lines', width: 10, height: 10, lines: 'm0,0 10,10' };
    const design = plainCover({
      making: { state: 'cased', changeAlong: -0.02, changeAcross: -0.01 },
      tooling: { designs: [{ kind: 'drawing', area: 'front', artwork: 'd', width_mm: 50 }], artworks: [artwork] },
    } as Change);
    const drawing = tracingDrawing(design, tooledFaces(design, new Map()));
    const line = nth(nth(drawing.pieces, 0).layers.tooling, 0);
    const [from, to] =
      line.kind === 'path' ? [segmentStart(nth(line.segments, 0)), segmentEnd(nth(line.segments, 0))] : [];
    expect([to![0] - from![0], from![1] - to![1]]).toEqual(nearly([50 / 0.99, 50 / 0.98]));
    expect(drawing.notes.join(' ')).toMatch(/2\.04 % larger from head to tail and 1\.01 % larger across.*worked cased/);
    expect(traced(['front']).notes.join(' ')).toMatch(/finished size: this leather keeps its size/);
  });

  test('say that they are to be laid on with the drawn side down where they are mirrored', () => {
    const sheet = nth(mirroredDrawing(traced(['front'])).pieces, 0);
    expect(words(sheet)).toContain('drawn side down');
    expect(nth(rings(sheet), 0)[0] - nth(rings(sheet), 2)[0]).toBeCloseTo(170, 6);
  });

  test('name what a design lacks', () => {
    const design = plainCover({ tooling: { designs: [{ kind: 'title', area: 'front', text: 'A' }] } } as Change);
    const { notes } = tracingDrawing(design, tooledFaces(design, new Map()));
    expect(notes.join(' ')).toContain('Front tracing is not whole: its letters are not loaded.');
  });
});

describe('each tracing of 24 placements', () => {
  const cases = placements(24).map(({ design, face }, i) => ({ i, design, face }));
  test.each(cases)(
    '$i: the $face shows piece, area and design in one frame, inside of its paper',
    ({ design, face }) => {
      const { area, designs } = defined(tooledFaces(design, new Map()).find((each) => each.area.face === face));
      const sheet = nth(tracingDrawing(design, tooledFaces(design, new Map())).pieces, 0);
      const piece = defined(patternDrawing(design).pieces.find(({ id }) => id === area.piece));
      const [a, b, c, d] = rings(sheet);
      // Rings A and B stand at the left, at tail and head; C and D at the right.
      expect(b![0]).toBeCloseTo(a![0], 9);
      expect([b![1] - a![1], d![1] - c![1]]).toEqual(nearly([piece.height, piece.height]));
      expect(c![0] - a![0]).toBeGreaterThan(5);

      /** On the cut piece, in the frame of its pattern. */
      const x0 = nth(sheet.layers.centre, 0);
      const upright = x0.kind === 'line' ? x0.from[0] : Number.NaN;
      const shift: Vec2 = [upright - area.centre[0] / area.growth[0], a![1]];
      const onPattern = ([x, y]: Vec2): Vec2 => {
        const [u, v] = [x - shift[0], y - shift[1]];
        return area.isTurned ? [piece.width - u, piece.height - v] : [u, v];
      };
      const level = nth(sheet.layers.centre, 1);
      expect(level.kind === 'line' ? level.from[1] - shift[1] : 0).toBeCloseTo(area.centre[1] / area.growth[1], 9);

      const edge = flattened(piece.outline, 0.001);
      const cut = sheet.layers.cut.flatMap((each) => (each.kind === 'path' ? flattened(each.segments, 0.1) : []));
      for (const point of cut) expect(distanceToChain(onPattern(point), edge)).toBeLessThan(0.02);
      const middles = (holes: PieceDrawing['layers']['hole']): Vec2[] =>
        holes.flatMap((hole): Vec2[] =>
          hole.kind === 'arc'
            ? [hole.centre]
            : hole.kind === 'line'
              ? [[(hole.from[0] + hole.to[0]) / 2, (hole.from[1] + hole.to[1]) / 2]]
              : [],
        );
      const holes = middles(piece.layers.hole);
      const inside = holes.filter((hole) => {
        const u = (area.isTurned ? piece.width - hole[0] : hole[0]) + shift[0];
        return u > 4 && u < sheet.width - 4;
      });
      const drawn = middles(sheet.layers.hole).map(onPattern);
      for (const hole of inside)
        expect(Math.min(...drawn.map((each) => Math.hypot(each[0] - hole[0], each[1] - hole[1])))).toBeLessThan(1e-6);

      const points = designs.flatMap(({ lines }) => lines.flat()).map((point) => onCutPiece(area, point));
      const traced = sheet.layers.tooling
        .flatMap((each) => (each.kind === 'path' ? flattened(each.segments, 0.1) : []))
        .map(onPattern);
      expect(traced).toEqual(nearly(points));
      const clear = nth(sheet.layers.area, 0);
      if (area.clear !== null && clear.kind === 'path') {
        const [low, high] = [
          onCutPiece(area, [area.clear.x[0], area.clear.y[0]]),
          onCutPiece(area, [area.clear.x[1], area.clear.y[1]]),
        ];
        expect([
          onPattern(segmentStart(nth(clear.segments, 0))),
          onPattern(segmentStart(nth(clear.segments, 2))),
        ]).toEqual([nearly(low), nearly(high)]);
      }

      for (const [x, y] of [...rings(sheet), ...cut]) {
        expect(x > -1e-9 && x < sheet.width + 1e-9 && y > 4 && y < sheet.height - 4).toBe(true);
      }
      for (const [x] of rings(sheet)) expect(x > 5 && x < sheet.width - 5).toBe(true);
      expect(['A', 'B', 'C', 'D', 'head', 'tail'].filter((each) => !words(sheet).includes(each))).toEqual([]);
    },
  );
});

function distanceToChain([x, y]: Vec2, chain: readonly Vec2[]): number {
  return Math.min(
    ...chain.slice(1).map((to, i) => {
      const from = nth(chain, i);
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
      const long = dx * dx + dy * dy;
      const share = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - from[0]) * dx + (y - from[1]) * dy) / long));
      return Math.hypot(x - from[0] - share * dx, y - from[1] - share * dy);
    }),
  );
}
