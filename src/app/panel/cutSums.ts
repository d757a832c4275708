import type { Allowance } from '../../core/allowance/allowances.ts';
import type { CoverDesign } from '../../core/fold/coverDesign.ts';

export interface SumLine {
  readonly name: string;
  /** How often it is taken; null where it is a single length. */
  readonly times: number | null;
  readonly each: number;
}

/** One cut size and the sum that it comes from. */
export interface CutSum {
  readonly name: string;
  readonly lines: readonly SumLine[];
  /** What the lines add up to, mm. */
  readonly sum: number;
  /** What is cut, mm: the sum, unless the maker gave a size. */
  readonly cut: number;
}

const line = (name: string, each: number, times: number | null = null): SumLine => ({ name, times, each });

const cutSum = (name: string, lines: readonly SumLine[], cut: number): CutSum => {
  const shown = lines.filter(({ each }) => Math.abs(each) > 1e-9);
  return { name, lines: shown, sum: shown.reduce((sum, { each, times }) => sum + each * (times ?? 1), 0), cut };
};

const allowed = ({ parts }: Allowance, edge: string, times: number | null): SumLine[] =>
  parts.map(({ name, length }) => line(edge === '' ? name : `${edge}: ${name}`, length, times));

/** Writes out where every cut size comes from, for the thick end of the leather. */
export function cutSums({ pieces, needs, job }: CoverDesign): readonly CutSum[] {
  const { book, foreEdge, foreEdgeSeat } = needs.thick;
  const { allowances, outside, pocket, lining, pocketDepth } = pieces;
  const sums = [
    cutSum(
      'Outside, width',
      [
        line('board width', book.width, 2),
        line('path over the back', book.spinePath),
        ...allowed(allowances.foreEdge, '', 2),
      ],
      outside.width,
    ),
    cutSum(
      'Outside, height',
      [
        line('board height', book.height),
        ...allowed(allowances.head, 'head', null),
        ...allowed(allowances.tail, 'tail', null),
      ],
      outside.height,
    ),
  ];
  if (pocket.count > 0) {
    const lines = [
      line('edge margin', foreEdge.margin),
      line('curve over the board edge', foreEdgeSeat?.curve.length ?? 0),
      line('pocket depth, beyond the seat', pocketDepth - foreEdge.seat),
    ];
    const rounding = pocket.width - lines.reduce((sum, { each }) => sum + each, 0);
    sums.push(cutSum('Pockets, width', [...lines, line('rounding up', rounding)], pocket.width));
  }
  if (lining !== null) {
    const covered = pocketDepth - foreEdge.seat - job.ease.foreEdge_mm;
    sums.push(
      cutSum(
        'Lining, width',
        [
          line('board covered by a pocket', -covered, 2),
          line('wrap, with the tuck under each pocket mouth, rounded up', lining.width + 2 * covered),
        ],
        lining.width,
      ),
    );
  }
  return sums;
}
