import { useBench, useDispatch, useLengths } from '../../state/BenchContext.tsx';
import { NEW_CARD } from './trialChange.ts';

/** Note that the card has the size of an earlier trial, with a button for a new one. */
export function NewCard() {
  const design = useBench(({ design }) => design);
  const dispatch = useDispatch();
  const lengths = useLengths();
  const { cutWidth_mm: width, cutHeight_mm: height } = design.job.mockup.card;
  if (width === null && height === null) return null;
  const size = [width && `${lengths.size(width)} wide`, height && `${lengths.size(height)} high`].filter(Boolean);
  return (
    <p className="remedy">
      The card in hand is cut {size.join(' and ')}; its pattern keeps that size.{' '}
      <button type="button" onClick={() => dispatch({ type: 'edit', patches: NEW_CARD })}>
        Size a new card
      </button>
    </p>
  );
}
