import { useEffect, useState } from 'react';
import { PassingNote } from '../fields/PassingNote.tsx';
import { savedAt } from '../shelf/savedAt.ts';
import type { ShelfContent } from '../shelf/shelf.ts';
import { COUNTS, type Lost } from '../shelf/shelfCount.ts';

/** Tells of leathers that the browser has deleted, once the shelf is read. */
export function LostLeathers({ content }: { readonly content: ShelfContent | null }) {
  const [lost, setLost] = useState<Lost | null>(null);
  useEffect(() => {
    if (content !== null) setLost(COUNTS.leathers.lost());
  }, [content]);
  if (lost === null) return null;
  return (
    <PassingNote
      role="status"
      dismiss={() => {
        COUNTS.leathers.dismissLost();
        setLost(null);
      }}
    >
      <p>
        The browser has deleted leathers. It may do so when the disk is full, or when its data is cleared. There were{' '}
        {lost.covers} on {savedAt(lost.at)}, and there are {lost.left === 0 ? 'none' : lost.left} now. Import a file
        that you exported to bring them back.
      </p>
    </PassingNote>
  );
}
