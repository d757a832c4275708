import { expect, test } from 'vitest';
import { richestRectangle } from '../../src/sight/richestRectangle.ts';
import { defined } from '../defined.ts';

const GRID = { left: -100, low: -150, step: 2, columns: 101, rows: 151 };

/** 1 within a rectangle about (12, -20) of 80 x 120 mm turned by 0.3, and a little below 0 elsewhere. */
const values = (inside: number, outside: number): Float32Array =>
  Float32Array.from({ length: GRID.columns * GRID.rows }, (_, i) => {
    const [x, y] = [
      GRID.left + GRID.step * (i % GRID.columns) - 12,
      GRID.low + GRID.step * Math.floor(i / GRID.columns) + 20,
    ];
    const [a, b] = [Math.cos(0.3) * x + Math.sin(0.3) * y, Math.cos(0.3) * y - Math.sin(0.3) * x];
    return Math.abs(a) < 40 && Math.abs(b) < 60 ? inside : outside;
  });

test('a turned rectangle is found to a step of its grid', () => {
  const { middle, angle, width, height } = defined(richestRectangle(values(1, -0.5), GRID) ?? undefined);
  expect(Math.hypot(middle[0] - 12, middle[1] + 20)).toBeLessThan(3);
  expect(Math.abs(angle - 0.3)).toBeLessThan(0.04);
  expect(Math.abs(width - 80)).toBeLessThan(6);
  expect(Math.abs(height - 120)).toBeLessThan(6);
});

test('where every value is below zero there is none', () => {
  expect(richestRectangle(values(-1, -0.5), GRID)).toBeNull();
});
