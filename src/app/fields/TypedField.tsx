import { type JobPath, type Patch, readField } from '../../core/index.ts';
import { useBench, useDispatch } from '../state/BenchContext.tsx';
import { typedText } from '../state/typedText.ts';
import { understood, useFieldIssues } from './fieldState.ts';
import { PlainField } from './PlainField.tsx';
import { padKeys } from './pad.ts';

interface TypedFieldProps {
  readonly path: JobPath;
  readonly title: string;
  readonly help: string;
  /** The value as text while nothing is typed; empty where the document leaves it out. */
  readonly shown: string;
  /** Shown in an empty field, such as its default. */
  readonly placeholder?: string | undefined;
  /** What emptying the field does; without it the field must be filled. */
  readonly whenEmptied?: readonly Patch[] | undefined;
  /** Label of the button that empties the field. */
  readonly emptyLabel?: string | undefined;
  /** Further changes that a value brings with it. */
  readonly along?: readonly Patch[] | undefined;
  /** Whether another field counts, so that what was typed here before does not show. */
  readonly isOverruled?: boolean;
}

/** One entry that the maker types, with what was understood, what is wrong with it, and how to measure it. */
export function TypedField(props: TypedFieldProps) {
  const { path, title, help, shown, placeholder, whenEmptied, emptyLabel, along = [], isOverruled = false } = props;
  const dispatch = useDispatch();
  const { entry, echo, units } = useBench(({ history, lengths }) => ({
    entry: history.typed[path],
    echo: understood(history, path),
    units: lengths.units,
  }));
  const issues = useFieldIssues(path);
  const isHidden = isOverruled && issues.length === 0;
  const text = entry === undefined || isHidden ? shown : typedText(entry, path, units);

  const change = (typed: string): void => {
    if (typed.trim() === '' && whenEmptied !== undefined) {
      dispatch({ type: 'edit', key: path, patches: whenEmptied, typed: { [path]: undefined } });
      return;
    }
    const reading = readField(path, typed, units);
    const patches = reading.ok ? [...along, ...reading.value] : [];
    dispatch({ type: 'edit', key: path, patches, typed: { [path]: { text: typed, unit: units } } });
  };

  return (
    <PlainField
      path={path}
      title={title}
      help={help}
      text={text}
      change={change}
      echo={isHidden ? null : echo}
      issues={issues}
      placeholder={placeholder}
      keys={padKeys(path, units)}
    >
      {whenEmptied !== undefined && text !== '' && (
        <button
          type="button"
          className="quiet"
          onClick={() => dispatch({ type: 'edit', patches: whenEmptied, typed: { [path]: undefined } })}
        >
          {emptyLabel ?? 'Back to the usual'}
          <span className="only-heard">: {title}</span>
        </button>
      )}
    </PlainField>
  );
}
