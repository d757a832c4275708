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
const arranged = (...pieces: PieceDrawing[]) => inRoom(undefined, ...pieces);
const inRoom = (aspect: number | undefined, ...pieces: PieceDrawing[]) => {
  const drawing: Drawing = { title: '', units: 'mm', faceUp: '', pieces, lengths: [], holes: 0, notes: [] };
  const { width, height, pieces: placed } = arrangePieces(drawing, 10, aspect);
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

describe('pieces laid out to fill a room', () => {
  const pieces = [piece(100, 50), piece(40, 50, 2), piece(60, 50)];

  test('lie in one row where it is wide, and in the narrow rows where it is high', () => {
    expect(inRoom(10, ...pieces).size).toEqual([270, 50]);
    expect(inRoom(0.1, ...pieces)).toEqual(arranged(...pieces));
  });

  test('lie as large as any rows let them', () => {
    // By hand: rows of 100 | 90 | 60 are 100 by 170; of 150 | 110, 150 by 110; of 200 | 60, 200 by 110; one of 270 is 270 by 50.
    expect(inRoom(0.5, ...pieces).size).toEqual([100, 170]);
    expect(inRoom(1, ...pieces).size).toEqual([150, 110]);
    expect(inRoom(3, ...pieces).size).toEqual([270, 50]);
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
