import { useEffect, useState } from 'react';
import { counted, DamagedRecords } from './DamagedRecords.tsx';
import { savedAt } from './savedAt.ts';
import type { KeptVersions, Shelf } from './shelf.ts';
import type { ShelfRecord, Version } from './shelfSchema.ts';
import type { Shelved } from './shelfTrouble.ts';
import { TroubleNote } from './TroubleNote.tsx';

interface VersionsProps {
  readonly shelf: Shelf;
  readonly record: Pick<ShelfRecord, 'id' | 'name'>;
  /** What can be done with one. */
  readonly act: string;
  readonly onAct: (version: Version) => void;
  readonly onClose: () => void;
}

/** Earlier states of a record. */
export function Versions({ shelf, record: { id, name }, act, onAct, onClose }: VersionsProps) {
  const [read, setRead] = useState<Shelved<KeptVersions> | null>(null);
  useEffect(() => {
    let isWanted = true;
    void shelf.versions(id).then((versions) => isWanted && setRead(versions));
    return () => {
      isWanted = false;
    };
  }, [shelf, id]);
  const damaged = read?.ok ? read.value.damaged : [];
  return (
    <section className="noted" aria-labelledby="versions-title">
      <h3 id="versions-title">Earlier versions of {name}</h3>
      {read !== null && !read.ok && <TroubleNote trouble={read.trouble} />}
      {read?.ok && read.value.sound.length + damaged.length === 0 && (
        <p className="help">None yet: a version is kept where five minutes or more lie between two saves.</p>
      )}
      {read?.ok && (
        <ul className="job-rows">
          {read.value.sound.map((version) => (
            <li key={version.revision} className="row">
              <span>as of {savedAt(version.savedAt)}</span>
              <button type="button" className="quiet" onClick={() => onAct(version)}>
                {act}
                <span className="only-heard">, as of {savedAt(version.savedAt)}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <DamagedRecords
        kind={shelf.kind}
        said={`${counted(damaged.length)} among the versions cannot be read; the others are as they were.`}
        records={damaged}
      />
      <button type="button" onClick={onClose}>
        Close the versions
      </button>
    </section>
  );
}
