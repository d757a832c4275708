import { useCallback, useDeferredValue, useEffect, useMemo, useState } from 'react';
import { useBench, useBenchStore, useDispatch } from '../state/BenchContext.tsx';
import { saveJobFile } from '../state/jobFile.ts';
import { placeOf } from '../state/jobHistory.ts';
import { keepJob } from '../state/keptJob.ts';
import { counted, DamagedRecords } from './DamagedRecords.tsx';
import { ImportExport } from './ImportExport.tsx';
import { type CardAction, JobCard } from './JobCard.tsx';
import { JustRemoved } from './JustRemoved.tsx';
import { NewShelf } from './NewShelf.tsx';
import { RemovedRecords } from './RemovedRecords.tsx';
import { ShelfBar } from './ShelfBar.tsx';
import { ShowMore } from './ShowMore.tsx';
import { savedAt } from './savedAt.ts';
import { jobWords, shelfSearch } from './searchShelf.ts';
import type { ShelfJob } from './shelfSchema.ts';
import type { Shelved } from './shelfTrouble.ts';
import { type ShelfOrder, shelvesOf } from './shelves.ts';
import { TroubleNote } from './TroubleNote.tsx';
import { theShelf } from './theShelf.ts';
import { useShelfContent } from './useShelfContent.ts';
import type { ShelfKeeping } from './useShelfKeeping.ts';
import { Versions } from './Versions.tsx';

interface ShelfPlaceProps {
  readonly keeping: ShelfKeeping;
  /** Called once a job is opened. */
  readonly onClose: () => void;
}

/** Cards drawn at a time: each computes its job for the picture. */
const PAGE = 24;

/** All covers kept in this browser, standing on shelves. */
export default function ShelfPlace({ keeping, onClose }: ShelfPlaceProps) {
  const { getState } = useBenchStore();
  const dispatch = useDispatch();
  const { content, trouble, setTrouble, refresh } = useShelfContent(theShelf);
  const [text, setText] = useState('');
  const [shown, setShown] = useState(PAGE);
  const [order, setOrder] = useState<ShelfOrder>('made');
  const [versionsOf, setVersionsOf] = useState<ShelfJob | null>(null);
  const [lastRemoved, setLastRemoved] = useState<ShelfJob | null>(null);
  const wanted = useDeferredValue(text);
  const search = useMemo(() => shelfSearch(content?.standing ?? [], jobWords), [content]);
  const found = useMemo(() => search(wanted), [search, wanted]);
  const shelves = useMemo(() => shelvesOf(found, order, shown), [found, order, shown]);
  const openId = useBench(({ history }) => placeOf(history)?.id);
  const keepsSteps = useBench((bench) => bench.keepsSteps);
  const { flush } = keeping;

  // The list includes what was typed a moment ago.
  useEffect(() => void flush(), [flush]);

  const open = useCallback(
    async ({ id, revision, document }: ShelfJob): Promise<void> => {
      await flush();
      dispatch({ type: 'open', document, place: { id, revision, document } });
      onClose();
    },
    [dispatch, flush, onClose],
  );

  /** Notes the new revision after a removal or its undoing, so that it does not count as another window's change. */
  const keepPlace = useCallback(
    ({ id, revision }: ShelfJob): void => {
      const { history } = getState();
      const place = placeOf(history);
      if (place?.id === id) dispatch({ type: 'place', key: history.key, place: { ...place, revision } });
    },
    [getState, dispatch],
  );

  const act = useCallback(
    async (action: CardAction, job: ShelfJob): Promise<void> => {
      if (action === 'versions') return setVersionsOf(job);
      if (action === 'export') return saveJobFile(job.document);
      if (action === 'open') return open(job);
      const done = await (action === 'copy' ? theShelf.copy(job.id) : theShelf.remove(job.id));
      if (!done.ok) return setTrouble(done.trouble);
      if (action === 'copy') return open(done.value);
      keepPlace(done.value);
      setLastRemoved(done.value);
    },
    [keepPlace, open, setTrouble],
  );
  const onAct = useCallback((action: CardAction, job: ShelfJob) => void act(action, job), [act]);

  const putBack = async (job: ShelfJob): Promise<void> => {
    const done = await theShelf.restore(job.id);
    if (!done.ok) return setTrouble(done.trouble);
    keepPlace(done.value);
    setLastRemoved(null);
  };

  const why = trouble ?? keeping.trouble;

  /** Does what is asked with a damaged record. */
  const tend = async (asked: Promise<Shelved<unknown>>): Promise<void> => {
    const done = await asked;
    if (!done.ok) return setTrouble(done.trouble);
    return refresh();
  };

  return (
    <section className="shelf-place" aria-labelledby="shelf-title">
      <ShelfBar
        id="shelf-title"
        title="Shelf"
        text={text}
        search={(wish) => {
          setText(wish);
          setShown(PAGE);
        }}
        placeholder="name, kind or size"
        orders={ORDERS}
        order={order}
        setOrder={setOrder}
        said={
          content === null ? UNREAD[trouble === null ? 'yet' : 'ever'] : count(found.length, content.standing.length)
        }
      />
      <TroubleNote trouble={why} />
      {(why?.kind === 'broken' || why?.kind === 'stuck') && (
        <NewShelf
          begin={async () => {
            await keeping.beginAnew();
            setTrouble(null);
            await refresh();
          }}
        />
      )}
      <JustRemoved record={lastRemoved} putBack={(record) => void putBack(record)} />
      {versionsOf !== null && (
        <Versions
          shelf={theShelf}
          record={versionsOf}
          act="Open as a job of its own"
          onAct={({ document, savedAt: time }) => {
            const name = `${versionsOf.name.slice(0, 160)}, as of ${savedAt(time)}`;
            dispatch({ type: 'open', document: { ...document, name } });
            onClose();
          }}
          onClose={() => setVersionsOf(null)}
        />
      )}
      {shelves.map(({ title, jobs }) => (
        <section key={title} className="shelf" aria-label={title}>
          <p className="shelf-title" aria-hidden="true">
            {title}
          </p>
          <ul>
            {jobs.map((job) => (
              <JobCard key={job.id} job={job} isOpen={job.id === openId} act={onAct} />
            ))}
          </ul>
        </section>
      ))}
      {content?.standing.length === 0 && (
        <div className="shelf">
          <div className="standing" />
          <p>
            Nothing is kept yet. A job comes here by itself as soon as it is started, opened from a file or changed.
          </p>
        </div>
      )}
      <ShowMore rest={found.length - shown} page={PAGE} show={() => setShown(shown + PAGE)} />
      <DamagedRecords
        kind={theShelf.kind}
        said={`${counted(content?.damaged.length ?? 0)} of the shelf cannot be read as a job; all others are as they were.`}
        records={content?.damaged ?? []}
        repair={(key) => void tend(theShelf.repair(key))}
        discard={(key) => void tend(theShelf.discardDamaged(key))}
      />
      <RemovedRecords kind={theShelf.kind} records={content?.removed ?? []} putBack={(job) => void putBack(job)} />
      <ImportExport
        shelf={theShelf}
        records={content?.standing ?? []}
        // The page starts with the open job next time, not with an imported one.
        onImported={() => void keepJob(getState().history)}
        onTrouble={setTrouble}
      />
      <p className="help">
        {LASTING[keeping.lasting ?? 'unknown']}
        {keeping.lasting === 'refused' && (
          <>
            {' '}
            <button type="button" className="quiet" onClick={keeping.askAgain}>
              Ask the browser to keep it
            </button>
          </>
        )}
        {!keepsSteps && ' The browser does not keep your steps: undo works until you leave the page.'}
      </p>
    </section>
  );
}

const ORDERS: readonly { readonly value: ShelfOrder; readonly word: string }[] = [
  { value: 'made', word: 'Last made first' },
  { value: 'name', word: 'By name' },
];

const UNREAD = { yet: 'The shelf is being read.', ever: 'The shelf could not be read.' } as const;

const LASTING = {
  granted: 'The browser has promised to keep the shelf until you clear it. A file is still the safer copy.',
  refused: 'This browser may delete the shelf when the disk is full. Export it now and then.',
  unknown: 'The shelf is kept in this browser on this machine only. Export it now and then.',
} as const;

const count = (found: number, all: number): string =>
  found === all ? `${all} ${all === 1 ? 'job' : 'jobs'}` : `${found} of ${all} jobs`;
