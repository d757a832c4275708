import { useState } from 'react';
import { isRecord } from '../../core/index.ts';
import { saveFile } from '../state/saveFile.ts';
import { type DamagedRecord, rawText } from './damaged.ts';

interface DamagedRecordsProps {
  readonly records: readonly DamagedRecord[];
  readonly discard: (key: IDBValidKey) => void;
}

/**
 * Records of the shelf that cannot be read as jobs. One can be deleted after it was exported, so that nothing is lost.
 */
export function DamagedRecords({ records, discard }: DamagedRecordsProps) {
  const [exported, setExported] = useState<ReadonlySet<IDBValidKey>>(new Set());
  if (records.length === 0) return null;
  const save = ({ key, record }: DamagedRecord): void => {
    saveFile('damaged-record.json', rawText(record), 'application/json');
    setExported(new Set([...exported, key]));
  };
  return (
    <section className="refused" aria-label="Damaged records">
      <p>
        {records.length === 1 ? 'One record' : `${records.length} records`} of the shelf cannot be read as a job; all
        others are as they were.
      </p>
      <ul className="job-rows">
        {records.map((damaged) => (
          <li key={JSON.stringify(damaged.key)} className="row">
            <span>{nameOf(damaged)}</span>
            <span className="help">{damaged.why}</span>
            <button type="button" className="quiet" onClick={() => save(damaged)}>
              Export it as it stands<span className="only-heard">, {nameOf(damaged)}</span>
            </button>
            {exported.has(damaged.key) && (
              <button type="button" className="quiet" onClick={() => discard(damaged.key)}>
                Delete it<span className="only-heard">, {nameOf(damaged)}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Longest part of a damaged name that is shown. */
const SHOWN = 60;

function nameOf({ key, record }: DamagedRecord): string {
  const document = isRecord(record) ? record.document : undefined;
  const names = [isRecord(record) ? record.name : undefined, isRecord(document) ? document.name : undefined];
  const name = names.find((each) => typeof each === 'string' && each.trim() !== '');
  return typeof name === 'string' ? name.slice(0, SHOWN) : `Record ${String(key).slice(0, SHOWN)}`;
}
