import { memo, useMemo } from 'react';
import { coverDesign, coverSection, type Job, parseJob, printer } from '../../core/index.ts';
import { SectionPicture } from '../sheet/SectionPicture.tsx';
import { savedAt } from './savedAt.ts';
import type { ShelfJob } from './shelfDatabase.ts';

export type CardAction = 'open' | 'copy' | 'versions' | 'export' | 'remove';

interface JobCardProps {
  readonly job: ShelfJob;
  /** Whether it is the open job. */
  readonly isOpen: boolean;
  readonly act: (action: CardAction, job: ShelfJob) => void;
}

const ACTIONS: readonly { readonly action: CardAction; readonly word: string }[] = [
  { action: 'open', word: 'Open' },
  { action: 'copy', word: 'Copy to a new job' },
  { action: 'versions', word: 'Versions' },
  { action: 'export', word: 'Export' },
  { action: 'remove', word: 'Remove' },
];

/** A job on the shelf: its closed section, its sizes, and what can be done with it. */
export const JobCard = memo(function JobCard({ job, isOpen, act }: JobCardProps) {
  const parsed = useMemo(() => parseJob(job.document), [job.document]);
  const section = useMemo(() => (parsed.ok ? coverSection(coverDesign(parsed.job), 'nominal', 0) : null), [parsed]);
  return (
    <li className="job-card" aria-current={isOpen || undefined}>
      <div className="section-drawing">
        {section !== null && <SectionPicture section={section} label={`Closed section of ${job.name}`} />}
      </div>
      <h3>{job.name}</h3>
      <p>
        {parsed.ok ? sizes(parsed.job) : 'Not readable by this version.'}{' '}
        {parsed.ok && `${parsed.job.book.kind}, ${parsed.job.seam.method}`}
      </p>
      <p className="help">
        {isOpen ? 'Open now. ' : ''}Saved {savedAt(job.savedAt)}
      </p>
      <p className="row card-actions">
        {ACTIONS.map(({ action, word }) => (
          <button
            key={action}
            type="button"
            className={action === 'open' ? undefined : 'quiet'}
            onClick={() => act(action, job)}
          >
            {word}
            <span className="only-heard"> {job.name}</span>
          </button>
        ))}
      </p>
    </li>
  );
});

/** In the unit of this job, which may differ from the open one's. */
function sizes({ book, work }: Job): string {
  const { size } = printer(work.units);
  return [book.width_mm, book.height_mm, book.thickness_mm].map(size).join(' × ');
}
