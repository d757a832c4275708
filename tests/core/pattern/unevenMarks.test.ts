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
  const { pieces } = patternDrawing(coverOf({ seam, pattern: { outsideWidth_mm: 384 } }));
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
