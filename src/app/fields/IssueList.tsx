import { useBench } from '../state/BenchContext.tsx';
import { openIssues } from './fieldState.ts';

/** Entries that cannot be used, each a link to its field. Picture and figures show the last usable state. */
export function IssueList() {
  const issues = openIssues(useBench(({ history: { typed, parsed } }) => ({ typed, parsed })));
  return (
    <div role="status" className="issue-list">
      {issues.length > 0 && (
        <>
          <ul>
            {issues.map(({ path, label, words }) => (
              <li key={path}>
                <button type="button" className="quiet" onClick={() => goToField(path)}>
                  {label}
                </button>
                {words}
              </li>
            ))}
          </ul>
          <p>Picture and cut sizes still show the last complete job.</p>
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
