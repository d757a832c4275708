import type { Report } from '../../core/report/reportSchema.ts';
import { useBench } from '../state/BenchContext.tsx';
import { limitWords } from './limitWords.ts';
import { VerdictMark } from './VerdictMark.tsx';

type ReportedCheck = Report['checks'][number];

/** One question with its answer; where a change to the job is the remedy, a button makes it at once. */
export function CheckRow({ check }: { readonly check: ReportedCheck }) {
  const { dispatch, lengths } = useBench();
  const { title, verdict, message, remedy, change } = check;
  const figures = limitWords(check, lengths);
  return (
    <li className={`check ${verdict}`}>
      <h3>
        <VerdictMark verdict={verdict} />
        {title} <span className="verdict-word">{verdict}</span>
      </h3>
      {figures !== null && (
        <p className="figures">
          {figures.value} <span>({figures.limit})</span>
        </p>
      )}
      <p className="reason">{message}</p>
      {remedy !== '' && (
        <p className="remedy">
          {remedy}{' '}
          {change.length > 0 && (
            <button type="button" onClick={() => dispatch({ type: 'edit', patches: change })}>
              Make this change<span className="only-heard">: {remedy}</span>
            </button>
          )}
        </p>
      )}
    </li>
  );
}
