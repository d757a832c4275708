import { budgetOf } from '../doubt/propagate.ts';
import { chanceOf, type Doubted } from '../doubt/spare.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { FitDoubt, Gap } from '../fold/fitDoubt.ts';
import type { BudgetLine, ReportDoubt } from './doubtSchema.ts';
import { doubtWords } from './doubtWords.ts';

/** Shares of a variance below this are left out of a budget. */
const LEAST_SHARE = 1e-6;

/** Measurements named at most. */
const MOST_NEXT = 6;

/** Chance that a cover closes, and that it fits in every way. */
export const chancesOf = ({ spare, chances }: FitDoubt): ReportDoubt['chance'] => ({
  closes: chanceOf(spare.closed),
  fits: chances.fits(),
});

/** How sure the fit is, as the report says it. */
export function reportDoubt(design: CoverDesign): ReportDoubt {
  const fit = design.fitDoubt;
  const { inputs, covariance } = design.doubt;
  const { spare, gaps, share } = fit;
  const budget = (length: Doubted): BudgetLine[] => {
    const shares = budgetOf(length.slopes, covariance);
    const lines = inputs.map(({ path, from, with: tool }, i) => ({
      path,
      words: doubtWords(path),
      u: Math.sqrt(Math.max(0, covariance[i]![i]!)),
      sensitivity: length.slopes[i]!,
      share: shares[i]!,
      from,
      with: tool,
    }));
    return joined(lines)
      .filter((line) => Math.abs(line.share) > LEAST_SHARE)
      .sort((a, b) => b.share - a.share);
  };
  const doubted = (length: Doubted, limit = 0) => ({
    spare_mm: length.mean - limit,
    u_mm: length.u,
    chance: chanceOf({ mean: length.mean - limit, u: length.u }),
    budget: budget(length),
  });
  const foreEdge = doubted(spare.closed);
  const gap = (of: Gap) => ({ ...doubted(of), chance: chanceOf({ mean: of.room, u: of.u }) });
  const head = gap(gaps.head);
  const { ease } = design.pieces;
  return {
    share,
    chance: chancesOf(fit),
    edges: { foreEdge, head, tail: gap(gaps.tail) },
    flat: doubted(spare.flat),
    held: doubted(fit.held, design.job.pockets.hold_mm),
    loading: doubted(fit.loading),
    ease: {
      foreEdge: ease.sized.includes('foreEdge') ? costs(foreEdge.budget, ease.foreEdge_mm) : [],
      head: ease.sized.includes('head') ? costs(head.budget, ease.head_mm) : [],
    },
    reaches: ease.reaches,
    measureNext: fit
      .next()
      .slice(0, MOST_NEXT)
      .map(({ path, words, saves, of }) => ({ path, words, saves_mm: saves, of })),
    leastSure: leastSure([foreEdge, head])?.words ?? '',
  };
}

/** Lines of one input, as the two edge margins of a dimension are, as one. */
function joined(lines: readonly BudgetLine[]): BudgetLine[] {
  const byPath = new Map<string, BudgetLine>();
  for (const line of lines) {
    const other = byPath.get(line.path) ?? { ...line, share: 0 };
    const larger = Math.abs(other.sensitivity) > Math.abs(line.sensitivity) ? other : line;
    byPath.set(line.path, { ...larger, share: other.share + line.share });
  }
  return [...byPath.values()];
}

/** The largest line of the edge that is less sure. */
const leastSure = (edges: readonly Pick<ReportDoubt['flat'], 'chance' | 'budget'>[]): BudgetLine | undefined =>
  edges.toSorted((a, b) => a.chance - b.chance)[0]?.budget[0];

/**
 * What a sized ease pays for: each doubt its share of the variance. The thickness of the leather is left out, for sizes are
 * those of the thick end.
 */
function costs(budget: readonly BudgetLine[], ease: number): ReportDoubt['ease']['head'] {
  const paid = budget.filter(({ path }) => !/^leather\.(outside|pocket|lining)$/.test(path));
  const whole = paid.reduce((sum, { share }) => sum + share, 0);
  return paid.map(({ path, words, share }) => ({ path, words, costs_mm: whole > 0 ? (ease * share) / whole : 0 }));
}
