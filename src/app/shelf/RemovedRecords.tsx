import { savedAt } from './savedAt.ts';
import type { ShelfKind } from './shelfKind.ts';
import type { ShelfRecord } from './shelfSchema.ts';

interface RemovedRecordsProps {
  readonly kind: ShelfKind;
  readonly records: readonly ShelfRecord[];
  readonly putBack: (record: ShelfRecord) => void;
}

/** What was removed from a shelf and is not yet deleted. */
export function RemovedRecords({ kind, records, putBack }: RemovedRecordsProps) {
  if (records.length === 0) return null;
  return (
    <details>
      <summary>
        Removed {kind.records} ({records.length}), kept for thirty days
      </summary>
      <ul className="job-rows">
        {records.map((record) => (
          <li key={record.id} className="row">
            <span>{record.name}</span>
            <span className="help">removed {savedAt(record.removedAt ?? record.savedAt)}</span>
            <button type="button" className="quiet" onClick={() => putBack(record)}>
              Put back<span className="only-heard"> {record.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
