import { useEffect, useId, useRef, useState } from 'react';
import { filmSteps, sentence } from '../../../core/index.ts';
import { filmAddress } from '../../stage/film/filmAddress.ts';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { addressOf } from '../../state/place.ts';
import { StepPicture } from './picture/StepPicture.tsx';
import { StepBody } from './StepBody.tsx';
import { StepCautions } from './StepCautions.tsx';
import { StartAgain, StepList } from './StepList.tsx';
import { type ListedStep, useProgress, type WorkProgress } from './useProgress.ts';
import { useStepHand } from './useStepHand.ts';
import { useWakeLock } from './useWakeLock.ts';
import './steps.css';

/** The order of work at the bench, one step a screen, with large targets and the screen kept awake. */
function MakingSteps({ design }: Pick<Bench, 'design'>) {
  const work = useProgress(design);
  const { steps, at, doneCount, goTo, finish } = work;
  const isAwake = useWakeLock();
  const [isListed, setIsListed] = useState(false);
  const id = useId();
  const part = useRef<HTMLElement>(null);
  const title = useRef<HTMLHeadingElement>(null);
  const step = steps[at];
  const filmed = filmSteps(design, 'nominal').find(({ work }) => work === step?.id);
  const go = (index: number): void => {
    if (index < 0 || index > steps.length) return;
    setIsListed(false);
    goTo(index);
  };
  const done = (): void => {
    setIsListed(false);
    finish();
  };
  useStepHand(part, {
    forward: () => go(at + 1),
    back: () => go(at - 1),
    finish: done,
    goTo: (index) => index < steps.length && go(index),
  });

  // Keys work from the start, and a screen reader reads each step as it comes.
  // biome-ignore lint/correctness/useExhaustiveDependencies: runs when another step is shown
  useEffect(() => {
    title.current?.focus({ preventScroll: true });
    part.current?.scrollIntoView({ block: 'start' });
  }, [at]);

  return (
    <section ref={part} className="making-steps not-printed" aria-labelledby={`${id}-title`}>
      <div className="steps-top">
        <a className="link" href={addressOf('workbench', 'work')}>
          Leave
        </a>
        <p>{step === undefined ? 'End of the work' : `Step ${step.number} of ${steps.length}`}</p>
        <button
          type="button"
          className="quiet"
          aria-expanded={isListed}
          aria-controls={`${id}-list`}
          onClick={() => setIsListed(!isListed)}
        >
          All steps
        </button>
        <progress value={doneCount} max={steps.length} aria-label={`${doneCount} of ${steps.length} steps done`} />
      </div>
      <StepNotes work={work} isAwake={isAwake} goTo={go} />
      <div className="steps-middle">
        <StepList
          id={`${id}-list`}
          steps={steps}
          at={at}
          isOpen={isListed}
          goTo={go}
          startAgain={() => {
            setIsListed(false);
            work.startAgain();
          }}
        />
        <article>
          <h2 id={`${id}-title`} ref={title} tabIndex={-1}>
            {step === undefined ? endTitle(work) : `${step.number}. ${step.name}`}
          </h2>
          {step === undefined ? (
            <End work={work} goTo={go} />
          ) : (
            <>
              <StepPicture step={step} design={design} />
              <div className="step-text">
                {step.changes.length > 0 && <Changed step={step} />}
                <StepBody step={step} notes={step.notes} />
                <StepCautions cautions={step.cautions} />
                {filmed !== undefined && (
                  <a className="link" href={filmAddress(filmed.id)}>
                    See it in the film
                  </a>
                )}
                {step.done !== null && (
                  <p className="step-words">
                    {sentence(step.done)}{' '}
                    <button
                      type="button"
                      className="quiet"
                      onClick={() => {
                        work.reopen(step.id);
                        // The button goes with its tick.
                        title.current?.focus({ preventScroll: true });
                      }}
                    >
                      Take the tick away
                    </button>
                  </p>
                )}
              </div>
            </>
          )}
        </article>
      </div>
      <div className="steps-bar">
        <button type="button" disabled={at === 0} onClick={() => go(at - 1)}>
          Back
        </button>
        {step !== undefined && (
          <button type="button" className="main" onClick={done}>
            {doneWords(step, at === steps.length - 1)}
          </button>
        )}
      </div>
    </section>
  );
}

function doneWords({ isDone, changes }: ListedStep, isLast: boolean): string {
  if (isDone && changes.length === 0) return 'Next';
  const words = isDone ? 'Done again' : 'Done';
  return isLast ? words : `${words}, next`;
}

const endTitle = ({ steps, doneCount }: WorkProgress): string =>
  doneCount === steps.length ? `All ${steps.length} steps are done` : `${doneCount} of ${steps.length} steps are done`;

interface StepNotesProps {
  readonly work: WorkProgress;
  readonly isAwake: boolean;
  readonly goTo: (index: number) => void;
}

/** What the browser does not do, and which done steps have changed. */
function StepNotes({ work: { steps, at, isKept }, isAwake, goTo }: StepNotesProps) {
  const changed = steps.filter(({ number, changes }) => changes.length > 0 && number !== at + 1);
  return (
    <div role="status" className="steps-notes">
      {!isAwake && <p>This browser lets the screen sleep.</p>}
      {!isKept && <p>This browser does not keep where you stop.</p>}
      {changed.length > 0 && (
        <p>
          Changed since done:{' '}
          {changed.map(({ number, name }) => (
            <button key={number} type="button" className="quiet" onClick={() => goTo(number - 1)}>
              {number}. {name}
            </button>
          ))}
        </p>
      )}
    </div>
  );
}

const Changed = ({ step }: { readonly step: ListedStep }) => (
  <div className="step-changed">
    <p>Changed since you did it:</p>
    <ul>
      {step.changes.map((change) => (
        <li key={change}>{change}</li>
      ))}
    </ul>
  </div>
);

function End({ work: { steps, startAgain }, goTo }: Omit<StepNotesProps, 'isAwake'>) {
  const open = steps.filter(({ isDone }) => !isDone);
  return (
    <div className="step-text steps-end">
      {open.length > 0 && <p className="step-words">Not done yet:</p>}
      {open.map(({ number, name }) => (
        <button key={number} type="button" onClick={() => goTo(number - 1)}>
          {number}. {name}
        </button>
      ))}
      <StartAgain startAgain={startAgain} />
    </div>
  );
}

export default lagging(({ design }) => ({ design }), MakingSteps);
