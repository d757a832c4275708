import { useId } from 'react';
import type { JobPath } from '../../../core/index.ts';
import { useFieldIssues, useWritten } from '../../fields/fieldState.ts';
import { useDispatch } from '../../state/BenchContext.tsx';

interface DayFieldProps {
  readonly path: JobPath;
  readonly title: string;
}

/** A day of the job, by the calendar of the browser. */
export function DayField({ path, title }: DayFieldProps) {
  const dispatch = useDispatch();
  const id = useId();
  const issues = useFieldIssues(path);
  const written = useWritten(path);
  return (
    <div className="field">
      <label htmlFor={id}>{title}</label>
      <input
        id={id}
        type="date"
        data-path={path}
        value={typeof written === 'string' ? written : ''}
        aria-invalid={issues.length > 0}
        aria-describedby={`${id}-issue`}
        onChange={({ target: { value } }) =>
          dispatch({ type: 'edit', key: path, patches: [{ path, value: value === '' ? undefined : value }] })
        }
        onBlur={() => dispatch({ type: 'settle' })}
      />
      <div className="field-notes">
        <p id={`${id}-issue`} className="issue">
          {issues.join(' ')}
        </p>
      </div>
    </div>
  );
}
