import { type CoverDesign, coverDesign } from '../fold/coverDesign.ts';
import type { Job } from '../job/jobSchema.ts';

/** Card of a mock-up: its thickness, how it folds, and the sizes it was cut to where they differ from the tool's. */
export type Card = Job['mockup']['card'];

/**
 * The same job made in card: every layer of the cover in card of one thickness, the book's measures untouched.
 *
 * Sizes that the maker gave for leather do not apply to card; the card's own cut sizes do, where given.
 */
export function cardJob(job: Job, card: Card): Job {
  const sheet = {
    ...job.leather.outside,
    min_mm: card.thickness_mm,
    max_mm: card.thickness_mm,
    neutral: card.neutral,
    bendRatio: card.bendRatio,
    foldThickness_mm: null,
  };
  return {
    ...job,
    leather: { outside: sheet, pocket: sheet, lining: job.leather.lining === null ? null : sheet },
    pattern: { ...job.pattern, outsideWidth_mm: card.cutWidth_mm, outsideHeight_mm: card.cutHeight_mm },
  };
}

/** The card version of the pattern, and how it should fit if the book is as it was measured. */
export const cardDesign = (job: Job, card: Card): CoverDesign & { readonly isCard: true } => ({
  ...coverDesign(cardJob(job, card)),
  isCard: true,
});
