import { describe, expect, test } from 'vitest';
import { rectangle } from '../../../src/core/math/contour.ts';
import { type Drawing, type Entity, noLayers, type Text } from '../../../src/core/pattern/drawing.ts';
import { mirroredDrawing } from '../../../src/core/pattern/mirrorDrawing.ts';
import { textWidth } from '../../../src/core/pattern/textBox.ts';
import { nearly } from './plainSource.ts';

/** A pocket 100 mm wide with some marks on one layer. */
const drawing = (marks: readonly Entity[] = []): Drawing => ({
  title: 'Plain',
  units: 'mm',
  faceUp: 'grain side up',
  pieces: [
    {
      id: 'pocket',
      name: 'Pocket',
      count: 2,
      width: 100,
      height: 60,
      outline: [
        { kind: 'line', from: [0, 0], to: [100, 0] },
        { kind: 'line', from: [100, 0], to: [70, 60] },
        { kind: 'line', from: [70, 60], to: [0, 0] },
      ],
      layers: { ...noLayers(), mark: [...marks] },
      sums: [],
      holes: 0,
      unwritten: ['cut 2, grain side up', 'mouth at the right'],
    },
  ],
  lengths: [],
  holes: 12,
  notes: ['Outside: cut 1, grain side up.'],
});
const mirrored = (entity: Entity): Entity => mirroredDrawing(drawing([entity])).pieces[0]!.layers.mark[0]!;
const text = (rest: Partial<Text> = {}): Text => ({
  kind: 'text',
  at: [10, 20],
  height: 4,
  rotation: 0,
  align: 'start',
  text: 'front',
  ...rest,
});

describe('a piece seen from the other side has', () => {
  test('its outline mirrored in its upright middle, counterclockwise still', () => {
    expect(mirroredDrawing(drawing()).pieces[0]!.outline).toEqual([
      { kind: 'line', from: [100, 0], to: [30, 60] },
      { kind: 'line', from: [30, 60], to: [0, 0] },
      { kind: 'line', from: [0, 0], to: [100, 0] },
    ]);
  });

  test('its lines, arcs and paths mirrored', () => {
    expect(mirrored({ kind: 'line', from: [10, 5], to: [30, 8] })).toEqual({
      kind: 'line',
      from: [70, 8],
      to: [90, 5],
    });
    expect(mirrored({ kind: 'arc', centre: [10, 5], radius: 3, start: 0, sweep: Math.PI / 2 })).toEqual(
      nearly({ kind: 'arc', centre: [90, 5], radius: 3, start: Math.PI / 2, sweep: Math.PI / 2 }),
    );
    expect(
      mirrored({ kind: 'path', isClosed: false, segments: [{ kind: 'line', from: [10, 5], to: [30, 8] }] }),
    ).toEqual({ kind: 'path', isClosed: false, segments: [{ kind: 'line', from: [70, 8], to: [90, 5] }] });
  });

  test('its hatching mirrored: the area, turned round again, and the slope of the lines', () => {
    const boundary = rectangle([10, 0], [20, 60]).map((side) => (side.kind === 'line' ? side.from : side.centre));
    expect(mirrored({ kind: 'hatch', boundary, angle: Math.PI / 6, spacing: 3 })).toEqual(
      nearly({
        kind: 'hatch',
        boundary: [
          [90, 60],
          [80, 60],
          [80, 0],
          [90, 0],
        ],
        angle: (5 * Math.PI) / 6,
        spacing: 3,
      }),
    );
  });

  test('its words readable still, their box mirrored', () => {
    // The box of the word lies from 10 to 10 + its width, mirrored from 90 less that to 90.
    const long = textWidth('front', 4);
    expect(mirrored(text())).toEqual(nearly(text({ at: [90 - long, 20], block: [90 - long, 90] })));
  });

  test('its rows of words moved as one block', () => {
    // The block 8 to 48 comes to lie at 52 to 92: 44 mm further right, and each of its rows with it.
    expect(mirrored(text({ block: [8, 48] }))).toEqual(text({ at: [54, 20], block: [52, 92] }));
  });

  test.each([
    ['cut 1, grain side up', 'cut 1, flesh side up'],
    ['cut 1, outside face up', 'cut 1, inside face up'],
    ['mouth at the right', 'mouth at the left'],
    ['head', 'head'],
  ])('"%s" changed to "%s"', (words, seen) => {
    expect(mirrored(text({ text: words }))).toMatchObject({ text: seen });
  });

  test('the other face named beside the pattern too', () => {
    const { faceUp, notes, pieces, holes } = mirroredDrawing(drawing());
    expect([faceUp, ...notes, ...pieces[0]!.unwritten]).toEqual([
      'flesh side up',
      'Outside: cut 1, flesh side up.',
      'cut 2, flesh side up',
      'mouth at the left',
    ]);
    expect([holes, pieces[0]!.width, pieces[0]!.count]).toEqual([12, 100, 2]);
  });
});
