import { expect, test } from 'vitest';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { defined } from '../../defined.ts';
import { coverOf } from './coverOf.ts';

const seam = {
  method: 'stitching',
  style: 'saddle',
  edgeMargin_mm: 4,
  iron: { kind: 'pricking iron', pitch_mm: 3, teeth: [10, 2], tooth_mm: 2, angle_deg: 45 },
};

/** Words on a piece that hold what is looked for. */
const wordsOn = (design: ReturnType<typeof coverOf>, id: string, has: string) =>
  defined(patternDrawing(design).pieces.find((piece) => piece.id === id)).layers.text.flatMap((entity) =>
    entity.kind === 'text' && entity.text.startsWith(has) ? [entity.text] : [],
  );

/** Marks and words of uneven strides, by piece. */
const markedIn = (pattern: object) =>
  Object.fromEntries(
    patternDrawing(coverOf({ seam, pattern })).pieces.map(({ id, layers }) => [
      id,
      layers.text.flatMap((entity) => (entity.kind === 'text' && entity.text.includes('×') ? [entity.text] : [])),
    ]),
  );

test('uneven strides are marked where they begin and end on each piece that has their holes, with their size', () => {
  // 1 mm more than 125 and 82 strides of 3 mm and two margins.
  expect(markedIn({ outsideWidth_mm: 384, outsideHeight_mm: 255 })).toMatchObject({
    outside: ['7 × 3.14 mm', '8 × 3.13 mm', '7 × 3.14 mm', '8 × 3.13 mm'],
    pocket: ['8 × 3.13 mm'],
  });
  const single = { ...seam, iron: { ...seam.iron, teeth: [1] } };
  const { pieces } = patternDrawing(coverOf({ seam: single, pattern: { outsideWidth_mm: 384 } }));
  const outside = defined(pieces.find(({ id }) => id === 'outside'));
  const ends = outside.layers.mark.flatMap((mark) =>
    mark.kind === 'line' && mark.from[0] === mark.to[0] && Math.min(mark.from[1], mark.to[1]) === 5.5
      ? [mark.from[0]]
      : [],
  );
  // Seven strides in the middle of 376 mm, 59 of 3 mm to either side.
  expect(ends.sort((a, b) => a - b)).toEqual([expect.closeTo(4 + 177, 9), expect.closeTo(384 - 4 - 177, 9)]);
});

test('whole strides need no mark', () => {
  expect(markedIn({ outsideWidth_mm: 383, outsideHeight_mm: 254 })).toMatchObject({ outside: [], pocket: [] });
});

/** 100 strides of 3 mm along head and tail, 82 along the fore-edges. */
const hundred = (change: object = {}) =>
  coverOf({ seam: { ...seam, ...change }, pattern: { outsideWidth_mm: 308, outsideHeight_mm: 254 } });

test('the strokes of each side are counted on each piece, of the holes that it has', () => {
  // 100 and 82 strides by 9 a stroke: 12 and 10 strokes.
  const side = ['tail: 12 strokes of 10 teeth', 'fore-edge: 10 strokes of 10 teeth'];
  expect(wordsOn(hundred(), 'outside', 'tail:')).toEqual([side[0]]);
  expect(wordsOn(hundred(), 'outside', 'head:')).toEqual(['head: 12 strokes of 10 teeth']);
  expect(wordsOn(hundred(), 'outside', 'fore-edge:')).toEqual([side[1], side[1]]);
  const { holes } = defined(patternDrawing(hundred()).pieces.find(({ id }) => id === 'pocket'));
  // Its fore-edge has 83 holes, head and tail one of them each at a corner.
  const strides = (holes - 83) / 2;
  expect(wordsOn(hundred(), 'pocket', 'tail:')).toEqual([`tail: ${Math.ceil(strides / 9)} strokes of 10 teeth`]);
  expect(wordsOn(hundred(), 'pocket', 'fore-edge:')).toEqual([side[1]]);
  expect(wordsOn(hundred({ iron: null }), 'outside', 'tail:')).toEqual([]);
});

test('a mark shows where a last stroke starts that goes back over holes already made', () => {
  const outside = defined(patternDrawing(hundred()).pieces[0]);
  const marks = outside.layers.mark.flatMap((mark) =>
    mark.kind === 'line' && mark.from[0] === mark.to[0] && mark.from[1] === 4 + 1.5 ? [mark.from[0]] : [],
  );
  // The tenth hole from the back corner, of the tail seen from the grain side: the front is at the right.
  expect(marks).toEqual([expect.closeTo(4 + 9 * 3, 9)]);
  const even = { iron: { ...seam.iron, teeth: [11] } };
  expect(wordsOn(hundred(even), 'outside', 'tail:')).toEqual(['tail: 10 strokes of 11 teeth']);
  expect(wordsOn(hundred(), 'outside', 'last stroke')).toHaveLength(4);
});

test('round corners and between uneven strides holes are counted singly', () => {
  const design = coverOf({ seam: { ...seam, cornerRadius_mm: 12 }, pattern: { outsideWidth_mm: 308 } });
  // Two stretches, each from a corner's third hole to the uneven strides.
  expect(wordsOn(design, 'outside', 'tail:')).toEqual([
    expect.stringMatching(/^tail: \d+ strokes of 10 teeth, \d+ holes singly$/),
  ]);
});

test('how strokes are read is told once, and not of a tool with a single tooth', () => {
  const said = (teeth: readonly number[]) =>
    patternDrawing(hundred({ iron: { ...seam.iron, teeth } })).notes.filter((note) => note.includes('stroke'));
  expect(said([10, 2])).toHaveLength(1);
  expect(said([1])).toEqual([]);
});
