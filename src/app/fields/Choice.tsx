import { type ReactNode, useId } from 'react';

interface ChoiceProps {
  readonly title: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly chosen: string;
  readonly choose: (value: string) => void;
  readonly notes?: readonly string[];
  readonly children?: ReactNode;
}

export function Choice({ title, options, chosen, choose, notes = [], children }: ChoiceProps) {
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
