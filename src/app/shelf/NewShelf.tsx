import { useEffect, useState } from 'react';
import type { JobRecord } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import { JOBS } from './jobKind.ts';
import { LEATHERS } from './leatherKind.ts';
import { saveShelfFile } from './saveShelfFile.ts';
import { theLeathers } from './theLeathers.ts';
import { theShelf } from './theShelf.ts';

/** Jobs and leathers that can still be read, by their ids. */
interface Readable {
  readonly jobs: ReadonlyMap<string, JobRecord>;
  readonly leathers: ReadonlyMap<string, JobRecord>;
}

/**
 * The way on from a shelf that the browser cannot read: a file of what can be read, and a new shelf. What can be read is saved
 * first, and nothing is deleted before the maker has said so twice.
 */
export function NewShelf({ begin }: { readonly begin: () => Promise<void> }) {
  const document = useBench(({ history }) => history.document);
  const [readable, setReadable] = useState<Readable | null>(null);
  const [isSaved, setSaved] = useState(false);
  const [isAsked, setAsked] = useState(false);
  useEffect(() => {
    let isWanted = true;
    void Promise.all([theShelf.readable(), theLeathers.readable()]).then(
      ([jobs, leathers]) => isWanted && setReadable({ jobs, leathers }),
    );
    return () => {
      isWanted = false;
    };
  }, []);
  if (readable === null) return null;
  const { jobs, leathers } = readable;
  const isEmpty = jobs.size + leathers.size === 0;
  const isSafe = isSaved || isEmpty;
  const save = (): void => {
    saveShelfFile([...jobs.values(), document], JOBS);
    if (leathers.size > 0) saveShelfFile([...leathers.values()], LEATHERS, [...leathers.keys()]);
    setSaved(true);
  };
  return (
    <section className="refused" aria-label="A new shelf">
      <p>
        {isEmpty
          ? 'No cover on the shelf can be read. The open job is kept apart from it and is still here.'
          : `${readableWords(jobs.size, leathers.size)} can still be read.`}
        {isAsked &&
          ' If you go on, the old shelf is deleted for good, with your leathers. The open job is put on the new one.'}
      </p>
      <p className="row">
        <button type="button" onClick={save}>
          {isEmpty ? 'Save the open job as a file' : 'Save them and the open job as a file'}
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

function readableWords(jobs: number, leathers: number): string {
  const covers = jobs === 1 ? 'One cover' : `${jobs} covers`;
  const hides = leathers === 1 ? 'one leather' : `${leathers} leathers`;
  return leathers === 0 ? `${covers} on the shelf` : `${covers} on the shelf and ${hides}`;
}
