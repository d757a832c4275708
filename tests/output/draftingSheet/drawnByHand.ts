import type { Vec2 } from '../../../src/core/math/vec2.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';

/** What a hand has drawn that follows the sentences of a drafting sheet, and knows nothing else. */
export interface HandDrawing {
  /** The cut edge, curves in short chords, from A round by B, C and D. */
  readonly outline: readonly Vec2[];
  /** Lines from tail to head, by the words before the colon. */
  readonly lines: readonly { readonly name: string; readonly points: readonly Vec2[] }[];
  /** Distances that a sentence says must hold, each with what the drawing has. */
  readonly checks: readonly { readonly said: number; readonly drawn: number }[];
  /** Sentences that no rule of the hand was found for. */
  readonly left: readonly string[];
}

/** A length as it is printed: `382.5 mm`, `14 15/16 in`, `3/8 in`, `0.161 in (about 5/32 in)`. */
const LENGTH = String.raw`((?:\d+ )?\d+/\d+ in|\d+(?:\.\d+)? (?:mm|in))(?: \(about [^)]*\))?`;

export function lengthOf(text: string): number {
  const unit = text.endsWith('in') ? 25.4 : 1;
  const [first, second] = text.slice(0, -3).split(' ');
  const value = (part: string): number => {
    const [over, under = '1'] = part.split('/');
    return Number(over) / Number(under);
  };
  return unit * (value(defined(first)) + (second === undefined ? 0 : value(second)));
}

const pattern = (words: string): RegExp => new RegExp(`^${words.replaceAll('LENGTH', LENGTH)}$`);

const apart = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const toward = (from: Vec2, to: Vec2, by: number): Vec2 => {
  const share = by / apart(from, to);
  return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
};

/** Points of the circle through three points, from the first by the second to the third. */
function curveThrough(a: Vec2, b: Vec2, c: Vec2): Vec2[] {
  const d = 2 * (a[0] * (b[1] - c[1]) + b[0] * (c[1] - a[1]) + c[0] * (a[1] - b[1]));
  const square = ([x, y]: Vec2): number => x * x + y * y;
  const x = (square(a) * (b[1] - c[1]) + square(b) * (c[1] - a[1]) + square(c) * (a[1] - b[1])) / d;
  const y = (square(a) * (c[0] - b[0]) + square(b) * (a[0] - c[0]) + square(c) * (b[0] - a[0])) / d;
  const angle = (p: Vec2): number => Math.atan2(p[1] - y, p[0] - x);
  const turn = (from: number, to: number): number => Math.atan2(Math.sin(to - from), Math.cos(to - from));
  const [start, first, second] = [angle(a), turn(angle(a), angle(b)), turn(angle(b), angle(c))];
  const radius = apart(a, [x, y]);
  return Array.from({ length: 401 }, (_, i): Vec2 => {
    const at = start + (first + second) * (i / 400);
    return [x + radius * Math.cos(at), y + radius * Math.sin(at)];
  });
}

const NEIGHBOURS: Readonly<Record<string, readonly [before: string, after: string]>> = {
  A: ['D', 'B'],
  B: ['A', 'C'],
  C: ['B', 'D'],
  D: ['C', 'A'],
};

/** Follows the sentences one by one. Throws where a sentence names a point that is not drawn yet. */
export function drawnByHand(steps: readonly string[]): HandDrawing {
  const points = new Map<string, Vec2>();
  const at = (name: string): Vec2 => defined(points.get(name));
  const lines: { name: string; points: Vec2[] }[] = [];
  const checks: { said: number; drawn: number }[] = [];
  /** What takes the place of a corner, and of the edge that follows it. */
  const corners = new Map<string, Vec2[]>();
  const edges = new Map<string, Vec2[]>();
  const left: string[] = [];

  const rules: readonly (readonly [RegExp, (...found: string[]) => void])[] = [
    [
      /^Draw a straight line along the lower edge of the card\. Mark A near its left end\.$/,
      () => points.set('A', [0, 0]),
    ],
    [
      pattern('From A measure LENGTH along it to B\\.'),
      (length) => points.set('B', [at('A')[0] + lengthOf(defined(length)), 0]),
    ],
    [/^At A and at B draw lines upward, at right angles to AB\.$/, () => defined(points.get('B'))],
    [
      pattern('From A measure LENGTH upward to D, and from B measure LENGTH upward to C\\. Join D and C\\.'),
      (d, c) => {
        points.set('D', [at('A')[0], lengthOf(defined(d))]);
        points.set('C', [at('B')[0], lengthOf(defined(c))]);
      },
    ],
    [
      pattern(
        'Check: A to C and B to D must both be LENGTH, and D to C LENGTH\\. If not, draw the right angles again\\.',
      ),
      (diagonal, top) => {
        for (const [from, to] of ['AC', 'BD'].map((pair) => [...pair]))
          checks.push({ said: lengthOf(defined(diagonal)), drawn: apart(at(defined(from)), at(defined(to))) });
        checks.push({ said: lengthOf(defined(top)), drawn: apart(at('D'), at('C')) });
      },
    ],
    [
      pattern(
        'Corners? ([A-D, and]+) (?:is|are) (rounded|cut off): mark LENGTH from the corner on both its edges(?: and join the marks\\.|\\. Square lines inward from the marks meet in the centre\\. Draw the arc from mark to mark about it\\.)',
      ),
      (names, style, length) => {
        for (const name of defined(names).match(/[A-D]/g) ?? []) {
          const [before, after] = defined(NEIGHBOURS[name]);
          const marks = [before, after].map((other) => toward(at(name), at(other), lengthOf(defined(length))));
          const [first, second] = [nth(marks, 0), nth(marks, 1)];
          if (style === 'cut off') {
            corners.set(name, [first, second]);
            continue;
          }
          const centre: Vec2 = [first[0] + second[0] - at(name)[0], first[1] + second[1] - at(name)[1]];
          const radius = apart(centre, first);
          const angle = (p: Vec2): number => Math.atan2(p[1] - centre[1], p[0] - centre[0]);
          corners.set(
            name,
            Array.from({ length: 201 }, (_, i): Vec2 => {
              const turned = angle(first) + ((Math.PI / 2) * i) / 200;
              return [centre[0] + radius * Math.cos(turned), centre[1] + radius * Math.sin(turned)];
            }),
          );
        }
      },
    ],
    [
      pattern(
        'The edge from ([A-D]) to ([A-D]) is curved: from its middle measure LENGTH inward\\. Bend a thin rule through the three points and draw along it\\.',
      ),
      (from, to, depth) => {
        const [start, end] = [at(defined(from)), at(defined(to))];
        const half: Vec2 = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2];
        const inside: Vec2 = [(at('A')[0] + at('B')[0]) / 2, half[1]];
        edges.set(defined(from), curveThrough(start, toward(half, inside, lengthOf(defined(depth))), end));
      },
    ],
    [
      pattern(
        '([A-Z][a-z ]+): mark LENGTH from ([A-D]) toward ([A-D]) and from ([A-D]) toward ([A-D])\\. Join the marks(?:\\.| by a curve: from the middle between them measure LENGTH toward ([A-D])[A-D]\\. Bend a thin rule through the three points\\.)',
      ),
      (name, length, a, b, c, d, depth, side) => {
        const by = lengthOf(defined(length));
        const [low, high] = [toward(at(defined(a)), at(defined(b)), by), toward(at(defined(c)), at(defined(d)), by)];
        const half: Vec2 = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
        const drawn =
          depth === undefined
            ? [low, high]
            : curveThrough(low, toward(half, [at(defined(side))[0], half[1]], lengthOf(depth)), high);
        lines.push({ name: defined(name), points: drawn });
      },
    ],
  ];

  for (const step of steps) {
    const rule = rules.find(([words]) => words.test(step));
    if (rule === undefined) left.push(step);
    else rule[1](...(step.match(rule[0]) ?? []).slice(1));
  }
  const outline = ['A', 'B', 'C', 'D'].flatMap((name) => [
    ...(corners.get(name) ?? [at(name)]),
    ...(edges.get(name) ?? []),
  ]);
  return { outline: [...outline, nth(outline, 0)], lines, checks, left };
}
