import { useMemo, useState } from 'react';
import type { CoverDesign } from '../../core/index.ts';
import { type Offer, offeredPrice, PLAIN_OFFER } from '../../output/customerSheet/offer.ts';
import { today } from '../../output/today.ts';
import { keptMark } from './mark.ts';

interface Choices extends Pick<Offer, 'lighter' | 'heavier'> {
  readonly showsPrice: boolean;
  /** The maker's mark as a data address; null for none. */
  readonly mark: string | null;
}

/** What the maker chooses for the page of a customer. */
export interface OfferChoices extends Choices {
  readonly change: (change: Partial<Choices>) => void;
  /** Whether the job prices anything. */
  readonly hasPrice: boolean;
  /** Of today. */
  readonly offer: Offer;
}

/** The choices last while the page is shown; the mark is kept in the browser. */
export function useOfferChoices(design: CoverDesign): OfferChoices {
  const [choices, setChoices] = useState<Choices>(() => ({
    showsPrice: true,
    lighter: null,
    heavier: null,
    mark: keptMark(),
  }));
  const { showsPrice, lighter, heavier } = choices;
  const hasPrice = useMemo(() => offeredPrice(design) !== null, [design]);
  const offer = useMemo<Offer>(
    () => ({ ...PLAIN_OFFER, date: today(), lighter, heavier, ...(!showsPrice && { prices: null }) }),
    [showsPrice, lighter, heavier],
  );
  return { ...choices, change: (change) => setChoices((before) => ({ ...before, ...change })), hasPrice, offer };
}
