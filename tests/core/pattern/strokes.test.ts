import { expect, test } from 'vitest';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { strokesAlong } from '../../../src/core/pattern/strokes.ts';
import { strokeWords } from '../../../src/output/ironWords.ts';
import { nth } from '../../nth.ts';
import { coverOf } from './coverOf.ts';

const ten = { kind: 'pricking iron', pitch_mm: 3, teeth: [2, 10], tooth_mm: 2, angle_deg: 45 };

const stitched = { method: 'stitching', style: 'saddle', edgeMargin_mm: 4 };

/** 100 strides of 3 mm along head and tail. */
const hundred = (iron: object, corner = 0) =>
  coverOf({ seam: { ...stitched, iron, cornerRadius_mm: corner }, pattern: { outsideWidth_mm: 308 } });

const along = (design: ReturnType<typeof coverOf>) => {
  const seam = seamHoles(design);
  return strokesAlong(design, seam, nth(seam.rows, 0));
};

test('the iron with the most teeth is struck as often as whole strides ask for, one tooth in the last hole', () => {
  // 100 strides by 9 a stroke: 11 strokes are 99, so a twelfth, which goes 8 holes further back.
  expect(along(hundred(ten))).toEqual([{ from: 0, to: 100, teeth: 10, times: 12, again: 8 }]);
  expect(along(hundred({ ...ten, teeth: [11] }))).toEqual([{ from: 0, to: 100, teeth: 11, times: 10, again: 0 }]);
});

test('a single tooth makes every hole by itself, as do teeth that are too many for a side', () => {
  const alone = [{ from: 0, to: 100, teeth: 1, times: 101, again: 0 }];
  expect(along(hundred({ ...ten, teeth: [1] }))).toEqual(alone);
});

test('holes round a corner and between uneven strides are made one by one', () => {
  const strokes = along(hundred(ten, 12));
  expect(strokes.map(({ teeth }) => teeth > 1)).toEqual([false, true, false, true, false]);
  // Seam line of 8 mm radius: half of its quarter circle is 6.28 mm, over two strides.
  expect(nth(strokes, 0)).toEqual({ from: 0, to: 2, teeth: 1, times: 3, again: 0 });
});

test('a strap keeps its own even holes, and says so', () => {
  const notes = (iron: object | null): string =>
    patternDrawing(coverOf({ seam: { ...stitched, iron }, construction: { strap: {} } })).notes.join();
  expect(notes(ten)).toContain('Holes that sew the strap on are spaced evenly, not by the iron.');
  expect(notes(null)).not.toContain('iron');
});

test('the sheet names sides that are alike together', () => {
  expect(strokeWords(hundred(ten))[0]).toBe('Tail and head: 12 strokes of 10 teeth, the last 8 further back.');
  expect(strokeWords(coverOf({ seam: stitched }))).toEqual([]);
});
