import { type ReactNode, useId } from 'react';

interface ChoiceProps {
  readonly title: ReactNode;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly chosen: string;
  readonly choose: (value: string) => void;
  /** What is wrong with the choice. */
  readonly issues?: readonly string[];
  /** Shown while the choice is in use. */
  readonly notes?: readonly string[];
  /** Path of the value in the job, where it is part of it, so that a search or an issue can lead here. */
  readonly path?: string;
  readonly children?: ReactNode;
}

export function Choice(props: ChoiceProps) {
  const { title, options, chosen, choose, issues = [], notes = [], path, children } = props;
  const name = useId();
  return (
    <fieldset className="choice" data-path={path}>
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
