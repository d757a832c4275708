import { useDispatch, useLengths } from '../state/BenchContext.tsx';
import { limitWords } from './limitWords.ts';
import type { ShownCheck } from './shownChecks.ts';
import { VerdictMark } from './VerdictMark.tsx';

/** One question with its answer; where a change to the job is the remedy, a button makes it at once. */
export function CheckRow({ check }: { readonly check: ShownCheck }) {
  const dispatch = useDispatch();
  const lengths = useLengths();
  const { title, verdict, state, message, remedy, change, isPending = false } = check;
  const figures = limitWords(check, lengths);
  return (
    <li className="row check" data-verdict={verdict} aria-busy={isPending}>
      <h3>
        <VerdictMark verdict={verdict} />
        {title} <span className="verdict-word">{isPending ? 'being worked out' : state}</span>
      </h3>
      {figures !== null && (
        <p className="figures">
          {figures.value} <span>({figures.limit})</span>
        </p>
      )}
      {message !== '' && <p className="reason">{isPending ? `Before the last change: ${message}` : message}</p>}
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
