import { Matrix4, PerspectiveCamera, Vector3 } from 'three';
import { expect, test } from 'vitest';
import { dimensionLine } from '../../../src/app/scene/marks/dimensionLine.ts';
import { viewOf } from '../../../src/app/scene/marks/view.ts';

const numbers = (path: string): number[] => (path.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);

const [ALONG, ACROSS] = [new Vector3(0, 1, 0), new Vector3(1, 0, 0)];

/** A picture of 200 px by 200 px from 1,000 mm away, 0.5 mm to a pixel where it is seen squarely. */
function seenFrom(eye: Vector3) {
  const camera = new PerspectiveCamera((2 * Math.atan(0.05) * 180) / Math.PI, 1, 1, 5000);
  camera.position.copy(eye);
  camera.lookAt(0, 0, 0);
  camera.updateMatrixWorld();
  return viewOf(camera, { width: 200, height: 200 }, new Matrix4());
}

const SQUARE = seenFrom(new Vector3(0, 0, 1000));

test('a dimension line lies between its ends, with a tick along the edge through each', () => {
  const drawn = dimensionLine(new Vector3(-20, 0, 0), new Vector3(20, 0, 0), { along: ALONG, across: ACROSS }, SQUARE);
  expect(numbers(drawn.line)).toEqual([60, 100, 140, 100]);
  expect(drawn.middle.map(Math.round)).toEqual([100, 100]);
  expect(numbers(drawn.ticks)).toEqual([60, 104, 60, 96, 140, 104, 140, 96]);
});

test('a short one goes on beyond its ticks, on the same line', () => {
  const drawn = dimensionLine(new Vector3(0, 0, 0), new Vector3(1, 0, 0), { along: ALONG, across: ACROSS }, SQUARE);
  expect(numbers(drawn.line)).toEqual([84, 100, 118, 100]);
});

test('arrowheads have their tips at the ends, and stand outside a dimension that has no room for them', () => {
  const headsOf = (length: number): number[] =>
    numbers(
      dimensionLine(new Vector3(), new Vector3(length, 0, 0), { along: ALONG, across: ACROSS }, SQUARE).heads,
    ).map(Math.round);
  expect(headsOf(40)).toEqual([100, 100, 108, 97, 108, 103, 180, 100, 172, 97, 172, 103]);
  expect(headsOf(1)).toEqual([100, 100, 92, 97, 92, 103, 102, 100, 110, 97, 110, 103]);
});

test('two ends at one place still make a mark, across the edge', () => {
  const [end, same] = [new Vector3(), new Vector3()];
  const drawn = dimensionLine(end, same, { along: ALONG, across: ACROSS }, SQUARE);
  expect(numbers(drawn.line)).toEqual([84, 100, 116, 100]);
});

test('line and ticks lie on their surface: seen at 60 degrees they are half as long across the slope', () => {
  const slanted = seenFrom(new Vector3(1000 * Math.sin(Math.PI / 3), 0, 1000 * Math.cos(Math.PI / 3)));
  const drawn = dimensionLine(new Vector3(), new Vector3(), { along: ALONG, across: ACROSS }, slanted);
  const [left = 0, , right = 0] = numbers(drawn.line);
  expect(right - left).toBeCloseTo(16, 0);
  const [, top = 0, , foot = 0] = numbers(drawn.ticks);
  expect(top - foot).toBeCloseTo(8, 0);
});
