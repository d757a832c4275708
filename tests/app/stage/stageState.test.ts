import { expect, test } from 'vitest';
import { lookFrom, OPENING_STAGE, openingOf, openingWords, poseWords } from '../../../src/app/stage/stageState.ts';
import { radians } from '../../../src/core/units/radians.ts';

const opened = (angle: number) => ({ pose: { kind: 'opening', angle }, film: null }) as const;
const making = (opening: number) =>
  ({ pose: { kind: 'sequence', at: 0.5 }, film: { words: 'close and press', opening } }) as const;

test('the section that stands in for the scene is open as far as the film says, and flat where it says nothing', () => {
  expect(openingOf(making(1))).toBe(1);
  expect(openingOf({ ...making(1), film: null })).toBe(Math.PI);
  expect(openingOf(opened(1))).toBe(1);
});

test('a pose is told in words', () => {
  expect(poseWords(opened(0))).toBe('closed');
  expect(poseWords(opened(Math.PI))).toBe('open flat');
  expect(poseWords(opened(Math.PI / 2))).toBe('open 90 degrees');
  expect(poseWords(making(1))).toBe('close and press');
});

test('a book that the wrap holds open is said to stay open, however far closed was asked', () => {
  const closed = { kind: 'opening', angle: 0 } as const;
  expect(openingWords(closed, { staysOpen: radians(0) })).toBe('closed');
  expect(openingWords(closed, { staysOpen: radians(Math.PI / 10) })).toBe('stays open 18 degrees');
  expect(openingWords({ kind: 'opening', angle: 1 }, { staysOpen: radians(0.5) })).toBe('open 57 degrees');
  expect(openingWords(closed, { staysOpen: null })).toBe('the boards do not go in');
});

test('looking inside opens a closed book, and leaves one that is open, or flat before it is folded, as it is', () => {
  const looked = (stage: ReturnType<typeof opened> | ReturnType<typeof making>) => ({
    ...OPENING_STAGE,
    ...stage,
    ...lookFrom({ ...OPENING_STAGE, ...stage }, 'inside'),
  });
  for (const stage of [opened(0), opened(0.5), making(0)]) {
    expect(looked(stage).viewpoint).toBe('inside');
    expect(openingOf(looked(stage))).toBeGreaterThan(Math.PI / 2);
  }
  for (const stage of [opened(1.5), opened(Math.PI), making(Math.PI)]) expect(looked(stage)).toMatchObject(stage);
  expect(lookFrom(OPENING_STAGE, 'back')).toEqual({ viewpoint: 'back' });
});
