import { useId } from 'react';

interface PlainFieldProps {
  readonly title: string;
  readonly help?: string;
  readonly text: string;
  readonly change: (text: string) => void;
  readonly issues?: readonly string[];
  readonly placeholder?: string;
  /** Path of the value in the job, where it is part of it, so that a list of issues can lead here. */
  readonly path?: string;
  readonly onBlur?: () => void;
  /** Lines of text that it has room for; one by default. */
  readonly rows?: number;
}

/** One entry with its help and what is wrong with it, like the entries of the job, for values read elsewhere. */
export function PlainField(props: PlainFieldProps) {
  const { title, help, text, change, issues = [], placeholder, path, onBlur, rows } = props;
  const id = useId();
  const entry = {
    id,
    'data-path': path,
    autoComplete: 'off',
    spellCheck: false,
    value: text,
    placeholder,
    'aria-invalid': issues.length > 0,
    'aria-describedby': `${id}-issue ${id}-help`,
    onBlur,
  };
  return (
    <div className={rows === undefined ? 'field' : 'field tall'}>
      <label htmlFor={id}>{title}</label>
      {rows === undefined ? (
        <input type="text" {...entry} onChange={(event) => change(event.target.value)} />
      ) : (
        <textarea rows={rows} {...entry} onChange={(event) => change(event.target.value)} />
      )}
      <div className="field-notes">
        <p id={`${id}-issue`} className="issue">
          {issues.join(' ')}
        </p>
        <p id={`${id}-help`} className="help">
          {help}
        </p>
      </div>
    </div>
  );
}
