import { useState } from 'react';
import { fieldNote, type JobPath } from '../../../core/index.ts';
import { Choice } from '../../fields/Choice.tsx';
import { useWritten } from '../../fields/fieldState.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { useDraft } from '../../fields/useDraft.ts';
import { useDispatch, useLengths } from '../../state/BenchContext.tsx';
import { readGap } from './readGap.ts';

const WAYS = [
  { value: 'gap', label: 'gap' },
  { value: 'overrun', label: 'overrun' },
];

interface GapFieldProps {
  readonly path: JobPath;
  /** What should be seen there. */
  readonly help: string;
}

/** Reading at one edge: the length, and whether it is a gap or an overrun. */
export function GapField({ path, help }: GapFieldProps) {
  const dispatch = useDispatch();
  const lengths = useLengths();
  const [isOverrunWished, wishOverrun] = useState(false);
  const written = useWritten(path);
  const value = typeof written === 'number' ? written : null;
  const isOverrun = value === null || value === 0 ? isOverrunWished : value < 0;
  const { title } = fieldNote(path);
  const put = (gap: number | null): void =>
    dispatch({ type: 'edit', key: path, patches: [{ path, value: gap ?? undefined }] });
  const { text, issues, change } = useDraft<number | null>(
    path,
    value,
    (gap) => (gap === null ? '' : lengths.size(Math.abs(gap))),
    (typed) => readGap(typed, lengths.units, isOverrun),
    put,
  );
  const choose = (way: string): void => {
    wishOverrun(way === 'overrun');
    if (value !== null && value !== 0) put(way === 'overrun' ? -Math.abs(value) : Math.abs(value));
  };
  return (
    <div className="gap-field">
      <PlainField
        title={title}
        help={help}
        placeholder="not read"
        path={path}
        text={text}
        change={change}
        issues={issues}
      />
      <Choice
        title={<span className="only-heard">{`${title} shows a`}</span>}
        options={WAYS}
        chosen={isOverrun ? 'overrun' : 'gap'}
        choose={choose}
      />
    </div>
  );
}
