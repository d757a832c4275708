import { describe, expect, test } from 'vitest';
import { rectangle } from '../../../src/core/math/contour.ts';
import { arrangePieces } from '../../../src/core/pattern/arrangePieces.ts';
import { type Drawing, noLayers, type PieceDrawing, seenOf } from '../../../src/core/pattern/drawing.ts';

const piece = (width: number, height: number, count = 1): PieceDrawing => ({
  id: 'pocket',
  name: 'Pocket',
  count,
  width,
  height,
  outline: rectangle([0, 0], [width, height]),
  layers: noLayers(),
  sums: [],
  holes: 0,
  unwritten: [],
});
const arranged = (...pieces: PieceDrawing[]) => arrangedAcross(1, ...pieces);
const arrangedAcross = (across: number, ...pieces: PieceDrawing[]) => {
  const drawing: Drawing = { title: '', units: 'mm', faceUp: '', pieces, lengths: [], holes: 0, notes: [] };
  const { width, height, pieces: placed } = arrangePieces(drawing, 10, across);
  return { size: [width, height], placed: placed.map(({ piece: { width: w }, copy, at }) => [w, copy, ...at]) };
};

describe('pieces laid out in rows', () => {
  test('go no wider than the widest, each as often as it is cut, the first row on top, all on its upper edge', () => {
    // Rows: 100; 40 + 10 + 40 = 90; 30. Heights 50, 20, 25 and two gaps of 10.
    expect(arranged(piece(100, 50), piece(40, 20, 2), piece(30, 25))).toEqual({
      size: [100, 115],
      placed: [
        [100, 1, 0, 65],
        [40, 1, 0, 35],
        [40, 2, 50, 35],
        [30, 1, 0, 0],
      ],
    });
  });

  test('go wider where a row may hold more of them, and no wider than they need', () => {
    // Rows: 100 + 10 + 40 + 10 + 40 = 200; 30.
    expect(arrangedAcross(2, piece(100, 50), piece(40, 20, 2), piece(30, 25))).toMatchObject({ size: [200, 85] });
    expect(arrangedAcross(3, piece(100, 50), piece(40, 20, 2), piece(30, 25))).toMatchObject({ size: [240, 50] });
  });

  test('fill a row to its full width, and hang from its top', () => {
    expect(arranged(piece(100, 50), piece(45, 20), piece(45, 30))).toEqual({
      size: [100, 90],
      placed: [
        [100, 1, 0, 40],
        [45, 1, 0, 10],
        [45, 1, 55, 0],
      ],
    });
    // Three pieces and two gaps are 100 in exact numbers, a little over in the machine's.
    const thirds = [80.1 / 3, 80.1 / 3, 80.1 / 3].map((width) => piece(width, 20));
    expect(arranged(piece(100.1, 50), ...thirds).size).toEqual([100.1, 80]);
    expect(arranged(piece(100, 50), ...thirds).size).toEqual([100, 110]);
  });
});

describe('the marks of a layer that are drawn', () => {
  const hole = { kind: 'line', from: [0, 0], to: [1, 0] } as const;
  const text = { kind: 'text', at: [0, 0], height: 3, rotation: 0, align: 'start', text: 'start' } as const;
  const layers = { ...noLayers(), hole: [hole], text: [text, { ...text, names: 'mark' as const }] };
  const drawn = { ...piece(10, 10), layers };

  test('are all of a chosen layer and none of another', () => {
    expect(seenOf(drawn, 'hole', ['hole'])).toEqual([hole]);
    expect(seenOf(drawn, 'hole', ['cut'])).toEqual([]);
  });

  test('are words only with the layer whose marks they name', () => {
    expect(seenOf(drawn, 'text', ['text'])).toEqual([text]);
    expect(seenOf(drawn, 'text', ['text', 'mark'])).toHaveLength(2);
  });
});
