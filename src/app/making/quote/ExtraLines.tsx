import { fieldNote } from '../../../core/index.ts';
import { useFieldIssues, useWritten } from '../../fields/fieldState.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { useDraft } from '../../fields/useDraft.ts';
import { useDispatch } from '../../state/BenchContext.tsx';
import { readAmount } from './readAmount.ts';

interface ExtraLine {
  readonly name: string;
  readonly amount: number;
}

const PATH = 'rates.extras';

/** Lines that the maker adds to a quote: a clasp, a rebate, the post. */
export function ExtraLines() {
  const dispatch = useDispatch();
  const written = useWritten(PATH);
  const lines = (Array.isArray(written) ? written : []) as readonly ExtraLine[];
  const put = (next: readonly ExtraLine[], key?: string): void =>
    dispatch({ type: 'edit', key, patches: [{ path: PATH, value: next.length === 0 ? undefined : next }] });
  return (
    <section aria-labelledby="extra-lines">
      <h3 id="extra-lines">{fieldNote(PATH).title}</h3>
      {lines.map((line, i) => (
        <Line
          // biome-ignore lint/suspicious/noArrayIndexKey: a line that is being named has only its place in the list
          key={i}
          index={i}
          line={line}
          put={(next) => put(lines.with(i, next), `${PATH}.${i}`)}
          takeOut={() => put(lines.toSpliced(i, 1))}
        />
      ))}
      <button type="button" onClick={() => put([...lines, { name: `Line ${lines.length + 1}`, amount: 0 }])}>
        Add a line
      </button>
    </section>
  );
}

interface LineProps {
  readonly index: number;
  readonly line: ExtraLine;
  readonly put: (line: ExtraLine) => void;
  readonly takeOut: () => void;
}

function Line({ index, line, put, takeOut }: LineProps) {
  const nameIssues = useFieldIssues(`${PATH}.${index}.name`);
  const path = `${PATH}.${index}.amount`;
  const amount = useDraft(path, line.amount, String, readAmount, (value) => put({ ...line, amount: value }));
  return (
    <div className="listed">
      <PlainField
        title={`Line ${index + 1}, what for`}
        path={`${PATH}.${index}.name`}
        text={line.name}
        change={(name) => put({ ...line, name })}
        issues={nameIssues}
      />
      <PlainField
        title={`Line ${index + 1}, amount`}
        path={path}
        text={amount.text}
        change={amount.change}
        issues={amount.issues}
      />
      <button type="button" className="quiet" onClick={takeOut}>
        Take out<span className="only-heard"> line {index + 1}</span>
      </button>
    </div>
  );
}
