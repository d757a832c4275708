import { type CoverDesign, coverDesign } from '../fold/coverDesign.ts';
import type { Job } from '../job/jobSchema.ts';
import { mm } from '../units/mm.ts';

/** Card of a mock-up: its thickness, how it folds, and the sizes it was cut to where they differ from the tool's. */
export type Card = Job['mockup']['card'];

/**
 * The same job in card: every layer is card of one thickness, and the card's own cut sizes replace those given for
 * leather. Card keeps its size, however the leather is worked.
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
    making: WORKED_AS_CARD,
    pattern: { ...job.pattern, outsideWidth_mm: card.cutWidth_mm, outsideHeight_mm: card.cutHeight_mm },
  };
}

/** Card is cut along its lines: it keeps its size, and what the maker's hand adds to leather is none of it. */
const WORKED_AS_CARD: Job['making'] = {
  state: 'dry',
  changeAlong: null,
  changeAcross: null,
  dressing: 'nothing',
  backbone: 'upright',
  hand: { margin_mm: mm(0), cutting_mm: mm(0) },
};

/** The pattern in card, with the ease of the leather, and its fit if the measures are right. */
export function cardDesign(job: Job, card: Card): CoverDesign & { readonly isCard: true } {
  const { foreEdge_mm, head_mm, tail_mm } = coverDesign(job).pieces.ease;
  const made = cardJob(job, card);
  return { ...coverDesign({ ...made, ease: { ...made.ease, foreEdge_mm, head_mm, tail_mm } }), isCard: true };
}
