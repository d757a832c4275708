import type { CardLesson } from '../../../core/index.ts';
import { goToField } from '../../fields/goToField.ts';
import { useLengths } from '../../state/BenchContext.tsx';

/** How many readings are offered. */
const OFFERED = 3;

/** Readings that would decide between the explanations, the most telling first, each one press from its field. */
export function ReadNext({ lesson: { further, wrap } }: { readonly lesson: CardLesson }) {
  const lengths = useLengths();
  if (further.length === 0) return null;
  return (
    <>
      <h4>Read next</h4>
      <ol className="bench-notes">
        {further.slice(0, OFFERED).map(({ name, path, leaves }) => (
          <li key={path}>
            {name}: {wrap === null ? 'height' : 'length round the book'} then known, give or take{' '}
            {lengths.length(2 * leaves)}{' '}
            <button type="button" aria-label={`Type it: ${name}`} onClick={() => goToField(path)}>
              Type it
            </button>
          </li>
        ))}
      </ol>
    </>
  );
}
