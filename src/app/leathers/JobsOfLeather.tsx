import { useEffect, useState } from 'react';
import { valueAt } from '../../core/index.ts';
import { savedAt } from '../shelf/savedAt.ts';
import type { ShelfRecord } from '../shelf/shelfSchema.ts';
import { theShelf } from '../shelf/theShelf.ts';
import { useDispatch } from '../state/BenchContext.tsx';
import { goTo } from '../state/place.ts';

const PIECES = ['outside', 'pocket', 'lining'] as const;

/** The jobs on the shelf that have taken a leather, and for which pieces. */
export function JobsOfLeather({ id }: { readonly id: string }) {
  const dispatch = useDispatch();
  const [jobs, setJobs] = useState<readonly ShelfRecord[] | null>(null);
  useEffect(() => {
    let isWanted = true;
    const read = async (): Promise<void> => {
      const list = await theShelf.list();
      if (isWanted) setJobs(list.ok ? list.value : []);
    };
    void read();
    const stop = theShelf.watch(() => void read());
    return () => {
      isWanted = false;
      stop();
    };
  }, []);
  if (jobs === null) return null;
  const users = jobs
    .map((job) => ({
      job,
      pieces: PIECES.filter((piece) => valueAt(job.document, `leather.${piece}.taken.id`) === id),
    }))
    .filter(({ pieces }) => pieces.length > 0);
  return (
    <section aria-labelledby="jobs-of-leather">
      <h3 id="jobs-of-leather">Jobs with this leather</h3>
      {users.length === 0 && (
        <p className="help">None yet. A job takes it in its Leather card, under “Your leathers”.</p>
      )}
      <ul className="job-rows">
        {users.map(({ job, pieces }) => (
          <li key={job.id} className="row">
            <span>{job.name}</span>
            <span className="help">
              {pieces.join(' and ')}, saved {savedAt(job.savedAt)}
            </span>
            <button
              type="button"
              className="quiet"
              onClick={() => {
                const { revision, document } = job;
                dispatch({ type: 'open', document, place: { id: job.id, revision, document } });
                goTo('cover');
              }}
            >
              Open<span className="only-heard"> {job.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
