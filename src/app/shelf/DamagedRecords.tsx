import { useState } from 'react';
import { isRecord } from '../../core/index.ts';
import { saveFile } from '../state/saveFile.ts';
import { type DamagedRecord, documentWithin, rawText } from './damaged.ts';
import type { ShelfKind } from './shelfKind.ts';

interface DamagedRecordsProps {
  readonly kind: ShelfKind;
  /** What cannot be read, with how many there are. */
  readonly said: string;
  readonly records: readonly DamagedRecord[];
  readonly repair?: (key: IDBValidKey) => void;
  readonly discard?: (key: IDBValidKey) => void;
}

/**
 * Records of a shelf that cannot be read. One whose document can still be read is put back; one can be deleted after it was
 * exported, so that nothing is lost.
 */
export function DamagedRecords({ kind, said, records, repair, discard }: DamagedRecordsProps) {
  const [exported, setExported] = useState<ReadonlySet<IDBValidKey>>(new Set());
  if (records.length === 0) return null;
  const save = ({ key, record }: DamagedRecord): void => {
    saveFile('damaged-record.json', rawText(record), 'application/json');
    setExported(new Set([...exported, key]));
  };
  return (
    <section className="refused" aria-label="Damaged records">
      <p>{said}</p>
      <ul className="job-rows">
        {records.map((damaged) => (
          <li key={JSON.stringify(damaged.key)} className="row">
            <span>{nameOf(damaged)}</span>
            <span className="help">{damaged.why}</span>
            <button type="button" className="quiet" onClick={() => save(damaged)}>
              Export it as it stands<span className="only-heard">, {nameOf(damaged)}</span>
            </button>
            {repair && documentWithin(damaged.record, kind) !== null && (
              <button type="button" className="quiet" onClick={() => repair(damaged.key)}>
                Put its {kind.noun} back<span className="only-heard">, {nameOf(damaged)}</span>
              </button>
            )}
            {discard && exported.has(damaged.key) && (
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
  if (typeof name === 'string') return name.slice(0, SHOWN);
  return Array.isArray(key) ? `Version ${String(key.at(-1))}` : `Record ${String(key).slice(0, SHOWN)}`;
}

/** How many records, in words. */
export const counted = (count: number): string => (count === 1 ? 'One record' : `${count} records`);
