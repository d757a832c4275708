import { type Box2, stretchInside, type Vec2 } from '../../core/index.ts';

/** The parts of a polyline within a rectangle, its edge included. */
export function clipped(line: readonly Vec2[], box: Box2): Vec2[][] {
  const parts: Vec2[][] = [];
  let part: Vec2[] | undefined;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const [enters, leaves] = stretchInside(a, b, box);
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

const between = (a: Vec2, b: Vec2, share: number): Vec2 => [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
