import type { Explained, Job, Patch } from '../../../core/index.ts';
import { cardOf } from '../cardOf.ts';

/** The readings of a trial. Their error belongs to the ruler and stays in the job. */
const READINGS = ['front_mm', 'back_mm', 'head_mm', 'tail_mm', 'closes', 'opening_deg'] as const;

/**
 * The result of a trial as one edit of the job: the corrected measures, the readings and repeated measures
 * removed so that they do not count twice, and the card kept at its cut size, which came from the measures before.
 */
export function trialChange(job: Job, { change }: Pick<Explained, 'change'>): readonly Patch[] {
  const { width, height } = cardOf(job).pieces.outside;
  return [
    ...change,
    ...READINGS.map((reading) => ({ path: `mockup.readings.${reading}`, value: undefined }) as const),
    { path: 'mockup.again', value: undefined },
    { path: 'mockup.card.cutWidth_mm', value: width },
    { path: 'mockup.card.cutHeight_mm', value: height },
  ];
}

/** A new card, cut to the size that the tool derives from the present measures. */
export const NEW_CARD: readonly Patch[] = [
  { path: 'mockup.card.cutWidth_mm', value: undefined },
  { path: 'mockup.card.cutHeight_mm', value: undefined },
];
