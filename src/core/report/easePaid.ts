import type { ReportDoubt } from './doubtSchema.ts';

/** What a sized ease pays for at one edge. */
export interface EasePaid {
  readonly edge: 'foreEdge' | 'head';
  /** The ease in words. */
  readonly name: string;
  /** The ease, mm at one edge. */
  readonly whole: number;
  /** The doubts that cost enough to be named, most first. */
  readonly main: ReportDoubt['ease']['head'];
}

/** Costs below this, mm, are not named. */
const LEAST_COST = 0.05;

const NAMES = { foreEdge: 'Fore-edge ease', head: 'Head and tail ease' } as const;

/** What the eases that are left open pay for; none of an ease that is typed, or that no doubt costs much. */
export const easePaid = ({ ease }: Pick<ReportDoubt, 'ease'>): readonly EasePaid[] =>
  (['foreEdge', 'head'] as const)
    .map((edge) => ({
      edge,
      name: NAMES[edge],
      whole: ease[edge].reduce((sum, { costs_mm }) => sum + costs_mm, 0),
      main: ease[edge].filter(({ costs_mm }) => costs_mm >= LEAST_COST),
    }))
    .filter(({ main }) => main.length > 0);
