import type { ReactNode } from 'react';
import './ownLeather.css';

interface OwnLeatherHeadProps {
  /** What the piece is called. */
  readonly name: string;
  /** What its leather is called where one of the maker's own was taken. */
  readonly taken: string | null;
  /** Whether a leather that was typed may be put among the maker's own: that of the outside. */
  readonly mayKeep: boolean;
  /** The name as a link, where the shelf knows the leather. */
  readonly link?: ReactNode;
  readonly isPicking?: boolean;
  /** Nothing can be pressed until it is there. */
  readonly on?: { readonly pick: () => void; readonly keep: () => void; readonly release: () => void };
}

/** Which leather a piece has and what to do about it: of the same height before the shelf is there as afterwards, so nothing moves under a hand. */
export function OwnLeatherHead({ name, taken, mayKeep, link, isPicking = false, on }: OwnLeatherHeadProps) {
  return (
    <>
      <p>Your leathers: {taken === null ? 'none taken, the figures are typed.' : (link ?? <b>{taken}</b>)}</p>
      <p className="row">
        <button type="button" aria-expanded={isPicking} disabled={on === undefined} onClick={on?.pick}>
          {taken === null ? 'Take one of your leathers' : 'Take another'}
          <span className="only-heard"> for the {name.toLowerCase()}</span>
        </button>
        {taken === null && mayKeep && (
          <button type="button" disabled={on === undefined} onClick={on?.keep}>
            Keep it among your leathers
          </button>
        )}
        {taken !== null && (
          <button type="button" disabled={on === undefined} onClick={on?.release}>
            Let go
            <span className="only-heard"> of {taken}; the figures stay</span>
          </button>
        )}
      </p>
    </>
  );
}
