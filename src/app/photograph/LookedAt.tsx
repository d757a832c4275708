import { type Shot, setLookedAt, waitsForLook } from './photographs.ts';

interface LookedAtProps {
  readonly shot: Shot;
  /** Of the photograph among those of its position, from 1. */
  readonly number: number;
  /** Whether all its corners are placed; if not, the word is of those that are. */
  readonly isWhole: boolean;
}

const idOf = (shot: string): string => `looked-at-${shot}`;

/** The maker's word that the corners of a photograph stand on the book. A corner that is placed by hand needs none. */
export function LookedAt({ shot, number, isWhole }: LookedAtProps) {
  const words = `I looked at ${isWhole ? 'these' : 'the placed'} corners, each stands on the book`;
  return (
    <label className="tick">
      <input
        id={idOf(shot.id)}
        type="checkbox"
        aria-label={`Photograph ${number}: ${words}`}
        checked={!waitsForLook(shot)}
        onChange={(event) => setLookedAt(shot.id, event.target.checked)}
      />
      <span>{words}</span>
    </label>
  );
}

/** Brings the tick of a photograph into sight, with its close-ups, and the focus to it. */
export function goToLookedAt(shot: string): void {
  const tick = document.getElementById(idOf(shot));
  tick?.focus({ preventScroll: true });
  tick?.closest('.face')?.scrollIntoView({ block: 'center' });
}
