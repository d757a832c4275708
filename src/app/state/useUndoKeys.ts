import { useEffect } from 'react';

type Step = { readonly type: 'undo' | 'redo' };

/**
 * Ctrl or Command with Z undoes, with Shift Z or Y redoes a whole edit, in text fields too.
 * @param isFirst true for a part of the page with steps of its own, whose keys then take back none of the job's
 */
export function useUndoKeys(dispatch: (step: Step) => void, isFirst = false): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      if (document.querySelector('dialog[open]') !== null) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (isFirst) event.stopImmediatePropagation();
      dispatch({ type: key === 'y' || event.shiftKey ? 'redo' : 'undo' });
    };
    // A listener that catches comes before one that does not.
    window.addEventListener('keydown', onKeyDown, isFirst);
    return () => window.removeEventListener('keydown', onKeyDown, isFirst);
  }, [dispatch, isFirst]);
}
