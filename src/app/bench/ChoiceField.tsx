import { type Patch, valueAt } from '../../core/job/jobDocument.ts';
import { useBench } from '../state/BenchContext.tsx';
import { Choice } from './Choice.tsx';
import { fieldIssues } from './fieldState.ts';

interface ChoiceFieldProps {
  readonly path: string;
  readonly title: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly help?: string;
  /** Further changes that a choice brings with it. */
  readonly along?: (value: string) => readonly Patch[];
}

/** A choice between a few words, as radio buttons in a row. */
export function ChoiceField({ path, title, options, help, along }: ChoiceFieldProps) {
  const { history, dispatch } = useBench();
  const chosen = valueAt(history.document, path) ?? valueAt(history.good.job, path);
  const choose = (value: string): void =>
    dispatch({ type: 'edit', patches: [...(along?.(value) ?? []), { path, value }] });
  return (
    <Choice
      title={title}
      options={options}
      chosen={String(chosen)}
      choose={choose}
      notes={[...fieldIssues(history, path), ...(help === undefined ? [] : [help])]}
    />
  );
}
