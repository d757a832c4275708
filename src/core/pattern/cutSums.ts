import type { Allowance } from '../allowance/allowances.ts';
import type { CutSum } from './drawing.ts';
import type { PatternSource } from './seam.ts';

type Part = CutSum['parts'][number];

/** Floating-point noise of sums of a few hundred mm. */
const NOISE = 1e-9;

export const part = (name: string, each: number, times: 1 | 2 = 1): Part => ({ name, times, each });

/**
 * A dimension with what it is the sum of; parts of no length are left out, and what the parts do not explain is written
 * as `rest`, so that the sum always adds up to what is cut.
 */
export function cutSum(dimension: CutSum['dimension'], total: number, parts: readonly Part[], rest: string): CutSum {
  const sum = parts.reduce((all, { each, times }) => all + each * times, 0);
  return { dimension, total, parts: [...parts, part(rest, total - sum)].filter(({ each }) => Math.abs(each) > NOISE) };
}

const allowed = ({ parts }: Allowance, edge: string, times: 1 | 2): Part[] =>
  parts.map(({ name, length }) => part(`${edge}${name}`, length, times));

const OWN_SIZE = 'size given by the maker';

export function outsideSums({ pieces, needs }: PatternSource): CutSum[] {
  const { book } = needs.thick;
  const { allowances, outside } = pieces;
  return [
    cutSum(
      'width',
      outside.width,
      [
        part('board width', book.width, 2),
        part('path over the back', book.spinePath),
        ...allowed(allowances.foreEdge, '', 2),
      ],
      OWN_SIZE,
    ),
    heightSum({ pieces, needs }),
  ];
}

export function heightSum({ pieces, needs }: Pick<PatternSource, 'pieces' | 'needs'>): CutSum {
  const { outside } = pieces;
  const { head, tail } = pieces.allowances;
  const isAlike =
    head.parts.length === tail.parts.length &&
    head.parts.every(({ name, length }, i) => name === tail.parts[i]!.name && length === tail.parts[i]!.length);
  const parts = [
    part('board height', needs.thick.book.height),
    ...(isAlike ? allowed(head, 'head and tail: ', 2) : [...allowed(head, 'head: ', 1), ...allowed(tail, 'tail: ', 1)]),
  ];
  return cutSum('height', outside.height, parts, OWN_SIZE);
}

export function pocketSums(source: PatternSource): CutSum[] {
  const { pieces, needs } = source;
  const { foreEdge, foreEdgeSeat } = needs.thick;
  const parts = [
    part('edge margin', foreEdge.margin),
    part('curve over the board edge', foreEdgeSeat?.curve.length ?? 0),
    part('pocket depth, beyond the seat', pieces.pocketDepth - foreEdge.seat),
  ];
  return [cutSum('width', pieces.pocket.width, parts, 'rounding up'), heightSum(source)];
}
