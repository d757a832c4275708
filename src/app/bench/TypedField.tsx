import { useId } from 'react';
import type { Patch } from '../../core/job/jobDocument.ts';
import { useBench } from '../state/BenchContext.tsx';
import { typedText } from '../state/lengthText.ts';
import { fieldIssues, understood } from './fieldState.ts';
import { readField } from './readField.ts';

interface TypedFieldProps {
  readonly path: string;
  readonly title: string;
  readonly help: string;
  /** The value as text while nothing is typed; empty where the document leaves it out. */
  readonly shown: string;
  /** What stands in for an empty field, such as its default. */
  readonly placeholder?: string;
  /** What emptying the field does; without it the field must be filled. */
  readonly whenEmptied?: readonly Patch[];
  /** Label of the button that empties the field. */
  readonly emptyLabel?: string;
}

/** One entry that the maker types, with what was understood, what is wrong with it, and how to measure it. */
export function TypedField({ path, title, help, shown, placeholder, whenEmptied, emptyLabel }: TypedFieldProps) {
  const { history, dispatch, view } = useBench();
  const id = useId();
  const entry = history.typed[path];
  const text = entry === undefined ? shown : typedText(entry, view.units);
  const issues = fieldIssues(history, path);
  const echo = understood(history, path);

  const change = (typed: string): void => {
    if (typed.trim() === '' && whenEmptied !== undefined) {
      dispatch({ type: 'edit', key: path, patches: whenEmptied, typed: { [path]: undefined } });
      return;
    }
    const reading = readField(path, typed, view.units);
    const patches = reading.ok ? reading.value : [];
    dispatch({ type: 'edit', key: path, patches, typed: { [path]: { text: typed, unit: view.units } } });
  };

  return (
    <div className="field">
      <label htmlFor={id}>{title}</label>
      <input
        id={id}
        data-path={path}
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={text}
        placeholder={placeholder}
        aria-invalid={issues.length > 0}
        aria-describedby={`${id}-echo ${id}-issue ${id}-help`}
        onChange={(event) => change(event.target.value)}
        onBlur={() => dispatch({ type: 'settle' })}
      />
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
        {whenEmptied !== undefined && text !== '' && (
          <button
            type="button"
            className="quiet"
            onClick={() => dispatch({ type: 'edit', patches: whenEmptied, typed: { [path]: undefined } })}
          >
            {emptyLabel ?? 'Back to the default'}
            <span className="only-heard">: {title}</span>
          </button>
        )}
      </div>
    </div>
  );
}
