import { useEffect, useState } from 'react';
import type { JobIssue } from '../../core/index.ts';
import { isShareFragment, readShareFragment } from '../../output/shareLink/shareLink.ts';
import { useDispatch } from '../state/BenchContext.tsx';

/**
 * Opens the job that the page's address holds, now and whenever the address changes; undo returns to the job before it.
 */
export function useLinkedJob(): { readonly issues: readonly JobIssue[] | null; readonly dismiss: () => void } {
  const dispatch = useDispatch();
  const [issues, setIssues] = useState<readonly JobIssue[] | null>(null);
  useEffect(() => {
    const read = (): void => {
      const { hash, pathname, search } = window.location;
      if (!isShareFragment(hash)) return;
      const opened = readShareFragment(hash);
      setIssues(opened.ok ? null : opened.issues);
      if (!opened.ok) return;
      dispatch({ type: 'open', document: opened.document });
      // A reload then shows the job as edited, not the link's.
      window.history.replaceState(null, '', pathname + search);
    };
    read();
    window.addEventListener('hashchange', read);
    return () => window.removeEventListener('hashchange', read);
  }, [dispatch]);
  return { issues, dismiss: () => setIssues(null) };
}
