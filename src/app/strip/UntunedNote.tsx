import type { CoverDesign } from '../../core/index.ts';
import { useBenchStore, useLengths } from '../state/BenchContext.tsx';
import { untuning } from './untunedDesign.ts';

/** Explains the dashed lines, with a button that removes all tuning. */
export function UntunedNote({ untuned }: { readonly untuned: CoverDesign }) {
  const { getState } = useBenchStore();
  const lengths = useLengths();
  const { outside, pocketDepth } = untuned.pieces;
  return (
    <p className="untuned-note help">
      <svg width="24" height="8" aria-hidden="true">
        <path className="untuned" d="M0 4H24" />
      </svg>{' '}
      Untuned: outside {lengths.size(outside.width)} × {lengths.size(outside.height)}, edge margin{' '}
      {lengths.size(untuned.job.seam.edgeMargin_mm)}, pocket depth {lengths.size(pocketDepth)}.{' '}
      <button
        type="button"
        className="quiet"
        onClick={() => {
          const { history, dispatch } = getState();
          dispatch({ type: 'edit', patches: untuning(history.document) });
        }}
      >
        Undo all tuning
      </button>
    </p>
  );
}
