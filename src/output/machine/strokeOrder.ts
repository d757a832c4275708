import { distance, type Vec2 } from '../../core/index.ts';
import { reversed, type Stroke, strokeEnd, strokeStart, waysAlong } from './stroke.ts';

/** Sweeps of 2-opt after which the order is good enough, and the pairs looked at in all, which bound its time. */
const MOST_SWEEPS = 40;
const MOST_PAIRS = 30_000_000;

/** Way of the head with nothing burnt from a point through strokes in their order, mm. */
export function travelOf(strokes: readonly Stroke[], from: Vec2): number {
  let [way, at] = [0, from];
  for (const stroke of strokes) {
    way += distance(at, strokeStart(stroke));
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

function nearestFirst(strokes: readonly Stroke[], from: Vec2): Stroke[] {
  const left = strokes.map(waysAlong);
  const order: Stroke[] = [];
  let at = from;
  while (left.length > 0) {
    let [next, nearest, least] = [0, left[0]![0]!, Number.POSITIVE_INFINITY];
    left.forEach((ways, i) => {
      for (const way of ways) {
        const far = distance(at, strokeStart(way));
        if (far < least) [next, nearest, least] = [i, way, far];
      }
    });
    left.splice(next, 1);
    order.push(nearest);
    at = strokeEnd(nearest);
  }
  return order;
}

function untangled(strokes: readonly Stroke[], from: Vec2): Stroke[] {
  const order = [...strokes];
  const [starts, ends] = [order.map(strokeStart), order.map(strokeEnd)];
  let pairs = 0;
  for (let sweep = 0; sweep < MOST_SWEEPS && pairs < MOST_PAIRS; sweep++) {
    let isBetter = false;
    for (let i = 0; i < order.length; i++) {
      const before = i === 0 ? from : ends[i - 1]!;
      for (let k = i + 1; k < order.length; k++) {
        pairs++;
        const after = starts[k + 1];
        const now = distance(before, starts[i]!) + (after === undefined ? 0 : distance(ends[k]!, after));
        const then = distance(before, ends[k]!) + (after === undefined ? 0 : distance(starts[i]!, after));
        if (then > now - 1e-6) continue;
        isBetter = true;
        for (let [a, b] = [i, k]; a <= b; a++, b--) {
          [order[a], order[b]] = [order[b]!, order[a]!];
          [starts[a], starts[b], ends[a], ends[b]] = [ends[b]!, ends[a]!, starts[b]!, starts[a]!];
        }
        for (let each = i; each <= k; each++) if (!order[each]!.isClosed) order[each] = reversed(order[each]!);
      }
    }
    if (!isBetter) break;
  }
  return order;
}

/** The same order, each stroke followed in the way that makes the whole travel least. */
function wellBegun(strokes: readonly Stroke[], from: Vec2): Stroke[] {
  interface Reached {
    readonly way: Stroke;
    readonly travel: number;
    readonly before: Reached | null;
  }
  let reached: readonly Reached[] = [];
  for (const stroke of strokes)
    reached = waysAlong(stroke).map((way): Reached => {
      const start = strokeStart(way);
      if (reached.length === 0) return { way, travel: distance(from, start), before: null };
      const total = (before: Reached): number => before.travel + distance(strokeEnd(before.way), start);
      const before = reached.reduce((a, b) => (total(b) < total(a) ? b : a));
      return { way, travel: total(before), before };
    });
  const order: Stroke[] = [];
  let last: Reached | null = reached.reduce((a, b) => (b.travel < a.travel ? b : a));
  for (; last !== null; last = last.before) order.push(last.way);
  return order.reverse();
}
