import { expect, test } from 'vitest';
import {
  lookFrom,
  OPENING_STAGE,
  openingOf,
  openingWords,
  poseWords,
  STAGE_STOPS,
  stageAt,
} from '../../../src/app/stage/stageState.ts';
import { SEQUENCE_STAGES } from '../../../src/core/solid/pose.ts';
import { radians } from '../../../src/core/units/radians.ts';

test('every place of the making belongs to the stage that began last', () => {
  for (const { id, from } of SEQUENCE_STAGES) expect(stageAt(from)).toBe(id);
  expect(stageAt(0.1)).toBe('pattern');
  expect(stageAt(0.99)).toBe('fold');
});

test('the place where a stage is looked at lies in that stage', () => {
  for (const { id } of SEQUENCE_STAGES) expect(stageAt(STAGE_STOPS[id])).toBe(id);
});

test('the section that stands in for the scene lies flat until the folding begins, and is closed at its end', () => {
  expect(openingOf({ kind: 'sequence', at: 0 })).toBe(Math.PI);
  expect(openingOf({ kind: 'sequence', at: 0.65 })).toBe(Math.PI);
  expect(openingOf({ kind: 'sequence', at: 1 })).toBe(0);
  expect(openingOf({ kind: 'opening', angle: 1 })).toBe(1);
});

test('a pose is told in words', () => {
  expect(poseWords({ kind: 'opening', angle: 0 })).toBe('closed');
  expect(poseWords({ kind: 'opening', angle: Math.PI })).toBe('open flat');
  expect(poseWords({ kind: 'opening', angle: Math.PI / 2 })).toBe('open 90 degrees');
  expect(poseWords({ kind: 'sequence', at: 0.4 })).toBe('book set in');
});

test('a book that the wrap holds open is said to stay open, however far closed was asked', () => {
  const closed = { kind: 'opening', angle: 0 } as const;
  expect(openingWords(closed, { staysOpen: radians(0) })).toBe('closed');
  expect(openingWords(closed, { staysOpen: radians(Math.PI / 10) })).toBe('stays open 18 degrees');
  expect(openingWords({ kind: 'opening', angle: 1 }, { staysOpen: radians(0.5) })).toBe('open 57 degrees');
  expect(openingWords(closed, { staysOpen: null })).toBe('the boards do not go in');
});

test('looking inside opens a closed book, and leaves one that is open, or flat before it is folded, as it is', () => {
  const looked = (pose: typeof OPENING_STAGE.pose) => ({
    ...OPENING_STAGE,
    pose,
    ...lookFrom({ ...OPENING_STAGE, pose }, 'inside'),
  });
  for (const pose of [
    { kind: 'opening', angle: 0 },
    { kind: 'opening', angle: 0.5 },
    { kind: 'sequence', at: 1 },
  ] as const) {
    expect(looked(pose).viewpoint).toBe('inside');
    expect(openingOf(looked(pose).pose)).toBeGreaterThan(Math.PI / 2);
  }
  for (const pose of [
    { kind: 'opening', angle: 1.5 },
    { kind: 'opening', angle: Math.PI },
    { kind: 'sequence', at: 0.4 },
  ] as const)
    expect(looked(pose).pose).toEqual(pose);
  expect(lookFrom(OPENING_STAGE, 'back')).toEqual({ viewpoint: 'back' });
});
