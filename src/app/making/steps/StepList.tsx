import { useState } from 'react';
import type { ListedStep } from './useProgress.ts';

interface StepListProps {
  readonly id: string;
  readonly steps: readonly ListedStep[];
  readonly at: number;
  readonly isOpen: boolean;
  readonly goTo: (index: number) => void;
  readonly startAgain: () => void;
}

/** All steps with those that are done, beside the step on a wide screen and opened over it on a narrow one. */
export function StepList({ id, steps, at, isOpen, goTo, startAgain }: StepListProps) {
  return (
    <nav id={id} className="step-list" aria-label="All steps" data-open={isOpen}>
      <ol>
        {steps.map(({ id: step, number, name, isDone, done, changes }, i) => (
          <li key={step}>
            <button type="button" aria-current={i === at ? 'step' : undefined} onClick={() => goTo(i)}>
              <Tick isDone={isDone} />
              <span>
                {number}. {name}
                {done !== null && (
                  <span className="step-day">
                    <span className="only-heard">, </span>
                    {done}
                  </span>
                )}
              </span>
              {changes.length > 0 && <em>changed</em>}
            </button>
          </li>
        ))}
      </ol>
      {steps.some(({ isDone }) => isDone) && <StartAgain startAgain={startAgain} />}
    </nav>
  );
}

const Tick = ({ isDone }: { readonly isDone: boolean }) => (
  <svg className="step-tick" viewBox="0 0 20 20" aria-hidden="true">
    <circle cx={10} cy={10} r={8.5} />
    {isDone && <path d="M5.5 10.5L9 14L15 6.5" />}
  </svg>
);

/** Clears every tick, once it is asked for twice: a slip of the finger must not. */
export function StartAgain({ startAgain }: { readonly startAgain: () => void }) {
  const [isAsked, setIsAsked] = useState(false);
  if (!isAsked)
    return (
      <button type="button" onClick={() => setIsAsked(true)}>
        Start again
      </button>
    );
  return (
    <fieldset>
      <legend>Take every tick away?</legend>
      <button
        type="button"
        onClick={() => {
          setIsAsked(false);
          startAgain();
        }}
      >
        Start again from step 1
      </button>
      <button type="button" onClick={() => setIsAsked(false)}>
        Keep the ticks
      </button>
    </fieldset>
  );
}
