import { useMemo } from 'react';
import { openLeather, type StockLeather } from '../../core/index.ts';
import type { ShelfRecord } from './shelfSchema.ts';
import { theLeathers } from './theLeathers.ts';
import { useShelfContent } from './useShelfContent.ts';

/** A leather of the shelf, opened. */
export interface ShelvedLeather {
  readonly record: ShelfRecord;
  readonly leather: StockLeather;
}

/** All leathers that stand on the shelf and can be opened, again when this or another window changes one; null until they are read. */
export function useOpenLeathers() {
  const { content, trouble, refresh } = useShelfContent(theLeathers);
  const leathers = useMemo(() => content?.standing.flatMap(opened) ?? null, [content]);
  return { leathers, trouble, refresh };
}

function opened(record: ShelfRecord): ShelvedLeather[] {
  const found = openLeather(record.document);
  return found.ok ? [{ record, leather: found.document }] : [];
}
