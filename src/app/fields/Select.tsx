import { type ReactNode, useId } from 'react';
import type { JobPath } from '../../core/index.ts';
import { useDispatch } from '../state/BenchContext.tsx';

interface SelectProps {
  readonly path: JobPath;
  readonly title: ReactNode;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** What the document holds. */
  readonly chosen: unknown;
  /** Words for what applies where nothing is chosen. */
  readonly usual: string;
}

/** A choice from a list that folds up; its first entry leaves the field out of the job. */
export function Select({ path, title, options, chosen, usual }: SelectProps) {
  const dispatch = useDispatch();
  const id = useId();
  return (
    <div className="field tall">
      <label htmlFor={id}>{title}</label>
      <select
        id={id}
        data-path={path}
        value={typeof chosen === 'string' ? chosen : ''}
        onChange={({ target: { value } }) =>
          dispatch({ type: 'edit', patches: [{ path, value: value === '' ? undefined : value }] })
        }
      >
        <option value="">{usual}</option>
        {options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </div>
  );
}
