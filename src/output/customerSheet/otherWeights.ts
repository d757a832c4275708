import { type CoverDesign, coverDesign, type Job, MM_PER_OUNCE, mm } from '../../core/index.ts';
import type { Offer, OfferedWeight } from './offer.ts';

/** The same cover in a lighter and a heavier leather; null where none is sold. */
export interface OtherWeights {
  readonly lighter: CoverDesign | null;
  readonly heavier: CoverDesign | null;
}

/** Leather under an ounce is not sold for covers (common practice, no source), and none over 8 mm is taken by a job. */
const LEAST = MM_PER_OUNCE;
const MOST = 8;

/**
 * Designs the cover of a job in the two weights of an offer, cut anew for each: a size that was fixed for the job's own leather
 * would show only how badly one cut serves two leathers. Pockets of the same leather as the outside follow it.
 */
export function otherWeights(job: Job, { lighter, heavier }: Pick<Offer, 'lighter' | 'heavier'>): OtherWeights {
  const { min_mm, max_mm } = job.leather.outside;
  const ounce = (by: number): OfferedWeight | null => {
    const weight = { min_mm: min_mm + by, max_mm: max_mm + by };
    return weight.min_mm < LEAST || weight.max_mm > MOST ? null : weight;
  };
  const design = (weight: OfferedWeight | null): CoverDesign | null => weight && coverDesign(inWeight(job, weight));
  return { lighter: design(lighter ?? ounce(-MM_PER_OUNCE)), heavier: design(heavier ?? ounce(MM_PER_OUNCE)) };
}

function inWeight(job: Job, { min_mm, max_mm }: OfferedWeight): Job {
  const { outside, pocket } = job.leather;
  const { foldThickness_mm: skived } = outside;
  const other = {
    ...outside,
    min_mm: mm(min_mm),
    max_mm: mm(max_mm),
    foldThickness_mm: skived !== null && skived > max_mm ? null : skived,
  };
  return {
    ...job,
    leather: { ...job.leather, outside: other, pocket: isSameLeather(pocket, outside) ? other : pocket },
    pattern: { ...job.pattern, outsideWidth_mm: null, outsideHeight_mm: null },
  };
}

const isSameLeather = (a: Job['leather']['outside'], b: Job['leather']['outside']): boolean =>
  JSON.stringify(a) === JSON.stringify(b);
