import { useMemo } from 'react';
import { isRecord, openLeather, type StockLeather } from '../../core/index.ts';
import type { ShelfRecord } from './shelfSchema.ts';
import { theLeathers } from './theLeathers.ts';
import { useShelfContent } from './useShelfContent.ts';

/** A leather of the shelf, opened. */
export interface ShelvedLeather {
  readonly record: ShelfRecord;
  readonly leather: StockLeather;
}

/**
 * The leathers of the shelf of which something was read, and one more, opened; again when this or another window changes one. Null until
 * they are read. The others teach nothing, and there may be thousands.
 * @param also id of one that is wanted, read or not
 */
export function useOpenLeathers(also: string | undefined) {
  const { content, trouble, refresh } = useShelfContent(theLeathers);
  const leathers = useMemo(
    () => content?.standing.filter((record) => record.id === also || tells(record)).flatMap(opened) ?? null,
    [content, also],
  );
  return { leathers, trouble, refresh };
}

const isSome = (value: unknown): boolean => Array.isArray(value) && value.length > 0;

/** Whether tests or covers are kept with a leather. */
const tells = ({ document: { tests, covers } }: ShelfRecord): boolean =>
  isSome(covers) || (isRecord(tests) && Object.values(tests).some(isSome));

function opened(record: ShelfRecord): ShelvedLeather[] {
  const found = openLeather(record.document);
  return found.ok ? [{ record, leather: found.document }] : [];
}
