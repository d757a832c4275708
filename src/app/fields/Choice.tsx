import { type ReactNode, useId } from 'react';

interface ChoiceProps {
  readonly title: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly chosen: string;
  readonly choose: (value: string) => void;
  /** What is wrong with the choice. */
  readonly issues?: readonly string[];
  /** Shown while the choice is in use. */
  readonly notes?: readonly string[];
  readonly children?: ReactNode;
}

export function Choice({ title, options, chosen, choose, issues = [], notes = [], children }: ChoiceProps) {
  const name = useId();
  return (
    <fieldset className="choice">
      <legend>{title}</legend>
      <div className="row choice-row">
        {options.map(({ value, label }) => (
          <label key={value}>
            <input
              type="radio"
              name={name}
              value={value}
              checked={value === chosen}
              onChange={() => choose(value)}
              aria-describedby={`${name}-issue ${name}-notes`}
            />
            <span>{label}</span>
          </label>
        ))}
      </div>
      <p id={`${name}-issue`} className="issue">
        {issues.join(' ')}
      </p>
      <p id={`${name}-notes`} className="help choice-now">
        {notes.join(' ')}
      </p>
      {children}
    </fieldset>
  );
}
