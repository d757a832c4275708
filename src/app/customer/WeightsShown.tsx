import { useId, useState } from 'react';
import { parseLeatherWeight } from '../../core/index.ts';
import type { Offer, OfferedWeight } from '../../output/customerSheet/offer.ts';

interface WeightsShownProps {
  /** Called with the weight that is typed; with null for the usual one, and while what is typed is none. */
  readonly onWeight: (change: Partial<Pick<Offer, 'lighter' | 'heavier'>>) => void;
}

/** The two weights that stand beside that of the job: an ounce lighter and heavier, or typed. */
export function WeightsShown({ onWeight }: WeightsShownProps) {
  return (
    <fieldset className="row">
      <legend className="only-heard">Weights to compare</legend>
      <WeightShown title="Compare with" usual="an ounce less" onWeight={(lighter) => onWeight({ lighter })} />
      <WeightShown title="and with" usual="an ounce more" onWeight={(heavier) => onWeight({ heavier })} />
    </fieldset>
  );
}

interface WeightShownProps {
  readonly title: string;
  readonly usual: string;
  readonly onWeight: (weight: OfferedWeight | null) => void;
}

/** Thinnest and thickest leather that a job takes, mm. */
const ALLOWED = { least: 0.2, most: 8 } as const;

function WeightShown({ title, usual, onWeight }: WeightShownProps) {
  const [text, setText] = useState('');
  const [issue, setIssue] = useState<string | null>(null);
  const id = useId();
  const change = (typed: string): void => {
    setText(typed);
    const read = typed.trim() === '' ? null : readWeight(typed);
    setIssue(typeof read === 'string' ? read : null);
    onWeight(typeof read === 'string' ? null : read);
  };
  return (
    <>
      <label className="bar-word" htmlFor={id}>
        {title}
      </label>
      <input
        id={id}
        className="weight-shown"
        type="text"
        autoComplete="off"
        placeholder={usual}
        value={text}
        aria-invalid={issue !== null}
        aria-describedby={issue === null ? undefined : `${id}-issue`}
        onChange={(event) => change(event.target.value)}
      />
      {issue !== null && (
        <span className="issue" id={`${id}-issue`} role="alert">
          {issue}
        </span>
      )}
    </>
  );
}

/** The weight, or what is wrong with it. */
function readWeight(typed: string): OfferedWeight | string {
  const read = parseLeatherWeight(typed);
  if (!read.ok) return read.message;
  const { min, max } = read.value;
  if (min < ALLOWED.least || max > ALLOWED.most)
    return `Got ${typed.trim()}; allowed: ${ALLOWED.least} to ${ALLOWED.most} mm. Type a weight in that range.`;
  return { min_mm: min, max_mm: max };
}
