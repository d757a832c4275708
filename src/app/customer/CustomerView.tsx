import { useLayoutEffect, useMemo, useState } from 'react';
import { customerSheet } from '../../output/customerSheet/customerSheet.ts';
import { isCustomerFragment } from '../../output/shareLink/customerLink.ts';
import { useReducedMotion } from '../scene/camera/useReducedMotion.ts';
import { useBench } from '../state/BenchContext.tsx';
import { usePlace } from '../state/place.ts';
import { CustomerPage } from './CustomerPage.tsx';
import { CustomerTools } from './CustomerTools.tsx';
import './customer.css';
import { SentView } from './SentView.tsx';
import { useCoverPictures } from './useCoverPictures.ts';
import { useOfferChoices } from './useOfferChoices.ts';

/** The page for a customer: of the open job, with the maker's tools over it, or of a link that was sent. */
export default function CustomerView() {
  // The place changes with the address.
  usePlace();
  const { hash } = window.location;
  const scheme = useBench(({ view }) => view.scheme);
  // The customer's sheet is light, also while the bench is dark.
  useLayoutEffect(() => {
    const { dataset } = document.documentElement;
    dataset.scheme = 'light';
    return () => {
      dataset.scheme = scheme;
    };
  }, [scheme]);
  return isCustomerFragment(hash) ? <SentView key={hash} fragment={hash} /> : <MakersView />;
}

function MakersView() {
  const { design, report, units } = useBench(({ design, report, lengths }) => ({
    design,
    report,
    units: lengths.units,
  }));
  const choices = useOfferChoices(design);
  const { offer, mark } = choices;
  const sheet = useMemo(() => customerSheet(design, report, offer), [design, report, offer]);
  const [isTurning, setTurning] = useState(!useReducedMotion());
  const pictures = useCoverPictures();
  return (
    <>
      <CustomerTools
        shown={{ sheet, mark, units, ...pictures }}
        isTurning={isTurning}
        setTurning={setTurning}
        choices={choices}
      />
      <CustomerPage sheet={sheet} mark={mark} isTurning={isTurning} {...pictures} />
    </>
  );
}
