import { useEffect, useState } from 'react';
import type { JobDocument } from '../../core/index.ts';
import { counted, DamagedRecords } from './DamagedRecords.tsx';
import { savedAt } from './savedAt.ts';
import type { KeptVersions } from './shelf.ts';
import type { ShelfJob } from './shelfSchema.ts';
import type { Shelved } from './shelfTrouble.ts';
import { TroubleNote } from './TroubleNote.tsx';
import { theShelf } from './theShelf.ts';

interface JobVersionsProps {
  readonly job: ShelfJob;
  readonly onOpen: (document: JobDocument) => void;
  readonly onClose: () => void;
}

/** Earlier states of a job. Opening one makes a new job; the present state is not changed. */
export function JobVersions({ job, onOpen, onClose }: JobVersionsProps) {
  const [read, setRead] = useState<Shelved<KeptVersions> | null>(null);
  useEffect(() => {
    let isWanted = true;
    void theShelf.versions(job.id).then((versions) => isWanted && setRead(versions));
    return () => {
      isWanted = false;
    };
  }, [job.id]);
  const damaged = read?.ok ? read.value.damaged : [];
  return (
    <section className="noted" aria-labelledby="versions-title">
      <h3 id="versions-title">Earlier versions of {job.name}</h3>
      {read !== null && !read.ok && <TroubleNote trouble={read.trouble} />}
      {read?.ok && read.value.sound.length + damaged.length === 0 && (
        <p className="help">None yet: a version is kept where five minutes or more lie between two saves.</p>
      )}
      {read?.ok && (
        <ul className="job-rows">
          {read.value.sound.map(({ revision, savedAt: time, document }) => (
            <li key={revision} className="row">
              <span>as of {savedAt(time)}</span>
              <button
                type="button"
                className="quiet"
                onClick={() => onOpen({ ...document, name: `${job.name.slice(0, 160)}, as of ${savedAt(time)}` })}
              >
                Open as a job of its own<span className="only-heard">, as of {savedAt(time)}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <DamagedRecords
        said={`${counted(damaged.length)} among the versions cannot be read; the others are as they were.`}
        records={damaged}
      />
      <button type="button" onClick={onClose}>
        Close the versions
      </button>
    </section>
  );
}
