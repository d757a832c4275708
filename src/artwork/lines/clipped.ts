import type { Vec2 } from '../../core/index.ts';

/** A rectangle by its least and largest coordinates. */
export interface Bounds {
  readonly from: Vec2;
  readonly to: Vec2;
}

/** The parts of a polyline within a rectangle, its edge included (Liang and Barsky 1984, ACM Trans. Graph. 3(1), 1). */
export function clipped(line: readonly Vec2[], bounds: Bounds): Vec2[][] {
  const parts: Vec2[][] = [];
  let part: Vec2[] | undefined;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const [enters, leaves] = within(a, b, bounds);
    if (enters > leaves) {
      part = undefined;
      continue;
    }
    if (part === undefined || enters > 0) {
      part = [enters > 0 ? between(a, b, enters) : a];
      parts.push(part);
    }
    part.push(leaves < 1 ? between(a, b, leaves) : b);
    if (leaves < 1) part = undefined;
  }
  return parts;
}

/** The shares of the way from a to b at which it enters and leaves a rectangle; entered after left where it misses it. */
function within(a: Vec2, b: Vec2, { from, to }: Bounds): [number, number] {
  let [enters, leaves] = [0, 1];
  for (const axis of [0, 1] as const) {
    const step = b[axis] - a[axis];
    const [near, far] = [(from[axis] - a[axis]) / step, (to[axis] - a[axis]) / step];
    if (step === 0) {
      if (a[axis] < from[axis] || a[axis] > to[axis]) return [1, 0];
    } else {
      enters = Math.max(enters, Math.min(near, far));
      leaves = Math.min(leaves, Math.max(near, far));
    }
  }
  return [enters, leaves];
}

const between = (a: Vec2, b: Vec2, share: number): Vec2 => [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
