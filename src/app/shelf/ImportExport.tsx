import { useState } from 'react';
import { FileButton } from '../fields/FileButton.tsx';
import { issueLine } from '../fields/issueWords.ts';
import { saveShelfFile } from './saveShelfFile.ts';
import type { Shelf } from './shelf.ts';
import { type ReadShelfFile, readChosenFile } from './shelfFile.ts';
import type { ShelfKind } from './shelfKind.ts';
import type { ShelfRecord } from './shelfSchema.ts';
import type { ShelfTrouble } from './shelfTrouble.ts';

interface ImportExportProps {
  readonly shelf: Shelf;
  /** What is exported. */
  readonly records: readonly ShelfRecord[];
  readonly onImported?: () => void;
  readonly onTrouble: (trouble: ShelfTrouble | null) => void;
}

interface Imported {
  readonly file: string;
  readonly added: number;
  readonly read: ReadShelfFile;
}

/** Broken entries listed at most. */
const LISTED = 100;

/** Exports a shelf as one file, and imports a file with a report of its broken entries. */
export function ImportExport({ shelf, records, onImported, onTrouble }: ImportExportProps) {
  const [imported, setImported] = useState<Imported | null>(null);

  const importFile = async (chosen: File): Promise<void> => {
    const read = await readChosenFile(chosen, shelf.kind);
    const added = await shelf.addAll(read.documents, read.ids);
    onTrouble(added.ok ? null : added.trouble);
    setImported(added.ok ? { file: chosen.name, added: added.value, read } : null);
    onImported?.();
  };
  const exportAll = (): void =>
    saveShelfFile(
      records.map(({ document }) => document),
      shelf.kind,
      records.map(({ id }) => id),
    );

  return (
    <section aria-label="Import and export">
      <p className="row dialog-buttons">
        <FileButton
          title="Import a file"
          asks={`File of ${shelf.kind.records}`}
          onFile={(chosen) => void importFile(chosen)}
        />
        <button type="button" disabled={records.length === 0} onClick={exportAll}>
          Export all
        </button>
      </p>
      {imported !== null && <ImportReport kind={shelf.kind} imported={imported} />}
    </section>
  );
}

function ImportReport({ kind, imported }: { readonly kind: ShelfKind; readonly imported: Imported }) {
  const { file, added, read } = imported;
  const { documents, broken } = read;
  const known = documents.length - added;
  const counted = (count: number): string => `${count} ${count === 1 ? kind.noun : kind.records}`;
  return (
    <div className="noted" role="status">
      <p>
        <b>{file}</b>: {counted(added)} added
        {known > 0 && `, ${counted(known)} passed over because ${known === 1 ? 'it is' : 'they are'} here already`}
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
