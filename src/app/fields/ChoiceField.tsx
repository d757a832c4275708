import { useState } from 'react';
import { type JobDocument, type JobPath, type Patch, parseJob, patched, valueAt } from '../../core/index.ts';
import { useBench, useDispatch } from '../state/BenchContext.tsx';
import { Choice } from './Choice.tsx';
import { useFieldIssues } from './fieldState.ts';

interface ChoiceFieldProps {
  readonly path: JobPath;
  readonly title: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly help?: string;
  /** Further changes that a choice brings with it. */
  readonly along?: (value: string) => readonly Patch[];
}

/** A choice between a few words, as radio buttons in a row. */
export function ChoiceField({ path, title, options, help, along }: ChoiceFieldProps) {
  const dispatch = useDispatch();
  const issues = useFieldIssues(path);
  const patches = (value: string, put: string | undefined): readonly Patch[] => [
    ...(along?.(value) ?? []),
    { path, value: put },
  ];
  const choose = (value: string, put: string | undefined): void =>
    dispatch({ type: 'edit', patches: patches(value, put) });
  // The option in force while the job leaves the field out, with its further changes.
  const [usual] = useState(() =>
    ofTheLast((document: JobDocument) =>
      options.find(({ value }) => {
        const parsed = parseJob(patched(document, patches(value, undefined)));
        return parsed.ok && valueAt(parsed.job, path) === value;
      }),
    ),
  );
  const { chosen, other } = useBench(({ history: { document, good } }) => {
    const written = valueAt(document, path);
    return {
      chosen: written ?? valueAt(good.job, path),
      other: written === undefined ? undefined : usual(good.document)?.value,
    };
  });
  return (
    <Choice
      path={path}
      title={title}
      options={options}
      chosen={String(chosen)}
      choose={(value) => choose(value, value)}
      issues={issues}
      notes={help === undefined ? [] : [help]}
    >
      {other !== undefined && other !== chosen && (
        <button type="button" className="quiet" onClick={() => choose(other, undefined)}>
          Back to the usual
          <span className="only-heard">
            : {title} {other}
          </span>
        </button>
      )}
    </Choice>
  );
}

/** A function that remembers its last answer, because each option is parsed as a whole job. */
function ofTheLast<Key, Value>(work: (key: Key) => Value): (key: Key) => Value {
  let last: { readonly key: Key; readonly value: Value } | null = null;
  return (key) => {
    if (last?.key !== key) last = { key, value: work(key) };
    return last.value;
  };
}
