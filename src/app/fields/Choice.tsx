import { type ReactNode, useId } from 'react';

interface ChoiceProps {
  readonly title: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly chosen: string;
  readonly choose: (value: string) => void;
  readonly notes?: readonly string[];
  /** Path of the value in the job, where it is part of it, so that a search or an issue can lead here. */
  readonly path?: string;
  readonly children?: ReactNode;
}

export function Choice({ title, options, chosen, choose, notes = [], path, children }: ChoiceProps) {
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
              aria-describedby={notes.length > 0 ? `${name}-notes` : undefined}
            />
            <span>{label}</span>
          </label>
        ))}
      </div>
      {notes.length > 0 && (
        <p id={`${name}-notes`} className="help">
          {notes.join(' ')}
        </p>
      )}
      {children}
    </fieldset>
  );
}
