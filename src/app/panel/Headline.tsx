import type { ReactNode } from 'react';
import { type Report, sentence } from '../../core/index.ts';
import { VerdictMark } from './VerdictMark.tsx';

type HeadlineProps = Pick<Report, 'verdict' | 'state' | 'headline'>;

/** Its first clause is the verdict; the others are figures that stand in the picture too, each a short sentence here. */
export function Headline({ verdict, state, headline }: HeadlineProps) {
  const [main = '', ...rest] = headline.replace(/\.$/, '').split('; ');
  return (
    <p className="headline" aria-live="polite" data-verdict={verdict}>
      <VerdictMark verdict={verdict} />
      <span>
        <b>{state}</b> {unbroken(main)}.{' '}
        {rest.length > 0 && <span className="headline-rest">{rest.map(sentence).join(' ')}</span>}
      </span>
    </p>
  );
}

/** A figure and its unit stay on one line. */
const unbroken = (words: string): ReactNode =>
  words.split(/((?:\d+ )?[\d./]+ (?:mm|in|oz)\b)/).map((part, i) =>
    i % 2 === 0 ? (
      part
    ) : (
      // biome-ignore lint/suspicious/noArrayIndexKey: the parts of a sentence keep their order
      <span key={i} className="unbroken">
        {part}
      </span>
    ),
  );

/** The fit in one sentence, and under it what makes it unsure. */
export const FitSaid = ({ leastSure, differs = '', ...headline }: HeadlineProps & FitDoubtWords) => (
  <div className="verdict-said">
    <Headline {...headline} />
    <p className="least-sure">
      {leastSure !== '' && `Least sure: ${leastSure}. `}
      {differs}
    </p>
  </div>
);

interface FitDoubtWords {
  readonly leastSure: string;
  /** Where trials say otherwise. */
  readonly differs?: string;
}
