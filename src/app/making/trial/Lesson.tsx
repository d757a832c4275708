import type { CardLesson, Job } from '../../../core/index.ts';
import { useBench, useDispatch, useLengths } from '../../state/BenchContext.tsx';
import { trialChange } from './trialChange.ts';

interface LessonProps {
  /** The job of the trial. */
  readonly job: Job;
  readonly lesson: CardLesson;
}

const HEADINGS: Readonly<Record<CardLesson['status'], string>> = {
  learned: 'What the mock-up shows',
  contradiction: 'These readings contradict each other',
  nothingRead: 'No gaps entered yet',
  notConverged: 'No measures explain these readings',
};

/** The result of a trial, with a button that makes its correction. */
export function Lesson({ job, lesson }: LessonProps) {
  const design = useBench(({ design }) => design);
  const dispatch = useDispatch();
  const { status, sentences, change } = lesson;
  const isStale = job !== design.job;
  return (
    <>
      <div role="status" className="lesson" data-status={status}>
        <h3>{HEADINGS[status]}</h3>
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {status === 'learned' && change.length === 0 && (
        <p>The measures stand as they are: there is nothing to correct.</p>
      )}
      {status === 'learned' && change.length > 0 && (
        <p className="remedy">
          The corrected measures take the place of the typed ones, the readings are taken out, and the card keeps the
          size it was cut to. One undo brings all back.{' '}
          <button
            type="button"
            className="main"
            disabled={isStale}
            onClick={() => dispatch({ type: 'edit', patches: trialChange(job, lesson) })}
          >
            Correct the measures
          </button>
        </p>
      )}
      {status === 'learned' && <Measures lesson={lesson} />}
      {lesson.residuals.length > 0 && <Residuals lesson={lesson} />}
    </>
  );
}

function Measures({ lesson: { measures } }: { readonly lesson: CardLesson }) {
  const lengths = useLengths();
  return (
    <table>
      <caption>Measures of the book</caption>
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
            <td>{lengths.size(after)}</td>
            <td>{lengths.fine(errorAfter)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Residuals({ lesson: { residuals, status } }: { readonly lesson: CardLesson }) {
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
            {status === 'learned' && <th scope="col">unexplained</th>}
            <th scope="col">misfit</th>
          </tr>
        </thead>
        <tbody>
          {residuals.map(({ name, read, expected, fitted, deviation }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{lengths.size(read)}</td>
              <td>{lengths.fine(expected)}</td>
              {status === 'learned' && <td>{lengths.fine(read - fitted)}</td>}
              <td>{lengths.number(Math.abs(deviation), 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="help">
        Expected: by the measures as typed.
        {status === 'learned' && ' Unexplained: what is left with the corrected measures.'} Misfit: under 2 is ordinary,
        above 3 something was measured wrong. An overrun is negative.
      </p>
    </>
  );
}
