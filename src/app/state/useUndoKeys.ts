import { type Dispatch, useEffect } from 'react';
import type { JobAction } from './jobHistory.ts';

/** Ctrl or Command with Z undoes, with Shift Z or Y redoes a whole edit, in text fields too. */
export function useUndoKeys(dispatch: Dispatch<JobAction>): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      if (document.querySelector('dialog[open]') !== null) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      dispatch({ type: key === 'y' || event.shiftKey ? 'redo' : 'undo' });
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [dispatch]);
}
