import { useState } from 'react';
import { FileButton } from '../fields/FileButton.tsx';
import { issueLine } from '../fields/issueWords.ts';
import { saveShelfFile } from './saveShelfFile.ts';
import { type ReadShelfFile, readChosenFile } from './shelfFile.ts';
import type { ShelfJob } from './shelfSchema.ts';
import type { ShelfTrouble } from './shelfTrouble.ts';
import { theShelf } from './theShelf.ts';

interface ImportExportProps {
  readonly jobs: readonly ShelfJob[];
  readonly onImported: () => void;
  readonly onTrouble: (trouble: ShelfTrouble | null) => void;
}

interface Imported {
  readonly file: string;
  readonly added: number;
  readonly read: ReadShelfFile;
}

/** Broken entries listed at most. */
const LISTED = 100;

/** Exports the shelf as one file, and imports a file with a report of its broken entries. */
export function ImportExport({ jobs, onImported, onTrouble }: ImportExportProps) {
  const [imported, setImported] = useState<Imported | null>(null);

  const importFile = async (chosen: File): Promise<void> => {
    const read = await readChosenFile(chosen);
    const added = await theShelf.addAll(read.documents);
    onTrouble(added.ok ? null : added.trouble);
    setImported(added.ok ? { file: chosen.name, added: added.value, read } : null);
    onImported();
  };
  const exportAll = (): void => saveShelfFile(jobs.map(({ document }) => document));

  return (
    <section aria-label="Import and export">
      <p className="row dialog-buttons">
        <FileButton title="Import a file" asks="File of jobs" onFile={(chosen) => void importFile(chosen)} />
        <button type="button" disabled={jobs.length === 0} onClick={exportAll}>
          Export all
        </button>
      </p>
      {imported !== null && <ImportReport imported={imported} />}
    </section>
  );
}

function ImportReport({ imported: { file, added, read } }: { readonly imported: Imported }) {
  const { documents, broken } = read;
  const known = documents.length - added;
  return (
    <div className="noted" role="status">
      <p>
        <b>{file}</b>: {jobsOf(added)} added
        {known > 0 && `, ${jobsOf(known)} passed over because the shelf has ${known === 1 ? 'it' : 'them'} already`}
        {broken.length > 0 && `, ${broken.length} broken and left out`}.
      </p>
      {broken.length > 0 && (
        <ul className="broken-jobs">
          {broken.slice(0, LISTED).map(({ index, name, issues }) => (
            <li key={index}>
              Entry {index + 1}
              {name !== null && <b> {name}</b>}
              {issues.map((issue) => (
                <div key={`${issue.path} ${issue.message}`}>{issueLine(issue)}</div>
              ))}
            </li>
          ))}
          {broken.length > LISTED && <li>and {broken.length - LISTED} more.</li>}
        </ul>
      )}
    </div>
  );
}

const jobsOf = (count: number): string => `${count} ${count === 1 ? 'job' : 'jobs'}`;
