import { savedAt } from './savedAt.ts';
import type { ShelfJob } from './shelfSchema.ts';

interface RemovedJobsProps {
  readonly jobs: readonly ShelfJob[];
  readonly putBack: (job: ShelfJob) => void;
}

/** Jobs removed from the shelf and not yet deleted. */
export function RemovedJobs({ jobs, putBack }: RemovedJobsProps) {
  if (jobs.length === 0) return null;
  return (
    <details>
      <summary>Removed jobs ({jobs.length}), kept for thirty days</summary>
      <ul className="job-rows">
        {jobs.map((job) => (
          <li key={job.id} className="row">
            <span>{job.name}</span>
            <span className="help">removed {savedAt(job.removedAt ?? job.savedAt)}</span>
            <button type="button" className="quiet" onClick={() => putBack(job)}>
              Put back<span className="only-heard"> {job.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
