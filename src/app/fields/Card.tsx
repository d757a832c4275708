import { type ReactNode, useState } from 'react';
import './card.css';

interface CardProps {
  readonly id: CardId;
  readonly title: string;
  /** What it holds, as one sentence. */
  readonly said: ReactNode;
  /** Word for unfolding it. */
  readonly act?: string;
  readonly startsOpen?: boolean;
  readonly children: ReactNode;
}

/** The cards beside the cover. */
export type CardId = 'book' | 'leather' | 'seam' | 'cut' | 'checks' | 'sure';

const cardElement = (id: CardId) => document.getElementById(`card-${id}`) as HTMLDetailsElement | null;

/** Unfolds a card and brings it into view, its heading in focus. */
export function openCard(id: CardId): HTMLDetailsElement | null {
  const card = cardElement(id);
  if (card === null) return null;
  card.open = true;
  card.querySelector('summary')?.focus({ preventScroll: true });
  card.scrollIntoView({ block: 'start' });
  return card;
}

/** A part of the job as one sentence, which unfolds in place to its fields. These are made when it is first unfolded. */
export function Card({ id, title, said, act = 'change', startsOpen = false, children }: CardProps) {
  // A screen that is turned must not fold a card that is in use.
  const [startedOpen] = useState(startsOpen);
  const [wasOpen, setWasOpen] = useState(startsOpen);
  return (
    <details
      className="card"
      id={`card-${id}`}
      open={startedOpen}
      onToggle={({ currentTarget }) => currentTarget.open && setWasOpen(true)}
    >
      <summary>
        <h2>{title}</h2>
        <span className="card-act">{act}</span>
        <span className="card-said">{said}</span>
      </summary>
      {wasOpen && <div className="card-body">{children}</div>}
    </details>
  );
}
