import { memo, useMemo } from 'react';
import { coverDesign, type Job, parseJob, printer } from '../../core/index.ts';
import { CardMore } from './CardMore.tsx';
import { StandingCover } from './StandingCover.tsx';
import { savedAt } from './savedAt.ts';
import type { ShelfJob } from './shelfSchema.ts';

export type CardAction = 'open' | 'copy' | 'versions' | 'export' | 'remove';

interface JobCardProps {
  readonly job: ShelfJob;
  /** Whether it is the open job. */
  readonly isOpen: boolean;
  readonly act: (action: CardAction, job: ShelfJob) => void;
}

/** What is done less often than opening. */
const MORE: readonly { readonly action: CardAction; readonly word: string }[] = [
  { action: 'copy', word: 'Copy to a new job' },
  { action: 'versions', word: 'Versions' },
  { action: 'export', word: 'Export' },
  { action: 'remove', word: 'Remove' },
];

/** A job on the shelf: its cover standing there, its sizes, and what can be done with it. */
export const JobCard = memo(function JobCard({ job, isOpen, act }: JobCardProps) {
  const parsed = useMemo(() => parseJob(job.document), [job.document]);
  const design = useMemo(() => (parsed.ok ? coverDesign(parsed.job) : null), [parsed]);
  const of = <span className="only-heard"> {job.name}</span>;
  return (
    <li className="job-card" aria-current={isOpen || undefined}>
      <div className="standing">
        {design !== null && <StandingCover design={design} label={`Cover of ${job.name} on the shelf`} />}
      </div>
      <h3>{job.name}</h3>
      <p>
        {parsed.ok ? sizes(parsed.job) : 'Not readable by this version.'}{' '}
        {parsed.ok && `${parsed.job.book.kind}, ${parsed.job.seam.method}`}
      </p>
      <p className="help">
        {isOpen ? 'Open now. ' : ''}Saved {savedAt(job.savedAt)}
      </p>
      <div className="row card-actions">
        <button type="button" onClick={() => act('open', job)}>
          Open{of}
        </button>
        <CardMore name={job.name} actions={MORE} act={(action) => act(action, job)} />
      </div>
    </li>
  );
});

/** In the unit of this job, which may differ from the open one's. */
function sizes({ book, work }: Job): string {
  const { size } = printer(work.units);
  return [book.width_mm, book.height_mm, book.thickness_mm].map(size).join(' × ');
}
