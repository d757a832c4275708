import { describe, expect, test } from 'vitest';
import { segmentEnd, segmentStart } from '../../../src/core/math/contour.ts';
import type { PieceDrawing } from '../../../src/core/pattern/drawing.ts';
import { mirroredDrawing } from '../../../src/core/pattern/mirrorDrawing.ts';
import { tooledFaces } from '../../../src/core/tooling/toolingMarks.ts';
import { tracingDrawing } from '../../../src/core/tooling/tracing.ts';
import { nth } from '../../nth.ts';
import type { Change } from '../pattern/coverOf.ts';
import { nearly } from '../pattern/plainSource.ts';
import { plainCover } from './plainCover.ts';

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
