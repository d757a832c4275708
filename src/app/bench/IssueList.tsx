import { useBench } from '../state/BenchContext.tsx';
import { openIssues } from './fieldState.ts';

/** Entries that cannot be used, each leading to its field. Picture and figures meanwhile show the last state that could. */
export function IssueList() {
  const { history } = useBench();
  const issues = openIssues(history);
  return (
    <div role="status" className="issue-list">
      {issues.length > 0 && (
        <>
          <p>
            {issues.length === 1 ? 'One entry cannot be used yet.' : `${issues.length} entries cannot be used yet.`} The
            picture and the cut sizes show the job as it last stood right.
          </p>
          <ul>
            {issues.map(({ path, message }) => (
              <li key={path}>
                <button type="button" className="quiet" onClick={() => goToField(path)}>
                  {path.replace(/_mm|_deg/, '').replaceAll('.', ' › ')}
                </button>{' '}
                {message}
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

/** The nearest field at or above the path; details that hide it are opened by the browser only for anchors, so here too. */
function goToField(path: string): void {
  const field =
    document.querySelector<HTMLElement>(`[data-path="${CSS.escape(path)}"]`) ??
    document.querySelector<HTMLElement>(`[data-path="${CSS.escape(path.split('.').slice(0, -1).join('.'))}"]`);
  field?.closest('details')?.setAttribute('open', '');
  field?.focus();
}
