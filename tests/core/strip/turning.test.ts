import { describe, expect, it } from 'vitest';
import { turningAlong } from '../../../src/core/strip/turning.ts';

const circle = (turns: number): number[] =>
  Array.from({ length: 202 }, (_, i) => {
    const angle = (turns * 2 * Math.PI * Math.floor(i / 2)) / 100;
    return i % 2 === 0 ? Math.cos(angle) : Math.sin(angle);
  });

describe('the turning of a path', () => {
  it('is the sum of its signed turns, whatever its first direction', () => {
    expect(turningAlong([0, 0, -1, 0, -1, -1, 0, -1])).toBeCloseTo(Math.PI, 12);
    expect(turningAlong([0, 0, 1, 0, 1, 1, 2, 1])).toBeCloseTo(0, 12);
    // One turn fewer than there are points: 99 hundredths of each circle.
    expect(turningAlong(circle(1))).toBeCloseTo(0.99 * 2 * Math.PI, 9);
    expect(turningAlong(circle(-2))).toBeCloseTo(-0.99 * 4 * Math.PI, 9);
  });

  it('passes over points that repeat', () => {
    expect(turningAlong([0, 0, 0, 0, -1, 0, -1, 0, -1, -1])).toBeCloseTo(Math.PI / 2, 12);
  });
});
