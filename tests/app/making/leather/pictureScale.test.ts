import { describe, expect, test } from 'vitest';
import {
  type HidePicture,
  pictureSheet,
  pointsIssue,
  readBy,
  scaleDoubt,
  scaledBy,
  seenAt,
  withPoints,
} from '../../../../src/app/making/leather/pictureScale.ts';
import { distance, MM_PER_INCH, printer } from '../../../../src/core/index.ts';

const PICTURE: HidePicture = {
  address: 'blob:nothing',
  name: 'hide.jpg',
  width: 2000,
  height: 1500,
  mm: 0.5,
  isScaled: false,
  points: [
    [200, 375],
    [800, 375],
  ],
  off: [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
};
const percent = (share: number): string => printer('mm').share(share, 1);

describe('a picture scaled by two points', () => {
  test('has them at the distance that was typed, and everything else in proportion', () => {
    const set = withPoints(
      PICTURE,
      [
        [100, 100],
        [700, 100],
      ],
      0.5,
    );
    const scaled = scaledBy(set, 8.5 * MM_PER_INCH);
    expect(distance(...scaled.points)).toBeCloseTo(215.9, 9);
    expect(scaled.mm / set.mm).toBeCloseTo(215.9 / 600, 9);
    expect(scaled.isScaled).toBe(true);
    // The share that the scale may be off does not follow the size.
    expect(scaleDoubt(scaled)).toBeCloseTo(scaleDoubt(set), 12);
  });

  test('is refused until both points were put somewhere', () => {
    expect(pointsIssue(PICTURE, percent)).toMatch(/^Put both points/);
    expect(
      pointsIssue(
        withPoints(
          PICTURE,
          [
            [150, 375],
            [800, 375],
          ],
          0.5,
        ),
        percent,
      ),
    ).toMatch(/^Put both points/);
    expect(
      pointsIssue(
        withPoints(
          PICTURE,
          [
            [150, 375],
            [801, 375],
          ],
          0.5,
        ),
        percent,
      ),
    ).toBeNull();
  });

  // Each set to 1.5 px, so to 3 mm at half a pixel a millimetre: together 3 sqrt 2 = 4.24 mm, 5 % of 85 mm.
  test('is refused with how far off it could be where the points are too near each other', () => {
    const near = withPoints(
      PICTURE,
      [
        [100, 100],
        [160, 100],
      ],
      0.5,
    );
    expect(scaleDoubt(near)).toBeCloseTo((3 * Math.SQRT2) / 60, 12);
    expect(pointsIssue(near, percent)).toContain('could be 7.1 % off');
    expect(
      pointsIssue(
        withPoints(
          PICTURE,
          [
            [100, 100],
            [184, 100],
          ],
          0.5,
        ),
        percent,
      ),
    ).not.toBeNull();
    expect(
      pointsIssue(
        withPoints(
          PICTURE,
          [
            [100, 100],
            [186, 100],
          ],
          0.5,
        ),
        percent,
      ),
    ).toBeNull();
    // Set again ten times as large, the same two points do.
    expect(
      pointsIssue(
        withPoints(
          PICTURE,
          [
            [100, 100],
            [160, 100],
          ],
          5,
        ),
        percent,
      ),
    ).toBeNull();
  });

  test('two points in one place are refused', () => {
    expect(
      pointsIssue(
        withPoints(
          PICTURE,
          [
            [100, 100],
            [100, 100],
          ],
          0.5,
        ),
        percent,
      ),
    ).toContain('100 % off');
  });
});

test('a picture by the sheet is as large as its long bar was measured, and surer once it was', () => {
  const sheet = pictureSheet('Letter 2', 0.0101, 0.01);
  const meant = { ...PICTURE, isScaled: true, sheet };
  expect(sheet.bar).toBe(260);
  expect(scaleDoubt(meant)).toBeCloseTo(2 * 0.0101, 4);
  const measured = readBy(meant, 265.2);
  expect(measured.mm).toBeCloseTo(0.5 * 1.02, 9);
  expect(scaleDoubt(measured)).toBeLessThan(0.005);
  expect(readBy(measured, null)).toEqual(meant);
  // Two points outdo the sheet.
  expect(scaledBy({ ...measured, off: [1, 1] }, 612).sheet).toBeUndefined();
});

test('what a picture shows of the leather grows with its scale', () => {
  expect(seenAt([[100, 50.26]], 0.5)).toEqual([[50, 25.1]]);
});
