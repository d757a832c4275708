import { useId } from 'react';
import { chanceWords, type JobDocument } from '../../core/index.ts';
import type { Answered } from './useExplored.ts';

interface TrialsProps {
  readonly document: JobDocument;
  /** True once no answer will come. */
  readonly isFailed: boolean;
  readonly answered: Answered<'trials'> | null;
}

/** How often the cover fits when every input is drawn from its doubt, beside the chance that the verdict goes by. */
export function Trials({ document, isFailed, answered }: TrialsProps) {
  const id = useId();
  const isOld = answered !== null && answered.question.document !== document;
  const words = (): string => {
    if (answered === null || isOld) return isFailed ? 'Not worked out.' : 'Being worked out.';
    const { draws, chance } = answered.answer;
    return `In ${draws} trials it closes in ${chanceWords(chance.closes)} and fits in ${chanceWords(chance.fits)}.`;
  };
  return (
    <section className="trials" aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>By trials</h3>
      <p role="status" className={isOld ? 'stale' : undefined}>
        {words()}
      </p>
      {answered !== null && !isOld && answered.answer.differs !== '' && <p>{answered.answer.differs}</p>}
      <p className="help">
        Every measure and every figure of the leather is drawn from its doubt, the same draws each time.
      </p>
    </section>
  );
}
