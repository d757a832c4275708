import type { ShelfRecord } from './shelfSchema.ts';

interface JustRemovedProps {
  /** Null where nothing was. */
  readonly record: ShelfRecord | null;
  readonly putBack: (record: ShelfRecord) => void;
}

/** What was removed a moment ago, and a button that puts it back. */
export const JustRemoved = ({ record, putBack }: JustRemovedProps) =>
  record !== null && (
    <p className="noted" role="status">
      <b>{record.name}</b> was removed.{' '}
      <button type="button" onClick={() => putBack(record)}>
        Put it back
      </button>
    </p>
  );
