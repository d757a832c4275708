import { useMemo, useState } from 'react';
import type { TakenLeather } from '../../core/index.ts';
import { wordsOfLeather } from '../shelf/leatherWords.ts';
import { shelfSearch } from '../shelf/searchShelf.ts';
import { useLengths } from '../state/BenchContext.tsx';
import { addressOf } from '../state/place.ts';

interface LeatherPickerProps {
  /** Null until they are read. */
  readonly leathers: readonly TakenLeather[] | null;
  readonly take: (leather: TakenLeather) => void;
}

/** Leathers listed at a time. */
const SHOWN = 8;

/** A search among the maker's leathers, of which one is taken. */
export function LeatherPicker({ leathers, take }: LeatherPickerProps) {
  const lengths = useLengths();
  const [text, setText] = useState('');
  const search = useMemo(() => shelfSearch(leathers ?? [], ({ leather }) => wordsOfLeather(leather)), [leathers]);
  const found = search(text);
  if (leathers === null) return <p role="status">Your leathers are being read.</p>;
  if (leathers.length === 0)
    return (
      <p>
        None is kept yet.{' '}
        <a className="link" href={addressOf('leathers')}>
          Go to your leathers
        </a>
      </p>
    );
  return (
    <div className="leather-picker">
      <label>
        Search your leathers{' '}
        <input
          type="text"
          autoComplete="off"
          value={text}
          placeholder="name, weight or notes"
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <ul>
        {found.slice(0, SHOWN).map((each) => (
          <li key={each.id}>
            <button type="button" onClick={() => take(each)}>
              {each.leather.name}
            </button>{' '}
            <span className="help">{lengths.weights(each.leather.min_mm, each.leather.max_mm)}</span>
          </li>
        ))}
      </ul>
      <p className="help" role="status">
        {found.length > SHOWN
          ? `${SHOWN} of ${found.length} shown: type more of the name.`
          : `${found.length} ${found.length === 1 ? 'leather' : 'leathers'}.`}
      </p>
    </div>
  );
}
