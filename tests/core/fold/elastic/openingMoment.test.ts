import { expect, test } from 'vitest';
import { openingMoment } from '../../../../src/core/fold/elastic/openingMoment.ts';
import type { Obstacle } from '../../../../src/core/strip/obstacle.ts';
import type { EndReaction, StripContact, StripSolution } from '../../../../src/core/strip/stripSolution.ts';

/** A front board from (4, 1) to its hinge (0, 1), a back board from (0, -1) to (4, -1); the front one swings alone. */
const OUTLINE = [4, 1, 0, 1, 0, -1, 4, -1];
/** Velocity of its points for one radian: the front tip goes up by the length of the board. */
const RATE = [0, 4, 0, 0, 0, 0, 0, 0];
const OBSTACLE: Obstacle = {
  x: Float64Array.of(4, 0, 0, 4),
  y: Float64Array.of(1, 1, -1, -1),
  closed: false,
  source: Int32Array.of(0, 1, 2, 3),
};
const STILL: EndReaction = { fx: 0, fy: 0, moment: 0, slide: 0, stop: 0 };
const ENDS = {
  start: { at: [3, 1], angle: Math.PI, tip: 0, hinge: 1 },
  end: { at: [3, -1], angle: 0, tip: 3, hinge: 2 },
} as const;

const contact = (kind: StripContact['kind'], index: number, x: number, y: number, fx: number, fy: number) =>
  ({ kind, index, place: 0, x, y, fx, fy }) satisfies StripContact;

function momentOf(contacts: readonly StripContact[], start: Partial<EndReaction> = {}) {
  const solution = { contacts, start: { ...STILL, ...start }, end: STILL } as unknown as StripSolution;
  return openingMoment(solution, OBSTACLE, OUTLINE, RATE, ENDS);
}

test('a force on the front board has its distance from the hinge as its lever', () => {
  // The strip is pushed off by 2 at x = 1, so that it pushes the board back, and the book shut.
  expect(momentOf([contact('edge', 0, 1, 1.1, 0, 2)])).toEqual({ moment: -2, press: 2 });
  expect(momentOf([contact('edge', 0, 3, 1.1, 0, 2)]).moment).toBeCloseTo(-6, 12);
  expect(momentOf([contact('vertex', 0, 4, 1, 0, 2)]).moment).toBeCloseTo(-8, 12);
});

test('a force on what does not move does no work, and still presses', () => {
  expect(momentOf([contact('edge', 1, -0.1, 0, -3, 4), contact('vertex', 2, 0, -1, 0, -1)])).toEqual({
    moment: -0,
    press: 6,
  });
});

test('a held end works by its force across, its stop along, and its moment', () => {
  // At (3, 1): lever 3 for a force across; a stop along the board passes through the hinge.
  expect(momentOf([], { fy: -2 }).moment).toBeCloseTo(6, 12);
  expect(momentOf([], { stop: 5 }).moment).toBeCloseTo(0, 12);
  // Opening turns the front board counterclockwise.
  expect(momentOf([], { moment: 0.5 }).moment).toBeCloseTo(-0.5, 12);
});
