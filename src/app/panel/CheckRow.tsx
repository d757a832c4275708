import type { Check } from '../../core/index.ts';
import { WithTerm } from '../fields/Term.tsx';
import type { Spot } from '../scene/spot.ts';
import { useDispatch, useLengths } from '../state/BenchContext.tsx';
import { checkSpot } from './checkSpot.ts';
import { limitWords } from './limitWords.ts';
import { VerdictMark } from './VerdictMark.tsx';

interface CheckRowProps {
  readonly check: Check;
  /** Lights its place in the picture while it is pointed at or has the focus. */
  readonly light?: (spot: Spot | null) => void;
  /** A row above has the same remedy, which is then shown once. */
  readonly isMendedAbove?: boolean;
}

/** One question with its answer; where a change to the job is the remedy, a button makes it at once. */
export function CheckRow({ check, light, isMendedAbove = false }: CheckRowProps) {
  const dispatch = useDispatch();
  const lengths = useLengths();
  const { title, verdict, state, message, remedy, change, origin } = check;
  const isPending = origin === 'being worked out';
  const figures = limitWords(check, lengths);
  const on = () => light?.(checkSpot(check.id));
  const off = () => light?.(null);
  return (
    <li
      className="row check"
      data-verdict={verdict}
      aria-busy={isPending}
      onPointerEnter={on}
      onPointerLeave={off}
      onFocus={on}
      onBlur={off}
    >
      <h3>
        <VerdictMark verdict={verdict} />
        <WithTerm text={title} /> <span className="verdict-word">{isPending ? origin : state}</span>
        {origin === 'springy model' && <span className="row-origin"> by the {origin}</span>}
      </h3>
      {figures !== null && (
        <p className="figures">
          {figures.value} <span>({figures.limit})</span>
        </p>
      )}
      {message !== '' && <p className="reason">{isPending ? `Before the last change: ${message}` : message}</p>}
      {remedy !== '' && !isMendedAbove && (
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
