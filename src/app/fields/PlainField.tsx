import { type ReactNode, useId } from 'react';
import { useDispatch } from '../state/BenchContext.tsx';
import { FieldTitle } from './Term.tsx';

interface PlainFieldProps {
  readonly title: ReactNode;
  readonly help?: string;
  readonly text: string;
  readonly change: (text: string) => void;
  /** How the text was understood, where that says more than the text itself. */
  readonly echo?: string | null;
  readonly issues?: readonly string[];
  readonly placeholder?: string | undefined;
  /** Path of the value in the job, where it is part of it, so that a list of issues can lead here. */
  readonly path?: string;
  /** Lines of text; one by default. */
  readonly rows?: number;
  /** What can be done about the entry, after its help. */
  readonly children?: ReactNode;
}

/** One entry with its label, how it was understood, what is wrong with it and its help. */
export function PlainField(props: PlainFieldProps) {
  const { title, help, text, change, echo = null, issues = [], placeholder, path, rows, children } = props;
  const dispatch = useDispatch();
  const id = useId();
  const entry = {
    id,
    'data-path': path,
    autoComplete: 'off',
    spellCheck: false,
    value: text,
    placeholder,
    'aria-invalid': issues.length > 0,
    'aria-describedby': `${id}-echo ${id}-issue ${id}-help`,
    // What is typed next is another step of undo.
    onBlur: () => dispatch({ type: 'settle' }),
  };
  return (
    <div className={rows === undefined ? 'field' : 'field tall'}>
      <label htmlFor={id}>{typeof title === 'string' ? <FieldTitle title={title} /> : title}</label>
      {rows === undefined ? (
        <input type="text" {...entry} onChange={(event) => change(event.target.value)} />
      ) : (
        <textarea rows={rows} {...entry} onChange={(event) => change(event.target.value)} />
      )}
      <div className="field-notes">
        <p id={`${id}-echo`} className="echo">
          {echo !== null && `understood: ${echo}`}
        </p>
        <p id={`${id}-issue`} className="issue">
          {issues.join(' ')}
        </p>
        <p id={`${id}-help`} className="help">
          {help}
        </p>
        {children}
      </div>
    </div>
  );
}
