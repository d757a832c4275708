import { useEffect, useState } from 'react';
import type { JobIssue } from '../../core/index.ts';
import { isShareFragment } from '../../output/shareLink/isShareFragment.ts';
import { useDispatch } from '../state/BenchContext.tsx';

/**
 * Opens the job that the page's address holds, now and whenever the address changes; undo returns to the job before it.
 */
export function useLinkedJob(): { readonly issues: readonly JobIssue[] | null; readonly dismiss: () => void } {
  const dispatch = useDispatch();
  const [issues, setIssues] = useState<readonly JobIssue[] | null>(null);
  useEffect(() => {
    const read = async (): Promise<void> => {
      const { hash, pathname, search } = window.location;
      if (!isShareFragment(hash)) return;
      // Few pages start from a link, and unpacking it is a library of its own.
      const { readShareFragment } = await import('../../output/shareLink/shareLink.ts');
      if (window.location.hash !== hash) return;
      const opened = readShareFragment(hash);
      setIssues(opened.ok ? null : opened.issues);
      if (!opened.ok) return;
      dispatch({ type: 'open', document: opened.document });
      // A reload then shows the job as edited, not the link's.
      window.history.replaceState(null, '', pathname + search);
    };
    const onChange = (): void => void read();
    onChange();
    window.addEventListener('hashchange', onChange);
    return () => window.removeEventListener('hashchange', onChange);
  }, [dispatch]);
  return { issues, dismiss: () => setIssues(null) };
}
