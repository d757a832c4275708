import type { WorkCard } from '../../../output/benchSheet/orderOfWork.ts';

interface StepBodyProps {
  readonly step: Pick<WorkCard, 'figures' | 'troubles' | 'words'>;
  /** What the maker must know first. */
  readonly notes?: readonly string[];
}

/** What a step says: its figures, what stands in its way, its instructions. */
export function StepBody({ step: { figures, troubles, words }, notes = [] }: StepBodyProps) {
  return (
    <>
      {figures.length > 0 && (
        <dl className="step-figures">
          {figures.map(({ name, text }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{unbroken(text)}</dd>
            </div>
          ))}
        </dl>
      )}
      {troubles.map((words) => (
        <p key={words} className="step-trouble">
          {words}
        </p>
      ))}
      {[...words, ...notes].map((each) => (
        <p key={each} className="step-words">
          {each}
        </p>
      ))}
    </>
  );
}

/** A figure that is broken only between its two lengths. */
const unbroken = (figure: string): string =>
  figure
    .split(' × ')
    .map((length) => length.replaceAll(' ', '\u00a0'))
    .join(' × ');
