import { type JobPath, type Patch, parseJob, patched, valueAt } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import { Choice } from './Choice.tsx';
import { fieldIssues } from './fieldState.ts';

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
  const { history, dispatch } = useBench();
  const written = valueAt(history.document, path);
  const chosen = written ?? valueAt(history.good.job, path);
  const patches = (value: string, put: string | undefined): readonly Patch[] => [
    ...(along?.(value) ?? []),
    { path, value: put },
  ];
  const choose = (value: string, put: string | undefined): void =>
    dispatch({ type: 'edit', patches: patches(value, put) });
  // The option that comes back once the job leaves the field out, with what that choice brings along.
  const usual = (): string | undefined =>
    options.find(({ value }) => {
      const parsed = parseJob(patched(history.good.document, patches(value, undefined)));
      return parsed.ok && valueAt(parsed.job, path) === value;
    })?.value;
  const other = written === undefined ? undefined : usual();
  return (
    <Choice
      title={title}
      options={options}
      chosen={String(chosen)}
      choose={(value) => choose(value, value)}
      notes={[...fieldIssues(history, path), ...(help === undefined ? [] : [help])]}
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
