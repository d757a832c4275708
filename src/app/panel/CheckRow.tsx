import type { Report } from '../../core/report/reportSchema.ts';
import { useBench } from '../state/BenchContext.tsx';
import { VerdictMark } from './VerdictMark.tsx';

type ReportedCheck = Report['checks'][number];

/** One question with its answer; where a change to the job is the remedy, a button makes it at once. */
export function CheckRow({ check }: { readonly check: ReportedCheck }) {
  const { dispatch, lengths } = useBench();
  const { title, verdict, value, limit, unit, message, remedy, change } = check;
  return (
    <li className={`check ${verdict}`}>
      <h3>
        <VerdictMark verdict={verdict} />
        {title} <span className="verdict-word">{verdict}</span>
      </h3>
      {(value !== 0 || limit !== 0) && (
        <p className="figures">
          {figure(value, unit, lengths.gap)} <span>(limit {figure(limit, unit, lengths.size)})</span>
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

function figure(value: number, unit: ReportedCheck['unit'], length: (value: number) => string): string {
  if (unit === 'mm') return length(value);
  return unit === 'deg' ? `${value.toFixed(0)}°` : value.toFixed(2);
}
