import { type ReactNode, useId, useRef, useState } from 'react';
import { useDispatch } from '../state/BenchContext.tsx';
import { keyedText, type PadKeys } from './pad.ts';
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
  /** A figure is typed on a number pad, which has these further keys; without a list any text is. */
  readonly keys?: PadKeys | undefined;
  /** What the keyboard of a telephone calls its Enter key. */
  readonly enterKeyHint?: 'next' | 'done';
  /** Lines of text; one by default. */
  readonly rows?: number;
  /** What can be done about the entry, after its help. */
  readonly children?: ReactNode;
}

/**
 * One entry with its label and what is wrong with it; and while it is in use, its help, how it was understood and what can be
 * done about it.
 */
export function PlainField(props: PlainFieldProps) {
  const { title, help, text, change, echo = null, issues = [], placeholder, path, keys, rows, children } = props;
  const dispatch = useDispatch();
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [isTyping, setTyping] = useState(false);
  const type = (typed: string): void => {
    setTyping(true);
    change(typed);
  };
  const entry = {
    id,
    'data-path': path,
    autoComplete: 'off',
    spellCheck: false,
    value: text,
    placeholder,
    'aria-invalid': issues.length > 0,
    'aria-describedby': `${id}-echo ${id}-issue ${id}-help`,
    onFocus: () => setTyping(false),
    // What is typed next is another step of undo.
    onBlur: () => dispatch({ type: 'settle' }),
  };
  return (
    <div className={rows === undefined ? 'field' : 'field tall'}>
      <label htmlFor={id}>{typeof title === 'string' ? <FieldTitle title={title} /> : title}</label>
      {rows === undefined ? (
        <input
          ref={input}
          type="text"
          inputMode={keys && 'decimal'}
          enterKeyHint={props.enterKeyHint}
          {...entry}
          onChange={(event) => type(event.target.value)}
        />
      ) : (
        <textarea rows={rows} {...entry} onChange={(event) => type(event.target.value)} />
      )}
      <div className="field-notes">
        <p id={`${id}-issue`} className="issue">
          {issues.join(' ')}
        </p>
        {/* A screen reader hears the help and the echo even where they are not shown. */}
        <div className="field-now">
          <p id={`${id}-echo`} className="echo" hidden={!isTyping}>
            {echo !== null && `understood: ${echo}`}
          </p>
          <p id={`${id}-help`} className="help">
            {help}
          </p>
          {keys !== undefined && keys.length > 0 && <Keys keys={keys} press={(key) => insert(input.current!, key)} />}
          {children}
        </div>
      </div>
    </div>
  );
}

interface KeysProps {
  readonly keys: PadKeys;
  readonly press: (key: string) => void;
}

/** The keys that a number pad lacks. A press leaves the focus where it is, so that the keyboard stays. */
const Keys = ({ keys, press }: KeysProps) => (
  <fieldset className="pad-keys" aria-label="Keys">
    {keys.map((key) => (
      <button
        key={key}
        type="button"
        aria-label={key === ' ' ? 'space' : undefined}
        onMouseDown={(event) => event.preventDefault()}
        onClick={() => press(key)}
      >
        {key === ' ' ? '␣' : key.trim()}
      </button>
    ))}
  </fieldset>
);

/** Writes a key at the caret of an entry, as if it were typed there. */
function insert(input: HTMLInputElement, key: string): void {
  const start = input.selectionStart ?? input.value.length;
  input.setRangeText(keyedText(key, input.value.slice(0, start)), start, input.selectionEnd ?? start, 'end');
  input.dispatchEvent(new InputEvent('input', { bubbles: true }));
}
