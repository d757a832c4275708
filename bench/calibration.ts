import { nth } from '../tests/nth.ts';

const STEPS = 20_000_000;
const REPEATS = 5;

/** One pass of a fixed chain of dependent multiply-adds (the logistic map), which no compiler can shorten. */
function loop(): number {
  let x = 0.3;
  for (let i = 0; i < STEPS; i++) x = 3.9 * x * (1 - x);
  return x;
}

/**
 * Milliseconds this machine needs, now, for a fixed arithmetic loop of 20 million steps; the median of five passes.
 * A timing divided by it can be compared between machines and between a busy and an idle hour.
 */
export function calibrationMs(): number {
  const times: number[] = [];
  for (let i = 0; i < REPEATS; i++) {
    const start = performance.now();
    const x = loop();
    times.push(performance.now() - start);
    if (!(x > 0 && x < 1)) throw new Error(`The calibration loop left (0, 1): ${x}`);
  }
  times.sort((a, b) => a - b);
  return nth(times, (REPEATS - 1) / 2);
}
