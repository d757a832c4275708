import { useCallback, useDeferredValue, useMemo, useState } from 'react';
import { counted, DamagedRecords } from '../shelf/DamagedRecords.tsx';
import { ImportExport } from '../shelf/ImportExport.tsx';
import { JustRemoved } from '../shelf/JustRemoved.tsx';
import { leatherWords } from '../shelf/leatherWords.ts';
import { freshLeather, keepLeatherOfJob } from '../shelf/newLeather.ts';
import { RemovedRecords } from '../shelf/RemovedRecords.tsx';
import { ShelfBar } from '../shelf/ShelfBar.tsx';
import { ShowMore } from '../shelf/ShowMore.tsx';
import { shelfSearch } from '../shelf/searchShelf.ts';
import type { ShelfRecord } from '../shelf/shelfSchema.ts';
import type { Shelved } from '../shelf/shelfTrouble.ts';
import { TroubleNote } from '../shelf/TroubleNote.tsx';
import { theLeathers } from '../shelf/theLeathers.ts';
import { useShelfContent } from '../shelf/useShelfContent.ts';
import { useBenchStore } from '../state/BenchContext.tsx';
import { addressOf, goTo } from '../state/place.ts';
import { Hide } from './Hide.tsx';
import { LeatherTile, type LeatherTileAction } from './LeatherTile.tsx';
import { LostLeathers } from './LostLeathers.tsx';
import { saveLeatherFile } from './saveLeatherFile.ts';

/** Leathers drawn at a time. */
const PAGE = 48;

type LeatherOrder = 'made' | 'name' | 'weight';

const ORDERS: readonly { readonly value: LeatherOrder; readonly word: string }[] = [
  { value: 'made', word: 'Last changed first' },
  { value: 'name', word: 'By name' },
  { value: 'weight', word: 'By weight' },
];

const thickness = ({ document: { max_mm } }: ShelfRecord): number => (typeof max_mm === 'number' ? max_mm : 0);

const COMPARE: Readonly<Record<LeatherOrder, ((a: ShelfRecord, b: ShelfRecord) => number) | null>> = {
  made: null,
  name: (a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }),
  weight: (a, b) => thickness(a) - thickness(b) || a.name.localeCompare(b.name, 'en'),
};

/** All leathers kept in this browser. */
export function LeatherList() {
  const store = useBenchStore();
  const { content, trouble, setTrouble, refresh } = useShelfContent(theLeathers);
  const [text, setText] = useState('');
  const [shown, setShown] = useState(PAGE);
  const [order, setOrder] = useState<LeatherOrder>('made');
  const [lastRemoved, setLastRemoved] = useState<ShelfRecord | null>(null);
  const wanted = useDeferredValue(text);
  const all = content?.standing;
  const search = useMemo(() => shelfSearch(all ?? [], leatherWords), [all]);
  const found = useMemo(() => {
    const compare = COMPARE[order];
    return compare === null ? search(wanted) : [...search(wanted)].sort(compare);
  }, [search, wanted, order]);

  /** Goes to a leather that was put on the shelf. */
  const goToAdded = async (added: Promise<Shelved<ShelfRecord>>): Promise<void> => {
    const done = await added;
    if (!done.ok) return setTrouble(done.trouble);
    goTo('leathers', done.value.id);
  };

  /** Does what is asked; the shelf tells what it is then. */
  const tend = useCallback(
    async (asked: Promise<Shelved<unknown>>): Promise<boolean> => {
      const done = await asked;
      if (!done.ok) setTrouble(done.trouble);
      return done.ok;
    },
    [setTrouble],
  );

  const act = useCallback(
    async (action: LeatherTileAction, record: ShelfRecord): Promise<void> => {
      if (action === 'export') return saveLeatherFile(record.document);
      if (action === 'copy') return void (await tend(theLeathers.copy(record.id)));
      if (await tend(theLeathers.remove(record.id))) setLastRemoved(record);
    },
    [tend],
  );
  const onAct = useCallback((action: LeatherTileAction, record: ShelfRecord) => void act(action, record), [act]);

  const putBack = async (record: ShelfRecord): Promise<void> => {
    if (await tend(theLeathers.restore(record.id))) setLastRemoved(null);
  };

  return (
    <section className="leathers-place" aria-labelledby="leathers-title">
      <ShelfBar
        id="leathers-title"
        title="Leathers"
        text={text}
        search={(wish) => {
          setText(wish);
          setShown(PAGE);
        }}
        placeholder="name, weight or notes"
        orders={ORDERS}
        order={order}
        setOrder={setOrder}
        said={
          all === undefined
            ? UNREAD[trouble === null ? 'yet' : 'ever']
            : found.length === all.length
              ? `${all.length} ${all.length === 1 ? 'leather' : 'leathers'}`
              : `${found.length} of ${all.length} leathers`
        }
      >
        <button type="button" className="main" onClick={() => void goToAdded(theLeathers.add(freshLeather()))}>
          New leather
        </button>
        <a className="link" href={addressOf('leathers', 'choice')}>
          Which leather for this book
        </a>
      </ShelfBar>
      <TroubleNote trouble={trouble} />
      <LostLeathers content={content} />
      <JustRemoved record={lastRemoved} putBack={(record) => void putBack(record)} />
      {all?.length === 0 && (
        <div className="no-leathers">
          <Hide colour="var(--walnut-wash)" surface="matt" />
          <div>
            <p>
              No leather is kept yet. Each has its weight, what is left of it, its tests and the covers made of it. A
              job takes its figures from here.
            </p>
            <p className="row">
              <button type="button" onClick={() => void goToAdded(keepLeatherOfJob(store))}>
                Put this job’s leather here
              </button>
            </p>
          </div>
        </div>
      )}
      <ul className="leather-tiles">
        {found.slice(0, shown).map((record) => (
          <LeatherTile key={record.id} record={record} act={onAct} />
        ))}
      </ul>
      <ShowMore rest={found.length - shown} page={PAGE} show={() => setShown(shown + PAGE)} />
      <DamagedRecords
        kind={theLeathers.kind}
        said={`${counted(content?.damaged.length ?? 0)} cannot be read as a leather; all others are as they were.`}
        records={content?.damaged ?? []}
        repair={(key) => void tend(theLeathers.repair(key))}
        discard={(key) => void tend(theLeathers.discardDamaged(key)).then(refresh)}
      />
      <RemovedRecords
        kind={theLeathers.kind}
        records={content?.removed ?? []}
        putBack={(record) => void putBack(record)}
      />
      <ImportExport shelf={theLeathers} records={all ?? []} onTrouble={setTrouble} />
      <p className="help">Your leathers are kept in this browser on this machine only. Export them now and then.</p>
    </section>
  );
}

const UNREAD = { yet: 'Your leathers are being read.', ever: 'Your leathers could not be read.' } as const;
