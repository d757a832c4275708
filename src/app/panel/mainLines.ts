import type { BudgetLine } from '../../core/index.ts';

/** A line of a budget to show; the last one may be all that is left, which has no figure of its own. */
export interface ShownLine extends Pick<BudgetLine, 'path' | 'words' | 'sensitivity' | 'share'> {
  readonly u: number | null;
  readonly from: BudgetLine['from'] | null;
  readonly tool: string;
}

/** Shares below this are shown together, and all of them left out where they print as 0 %. */
const LEAST_SHARE = 0.02;
const LEAST_REST = 0.005;

/** The lines of a budget, most first, with the smallest ones as one. */
export function mainLines(budget: readonly BudgetLine[]): readonly ShownLine[] {
  const main = budget.filter(({ share }) => share >= LEAST_SHARE);
  const rest = budget.filter(({ share }) => share < LEAST_SHARE).reduce((sum, { share }) => sum + share, 0);
  return [
    ...main.map((line) => ({ ...line, tool: line.with })),
    ...(rest < LEAST_REST
      ? []
      : [{ path: '', words: 'all else', u: null, sensitivity: 0, share: rest, from: null, tool: '' }]),
  ];
}
