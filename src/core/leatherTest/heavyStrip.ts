import { findLevel } from '../math/findLevel.ts';

/** A strip held level at one end that bends under its own weight, with lengths in units of its bending length (EI / w)^(1/3). */
export interface HeavyStrip {
  /** How far the tip points below the level, radians. */
  readonly tip: number;
  /** Length that hangs free. */
  readonly length: number;
  /** How far the tip hangs below the held end. */
  readonly droop: number;
  /** How far out the tip is. */
  readonly reach: number;
}

/** Steps over a strip that bends little; one that hangs takes more. */
const STEPS = 64;

type State = readonly [s: number, angle: number, turning: number, droop: number, reach: number];

/**
 * Shape of a strip whose tip points `tip` below the level: EI theta'' = w s cos(theta), inextensible, s from the tip, where no
 * moment acts (the heavy elastica: C. Y. Wang 1986, Int. J. Mech. Sci. 28, 549, quoted from memory).
 *
 * In units of the bending length theta'' = -s cos(theta) from theta = tip, theta' = 0 until theta = 0, where it is held: no
 * boundary value has to be searched for. Runge-Kutta of fourth order; the last step is taken in theta instead of s, which ends on
 * theta = 0 (M. Henon 1982, Physica D 5, 412). Relative error below 1e-7.
 * @param tip radians, over 0 and below pi / 2
 */
export function heavyStrip(tip: number): HeavyStrip {
  // Where cos(theta) is 1 throughout, theta = tip - s^3 / 6.
  const step = Math.cbrt(6 * tip) / STEPS;
  let state: State = [0, tip, 0, 0, 0];
  for (;;) {
    const next = stepped(state, step, ([s, angle, turning]) => [
      1,
      turning,
      -s * Math.cos(angle),
      Math.sin(angle),
      Math.cos(angle),
    ]);
    if (next[1] <= 0) break;
    state = next;
  }
  const [length, , , droop, reach] = stepped(state, -state[1], ([s, angle, turning]) => [
    1 / turning,
    1,
    (-s * Math.cos(angle)) / turning,
    Math.sin(angle) / turning,
    Math.cos(angle) / turning,
  ]);
  return { tip, length, droop, reach };
}

/** One step of the classic Runge-Kutta method. */
function stepped(at: State, step: number, slope: (state: State) => State): State {
  const moved = (by: State, share: number): State => [
    at[0] + share * by[0],
    at[1] + share * by[1],
    at[2] + share * by[2],
    at[3] + share * by[3],
    at[4] + share * by[4],
  ];
  const a = slope(at);
  const b = slope(moved(a, step / 2));
  const c = slope(moved(b, step / 2));
  const d = slope(moved(c, step));
  const mean = (i: 0 | 1 | 2 | 3 | 4): number => (a[i] + 2 * b[i] + 2 * c[i] + d[i]) / 6;
  return moved([mean(0), mean(1), mean(2), mean(3), mean(4)], step);
}

/** A tip that points down by more than this hangs so straight that its droop says nothing of the leather. */
const STEEPEST = Math.PI / 2 - 1e-3;

/** Largest droop over overhang that `stripOfDroop` reads. */
export const MOST_DROOP = 0.9;

/**
 * The strip whose droop is a given share of its length: the inverse of `heavyStrip`. Droop over length grows with the angle of the
 * tip, from d / L = w L^3 / 8 EI where it is small.
 * @param share droop over length, over 0 and at most `MOST_DROOP`
 */
export function stripOfDroop(share: number): HeavyStrip {
  const shareAt = (tip: number): number => {
    const { length, droop } = heavyStrip(tip);
    return droop / length;
  };
  // Of a small droop the tip points down by 4/3 of the share; sin(theta) is never more than theta.
  return heavyStrip(findLevel(shareAt, share, share, STEEPEST));
}
