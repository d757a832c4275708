import { beforeEach, expect, test } from 'vitest';
import type { OpenedPicture } from '../../../src/app/photograph/photographQuestions.ts';
import {
  movePoint,
  photographs,
  placePoints,
  renamePoints,
  type Shot,
  setLookedAt,
  undoMove,
} from '../../../src/app/photograph/photographs.ts';
import { photographOf, toBeLookedAt } from '../../../src/app/photograph/useMeasuredBook.ts';
import type { Vec2 } from '../../../src/core/index.ts';
import { nth } from '../../nth.ts';

const picture: OpenedPicture = {
  width: 4000,
  height: 3000,
  camera: 'a',
  focal: null,
  marks: [{ page: 'A4 1', mark: '0', corners: [], seen: [], u: 0.1 }],
  preview: { width: 1, height: 1, rgba: new Uint8ClampedArray(4) },
  advice: [],
};
const shot: Shot = {
  id: 'one',
  file: new File([], 'one.jpg'),
  paper: null,
  position: 'lying',
  picture,
  failure: null,
  points: [],
  begin: [],
  isGuessed: false,
};
const places = [
  [10, 10],
  [20, 10],
  [20, 30],
  [10, 30],
] as const;
const found = (at: Vec2) => ({ at, u: 0.3, isByHand: false, isLookedAt: false });
const first = (): Shot => nth(photographs.getState().shots, 0);
const at = (): unknown => first().points.map((point) => point?.at);

beforeEach(() => {
  photographs.setState({ ...photographs.getInitialState(), shots: [shot] });
  placePoints('one', { isGuessed: true, begin: places, points: places.map(found) });
});

test('a move by hand has a doubt of its own and is undone by itself; what was found is no move', () => {
  expect(photographs.getState().moves).toEqual([]);
  movePoint('one', 1, [25, 12]);
  movePoint('one', 1, [26, 12]);
  expect(first().points[1]).toEqual({ at: [26, 12], u: 1.5, isByHand: true, isLookedAt: true });
  undoMove();
  expect(first().points[1]?.at).toEqual([25, 12]);
  undoMove();
  undoMove();
  expect(at()).toEqual(places);
});

test('names go round the corners, four times back to where they were; or change sides', () => {
  renamePoints('lying', [3, 0, 1, 2]);
  expect(at()).toEqual([places[3], places[0], places[1], places[2]]);
  for (let i = 0; i < 3; i++) renamePoints('lying', [3, 0, 1, 2]);
  expect(at()).toEqual(places);
  renamePoints('standing', [1, 0, 3, 2]);
  expect(at()).toEqual(places);
  renamePoints('lying', [1, 0, 3, 2]);
  expect(at()).toEqual([places[1], places[0], places[3], places[2]]);
});

test('a photograph is measured by once it is open and shows the sheet, by the points that are placed', () => {
  placePoints('one', { isGuessed: true, begin: places, points: [null, { ...found([1, 2]), u: 1 }] });
  expect(photographOf(first())?.points).toEqual([{ point: 1, seen: [1, 2], u: 1 }]);
  expect(photographOf({ ...shot, picture: null })).toBeNull();
  expect(photographOf({ ...shot, picture: { ...picture, marks: [] } })).toBeNull();
});

test('corners that the program placed are to be looked at, until each was moved by hand or the maker says so', () => {
  const waits = (): string[] => toBeLookedAt(photographs.getState()).map(({ id }) => id);
  expect(waits()).toEqual(['one']);
  setLookedAt('one', true);
  expect(waits()).toEqual([]);
  undoMove();
  expect(waits()).toEqual(['one']);
  for (const [i, place] of places.entries()) {
    expect(waits()).toEqual(['one']);
    movePoint('one', i, place);
  }
  expect(waits()).toEqual([]);
  // Found anew, they are other corners.
  placePoints('one', { isGuessed: true, begin: places, points: places.map(found) });
  expect(waits()).toEqual(['one']);
  // Three corners measure nothing, and hold nothing up.
  placePoints('one', { isGuessed: true, begin: places, points: [null, ...places.slice(1).map(found)] });
  expect(waits()).toEqual([]);
});
