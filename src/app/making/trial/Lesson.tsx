import type { CardLesson, Explained, Job } from '../../../core/index.ts';
import { useBench, useDispatch, useLengths } from '../../state/BenchContext.tsx';
import { Explanations } from './Explanations.tsx';
import { ReadNext } from './ReadNext.tsx';
import { trialChange } from './trialChange.ts';

interface LessonProps {
  /** The job of the trial. */
  readonly job: Job;
  readonly lesson: CardLesson;
}

const HEADINGS: Readonly<Record<CardLesson['status'], string>> = {
  learned: 'What the card shows',
  undecided: 'What the card shows, and what it leaves open',
  contradiction: 'These readings contradict each other',
  nothingRead: 'No gaps entered yet',
  notConverged: 'No measures explain these readings',
};

/** The result of a trial: what may be behind the readings, what to read next, and buttons that correct the measures. */
export function Lesson({ job, lesson }: LessonProps) {
  const design = useBench(({ design }) => design);
  const dispatch = useDispatch();
  const { status, sentences, explanations } = lesson;
  const [likeliest] = explanations;
  const isStale = job !== design.job;
  const take = (explained: Explained): void => dispatch({ type: 'edit', patches: trialChange(job, explained) });
  const isWeighed = status === 'learned' || status === 'undecided';
  return (
    <>
      <div role="status" className="lesson" data-status={status}>
        <h3>{HEADINGS[status]}</h3>
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {status === 'learned' && likeliest !== undefined && (
        <Correction likeliest={likeliest} isStale={isStale} take={take} />
      )}
      {status === 'undecided' && <ReadNext lesson={lesson} />}
      {isWeighed && <Explanations lesson={lesson} isStale={isStale} take={take} />}
      {isWeighed && likeliest !== undefined && <Measures likeliest={likeliest} />}
      {likeliest !== undefined && <Residuals likeliest={likeliest} isFitted={isWeighed} />}
    </>
  );
}

interface CorrectionProps {
  readonly likeliest: Explained;
  readonly isStale: boolean;
  readonly take: (explained: Explained) => void;
}

function Correction({ likeliest, isStale, take }: CorrectionProps) {
  if (likeliest.change.length === 0) return <p>The measures stand as they are: there is nothing to correct.</p>;
  return (
    <p className="remedy">
      The corrected measures take the place of the typed ones, and the readings are taken out. The card keeps the size
      it was cut to. One undo brings all back.{' '}
      <button type="button" className="main" disabled={isStale} onClick={() => take(likeliest)}>
        Correct the measures
      </button>
    </p>
  );
}

interface LikeliestProps {
  readonly likeliest: Explained;
}

function Measures({ likeliest: { measures, words } }: LikeliestProps) {
  const lengths = useLengths();
  return (
    <table>
      <caption>Measures of the book, if {words}</caption>
      <thead>
        <tr>
          <th scope="col">Measure</th>
          <th scope="col">typed</th>
          <th scope="col">corrected</th>
          <th scope="col">give or take</th>
        </tr>
      </thead>
      <tbody>
        {Object.entries(measures).map(([name, { before, after, errorAfter }]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{lengths.size(before)}</td>
            <td>{lengths.exact(after)}</td>
            <td>{lengths.fine(2 * errorAfter)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Residuals({ likeliest: { residuals }, isFitted }: LikeliestProps & { readonly isFitted: boolean }) {
  const lengths = useLengths();
  return (
    <>
      <table>
        <caption>Readings</caption>
        <thead>
          <tr>
            <th scope="col">Reading</th>
            <th scope="col">read</th>
            <th scope="col">expected</th>
            {isFitted && <th scope="col">unexplained</th>}
            <th scope="col">misfit</th>
          </tr>
        </thead>
        <tbody>
          {residuals.map(({ name, read, expected, fitted, deviation }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{lengths.size(read)}</td>
              <td>{lengths.fine(expected)}</td>
              {isFitted && <td>{lengths.fine(read - fitted)}</td>}
              <td>{lengths.number(Math.abs(deviation), 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="help">
        Expected: by the measures as typed.
        {isFitted && ' Unexplained: what is left with the corrected measures.'} Misfit: under 2 is ordinary, above 3
        something was measured wrong. An overrun is negative.
      </p>
    </>
  );
}
