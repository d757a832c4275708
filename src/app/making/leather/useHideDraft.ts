import { useEffect, useState } from 'react';
import type { HideDraft } from './hideDraft.ts';

/** A draft, and what it was before each of its changes. */
interface DraftSteps {
  readonly now: HideDraft;
  readonly past: readonly HideDraft[];
}

/** Drafts since the page was loaded, by job and leather: one that the job does not have yet outlasts a look elsewhere. */
const kept = new Map<string, DraftSteps>();

/**
 * The draft of one leather. While there is one, undo goes back within it, and only then in the job.
 * @param of job and leather
 */
export function useHideDraft(of: string) {
  const [steps, setSteps] = useState<DraftSteps | null>(kept.get(of) ?? null);
  const keep = (next: DraftSteps | null): void => {
    if (next === null) kept.delete(of);
    else kept.set(of, next);
    setSteps(next);
  };
  const back = (): void => {
    if (steps === null) return;
    const before = steps.past.at(-1);
    keep(before === undefined ? null : { now: before, past: steps.past.slice(0, -1) });
  };
  useEffect(() => {
    if (steps === null) return;
    const onKey = (event: KeyboardEvent): void => {
      const isUndo =
        (event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey && event.key.toLowerCase() === 'z';
      if (!isUndo || document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      back();
    };
    window.addEventListener('keydown', onKey, { capture: true });
    return () => window.removeEventListener('keydown', onKey, { capture: true });
  });
  return {
    draft: steps?.now ?? null,
    /** Takes the next state of the draft as a step of its own, or `null` to end it. */
    setDraft: (next: HideDraft | null): void =>
      keep(next === null ? null : { now: next, past: steps === null ? [] : [...steps.past, steps.now] }),
    back,
  };
}
