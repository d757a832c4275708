import { useLayoutEffect } from 'react';
import { useBench } from '../state/BenchContext.tsx';
import { keepFieldInSight } from '../state/seenViewport.ts';
import { openIssues } from './fieldState.ts';
import { goToField } from './goToField.ts';

/** Entries that cannot be used, each a link to its field. Picture and figures show the last usable state. */
export default function IssueList() {
  const issues = openIssues(useBench(({ history: { typed, parsed } }) => ({ typed, parsed })));
  // The list comes above the field that it is about.
  useLayoutEffect(() => {
    if (issues.length > 0) keepFieldInSight();
  }, [issues.length]);
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
