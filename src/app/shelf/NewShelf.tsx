import { useEffect, useState } from 'react';
import type { JobRecord } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import { saveShelfFile } from './saveShelfFile.ts';
import { theShelf } from './theShelf.ts';

/**
 * The way on from a shelf that the browser cannot read: a file of what can be read, and a new shelf. What can be read is saved
 * first, and nothing is deleted before the maker has said so twice.
 */
export function NewShelf({ begin }: { readonly begin: () => Promise<void> }) {
  const document = useBench(({ history }) => history.document);
  const [readable, setReadable] = useState<readonly JobRecord[] | null>(null);
  const [isSaved, setSaved] = useState(false);
  const [isAsked, setAsked] = useState(false);
  useEffect(() => {
    let isWanted = true;
    void theShelf.readable().then((found) => isWanted && setReadable(found));
    return () => {
      isWanted = false;
    };
  }, []);
  if (readable === null) return null;
  const isSafe = isSaved || readable.length === 0;
  const save = (): void => {
    saveShelfFile([...readable, document]);
    setSaved(true);
  };
  return (
    <section className="refused" aria-label="A new shelf">
      <p>
        {readable.length === 0
          ? 'No cover on the shelf can be read. The open job is kept apart from it and is still here.'
          : `${readable.length === 1 ? 'One cover' : `${readable.length} covers`} on the shelf can still be read.`}
        {isAsked && ' If you go on, the old shelf is deleted for good. The open job is put on the new one.'}
      </p>
      <p className="row">
        <button type="button" onClick={save}>
          {readable.length === 0 ? 'Save the open job as a file' : 'Save them and the open job as a file'}
        </button>
        {isSafe && !isAsked && (
          <button type="button" onClick={() => setAsked(true)}>
            Begin a new shelf
          </button>
        )}
        {isAsked && (
          <>
            <button type="button" onClick={() => void begin()}>
              Delete the old shelf
            </button>
            <button type="button" onClick={() => setAsked(false)}>
              Leave it as it is
            </button>
          </>
        )}
      </p>
    </section>
  );
}
