import { memo, useMemo } from 'react';
import { MM2_PER_DM2, openLeather } from '../../core/index.ts';
import { CardMore } from '../shelf/CardMore.tsx';
import type { ShelfRecord } from '../shelf/shelfSchema.ts';
import { useLengths } from '../state/BenchContext.tsx';
import { addressOf } from '../state/place.ts';
import { Hide } from './Hide.tsx';
import { TANNED } from './tanned.ts';

export type LeatherTileAction = 'copy' | 'export' | 'remove';

interface LeatherTileProps {
  readonly record: ShelfRecord;
  readonly act: (action: LeatherTileAction, record: ShelfRecord) => void;
}

/** What is done less often than opening. */
const MORE: readonly { readonly action: LeatherTileAction; readonly word: string }[] = [
  { action: 'copy', word: 'Copy for another hide' },
  { action: 'export', word: 'Export' },
  { action: 'remove', word: 'Remove' },
];

/** A leather among the others: its colour, weight and what is left; it leads to its own page. */
export const LeatherTile = memo(function LeatherTile({ record, act }: LeatherTileProps) {
  const lengths = useLengths();
  const opened = useMemo(() => openLeather(record.document), [record.document]);
  return (
    <li className="leather-tile">
      <a href={addressOf('leathers', record.id)}>
        {opened.ok && <Hide colour={opened.document.colour} surface={opened.document.surface} />}
        <h3>{record.name}</h3>
      </a>
      {opened.ok ? (
        <>
          <p>
            {lengths.weights(opened.document.min_mm, opened.document.max_mm)}, {TANNED[opened.document.tannage]}
          </p>
          <p className="help">
            {opened.document.left_dm2 === null
              ? 'What is left is not entered'
              : opened.document.left_dm2 === 0
                ? 'Used up'
                : `${lengths.area(opened.document.left_dm2 * MM2_PER_DM2)} left`}
          </p>
        </>
      ) : (
        <p>Not readable by this version.</p>
      )}
      <CardMore name={record.name} actions={MORE} act={(action) => act(action, record)} />
    </li>
  );
});
