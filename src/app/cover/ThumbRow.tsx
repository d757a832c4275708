import { useEffect } from 'react';
import { type CardId, openCard } from '../fields/Card.tsx';
import { addressOf, goTo, type Place } from '../state/place.ts';
import { followSeenViewport } from '../state/seenViewport.ts';

/** On a telephone: the places that are gone to most, within reach of the thumb. */
export default function ThumbRow({ place }: { readonly place: Place }) {
  useEffect(followSeenViewport, []);
  const show = (card: CardId) => (): void => {
    goTo('cover');
    requestAnimationFrame(() => openCard(card));
  };
  return (
    <nav className="thumb-row not-printed" aria-label="At hand">
      <button type="button" onClick={show('book')}>
        Book
      </button>
      <button type="button" onClick={show('leather')}>
        Leather
      </button>
      <a
        className="link"
        href={addressOf('cover')}
        aria-current={place.id === 'cover' ? 'page' : undefined}
        onClick={() => window.scrollTo({ top: 0 })}
      >
        Look
      </a>
      <a className="link" href={addressOf('workbench')} aria-current={place.id === 'workbench' ? 'page' : undefined}>
        Make
      </a>
    </nav>
  );
}
