import type { Vec2 } from '../../core/index.ts';
import { reversed, type Stroke, strokeEnd, strokeStart, waysAlong } from './stroke.ts';

/** Pairs that 2-opt looks at before the order is good enough: it bounds the time on a slow machine. */
const MOST_PAIRS = 20_000_000;

/** Way of the head with nothing burnt from a point through strokes in their order, mm. */
export function travelOf(strokes: readonly Stroke[], from: Vec2): number {
  let [way, at] = [0, from];
  for (const stroke of strokes) {
    way += apart(at, strokeStart(stroke));
    at = strokeEnd(stroke);
  }
  return way;
}

/**
 * Orders strokes for a short way between them: what lies deeper in the work comes later, and among equals the nearest end is next,
 * then 2-opt (a stretch of the order is followed backward where that is shorter) until nothing is gained, then the best start of
 * every closed stroke by dynamic programming. Never longer than the order given. Every stroke is kept, once.
 *
 * Source: nearest neighbour and 2-opt as in Croes, "A method for solving traveling-salesman problems", Operations Research 6
 * (1958), from memory.
 */
export function strokeOrder(strokes: readonly Stroke[], from: Vec2): Stroke[] {
  const ordered: Stroke[] = [];
  let at = from;
  for (const depth of [0, 1, 2, 3] as const) {
    const level = strokes.filter((stroke) => stroke.depth === depth);
    if (level.length === 0) continue;
    const tries = [level, untangled(nearestFirst(level, at), at)].map((each) => wellBegun(each, at));
    const best = tries.reduce((a, b) => (travelOf(b, at) < travelOf(a, at) ? b : a));
    ordered.push(...best);
    at = strokeEnd(best.at(-1)!);
  }
  return ordered;
}

/** Distance, faster than `Math.hypot` by far; the loops below ask for it some ten million times. */
const apart = (a: Vec2, b: Vec2): number => Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2);

function nearestFirst(strokes: readonly Stroke[], from: Vec2): Stroke[] {
  const left = strokes.map((stroke) => waysAlong(stroke).map((way) => ({ way, start: strokeStart(way) })));
  const order: Stroke[] = [];
  let at = from;
  while (left.length > 0) {
    let [next, nearest, least] = [0, left[0]![0]!, Number.POSITIVE_INFINITY];
    for (let i = 0; i < left.length; i++)
      for (const each of left[i]!) {
        const far = apart(at, each.start);
        if (far < least) [next, nearest, least] = [i, each, far];
      }
    left[next] = left.at(-1)!;
    left.pop();
    order.push(nearest.way);
    at = strokeEnd(nearest.way);
  }
  return order;
}

function untangled(strokes: readonly Stroke[], from: Vec2): Stroke[] {
  const order = strokes.map((stroke) => ({
    stroke,
    start: strokeStart(stroke),
    end: strokeEnd(stroke),
    isTurned: false,
  }));
  let pairs = 0;
  for (let isBetter = true; isBetter && pairs < MOST_PAIRS; ) {
    isBetter = false;
    for (let i = 0; i < order.length; i++) {
      const before = i === 0 ? from : order[i - 1]!.end;
      let first = order[i]!;
      let entering = apart(before, first.start);
      for (let k = i + 1; k < order.length; k++) {
        const [last, after] = [order[k]!, order[k + 1]];
        const gain =
          entering -
          apart(before, last.end) +
          (after === undefined ? 0 : apart(last.end, after.start) - apart(first.start, after.start));
        if (gain < 1e-6) continue;
        isBetter = true;
        const turned = order.slice(i, k + 1).reverse();
        turned.forEach(({ stroke, start, end, isTurned }, n) => {
          order[i + n] = { stroke, start: end, end: start, isTurned: !isTurned };
        });
        first = order[i]!;
        entering = apart(before, first.start);
      }
      pairs += order.length - i;
    }
  }
  return order.map(({ stroke, isTurned }) => (isTurned && !stroke.isClosed ? reversed(stroke) : stroke));
}

/** The same order, each stroke followed in the way that makes the whole travel least. */
function wellBegun(strokes: readonly Stroke[], from: Vec2): Stroke[] {
  interface Reached {
    readonly way: Stroke;
    readonly end: Vec2;
    readonly travel: number;
    readonly before: Reached | null;
  }
  let reached: readonly Reached[] = [];
  for (const stroke of strokes)
    reached = waysAlong(stroke).map((way): Reached => {
      const [start, end] = [strokeStart(way), strokeEnd(way)];
      if (reached.length === 0) return { way, end, travel: apart(from, start), before: null };
      const total = (before: Reached): number => before.travel + apart(before.end, start);
      const before = reached.reduce((a, b) => (total(b) < total(a) ? b : a));
      return { way, end, travel: total(before), before };
    });
  const order: Stroke[] = [];
  let last: Reached | null = reached.reduce((a, b) => (b.travel < a.travel ? b : a));
  for (; last !== null; last = last.before) order.push(last.way);
  return order.reverse();
}
