import type { JobDocument } from '../../core/index.ts';
import type { Bench } from '../state/bench.ts';
import { freshId } from '../state/freshId.ts';
import { type JobHistory, type JobKey, type ShelfPlace, type Step, stepOf } from '../state/jobHistory.ts';
import { nextMark } from '../state/keptJob.ts';
import { isSound } from './damaged.ts';
import {
  isHead,
  JOURNAL_VERSION,
  type JournalHead,
  type JournalPlace,
  type JournalRecord,
  readStep,
  stepRecord,
  textsApart,
  textsIn,
} from './journalRecord.ts';
import { type ReadRecord, readAll } from './readAll.ts';
import { isSameStep, type Recalled, recalled } from './recalled.ts';
import { inTransaction, type ShelfConnection } from './shelfDatabase.ts';
import type { ShelfDatabase } from './shelfSchema.ts';

/** What a journal needs of the store of the bench. */
interface StepStore {
  readonly getState: () => Pick<Bench, 'history' | 'dispatch'>;
  readonly subscribe: (listener: (now: Pick<Bench, 'history'>, before: Pick<Bench, 'history'>) => void) => () => void;
}

/**
 * The steps of one window, kept in the browser's database as they are made, so that a crash takes not even undo and redo.
 *
 * Every step is a record of its own at its position on the line of undo and redo, and the head says which is open: an edit
 * writes one step and the head in one transaction, undo the head alone. A damaged record costs only its step.
 */
export class Journal {
  readonly window: string;
  readonly #connection: ShelfConnection;
  /** The line as it is in the database, and the position of its first step; null where it must be written anew. */
  #kept: { readonly line: readonly Step[]; readonly first: number } | null = null;
  /** Names of the texts that are kept apart. */
  #texts = new Map<string, string>();
  #waiting: JobHistory | null = null;
  #writing: Promise<void> = Promise.resolve();
  #isWriting = false;
  /** True once the disk was full: what the journal would take is left to the jobs. */
  #isStopped = false;
  #isRefused = false;
  #tell: (isKept: boolean) => void = () => {};

  /** @param window whose journal it is; no other window may have it open (`openJournal`) */
  constructor(connection: ShelfConnection, window: string) {
    this.#connection = connection;
    this.window = window;
  }

  /**
   * Brings back the history of the last visit, then keeps every step.
   * @param tell called with false where the browser refuses a step, and with true when it takes one again
   * @returns a way to stop
   */
  keep({ getState, subscribe }: StepStore, tell: (isKept: boolean) => void): () => void {
    let isWanted = true;
    let stop = (): void => {};
    this.#tell = tell;
    this.#writing = this.#writing
      .then(() => this.recall(getState().history))
      .then((found) => {
        if (!isWanted) return;
        const { history, dispatch } = getState();
        if (found !== null) dispatch({ type: 'recall', history: recalled(history, found) });
        stop = subscribe(({ history }, before) => {
          if (history !== before.history) this.#note(history);
        });
        this.#note(getState().history);
      });
    return () => {
      isWanted = false;
      stop();
    };
  }

  /** Resolves once the history is back and all that was noted is written or has failed. */
  async flush(): Promise<void> {
    const writing = this.#writing;
    await writing;
    if (writing !== this.#writing) await this.flush();
  }

  /** Notes a state. While one is being written, only the newest waits. */
  #note(history: JobHistory): void {
    this.#waiting = history;
    if (!this.#isWriting) this.#writing = this.#writeAll();
  }

  async #writeAll(): Promise<void> {
    this.#isWriting = true;
    while (this.#waiting !== null && !this.#isStopped) {
      const history = this.#waiting;
      this.#waiting = null;
      await this.#write(history);
    }
    this.#isWriting = false;
  }

  async #write(history: JobHistory): Promise<void> {
    const { window } = this;
    const line = [...history.past, stepOf(history), ...history.future];
    const before = this.#kept?.line ?? [];
    // The oldest steps fall off where undo goes back no further.
    const shift = Math.max(
      0,
      before.findIndex((step) => isStep(step, line[0])),
    );
    const first = (this.#kept?.first ?? 0) + shift;
    const fresh = new Map<string, string>();
    const nameOf = (text: string): string => {
      const name = this.#texts.get(text) ?? fresh.get(text) ?? freshId();
      if (!this.#texts.has(text)) fresh.set(text, name);
      return name;
    };
    const records: JournalRecord[] = line.flatMap((step, i) =>
      isStep(before[i + shift], step) ? [] : [stepRecord(window, first + i, step, nameOf)],
    );
    const used = new Set(line.flatMap(({ document }) => longTexts(document)));
    const unused = [...this.#texts].filter(([text]) => !used.has(text));
    const at = first + history.past.length;
    const head: JournalHead = {
      window,
      version: JOURNAL_VERSION,
      at,
      mark: nextMark(),
      places: placesIn(history, line, first),
    };
    const written = await this.#connection.do((database) =>
      inTransaction(database, ['journals', 'steps'], async (transaction) => {
        const steps = transaction.objectStore('steps');
        const [least, most] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
        const range = (from: number, to: number): IDBKeyRange =>
          IDBKeyRange.bound([window, from], [window, to], true, true);
        const deletions =
          this.#kept === null
            ? [recordsOf(window)]
            : [
                ...(shift > 0 ? [range(least, first)] : []),
                ...(before.length - shift > line.length ? [range(first + line.length - 1, most)] : []),
                ...unused.map(([, name]) => IDBKeyRange.only([window, name])),
              ];
        const asked: Promise<unknown>[] = [];
        const ask = (request: Promise<unknown>): void => {
          // Awaited below, unless a later one throws at once.
          request.catch(() => {});
          asked.push(request);
        };
        for (const range of deletions) ask(steps.delete(range));
        for (const [text, at] of fresh) ask(steps.put({ window, at, text }));
        for (const record of records) ask(steps.put(record));
        ask(transaction.objectStore('journals').put(head));
        // Without waiting for answers, which come only once the page has drawn what was typed.
        transaction.commit();
        await Promise.all(asked);
      }),
    );
    if (written.ok) {
      this.#kept = { line, first };
      for (const [text] of unused) this.#texts.delete(text);
      for (const [text, name] of fresh) this.#texts.set(text, name);
    } else {
      this.#kept = null;
      this.#texts.clear();
      if (written.trouble.kind === 'full') await this.#stop();
    }
    if (this.#isRefused === written.ok) this.#tell(written.ok);
    this.#isRefused = !written.ok;
  }

  async #stop(): Promise<void> {
    this.#isStopped = true;
    await this.#connection.do((database) => forgetJournal(database, this.window));
  }

  /** The history on disk; null where there is none. @param now the history that the page has */
  async recall(now: JobHistory): Promise<Recalled | null> {
    const started = now.past[0] ?? stepOf(now);
    const read = await this.#connection.do(async (database) => {
      const head: unknown = await database.get('journals', this.window);
      const records = await readAll(database, 'steps', recordsOf(this.window));
      const recalled = this.#read(isHead(head) ? head : null, records, started);
      return recalled && { ...recalled, places: await withOwnSaves(database, recalled) };
    });
    return read.ok ? read.value : null;
  }

  #read(head: JournalHead | null, records: readonly ReadRecord<'steps'>[], started: Step): Recalled | null {
    const texts = textsIn(records);
    const steps = new Map<number, Step | null>();
    for (const { key, record } of records) if (typeof key[1] === 'number') steps.set(key[1], readStep(record, texts));
    const sound = [...steps].filter((entry): entry is [number, Step] => entry[1] !== null);
    if (sound.length === 0) return null;
    // Without its head, the line is placed by the state that the page started with.
    const at = head?.at ?? sound.findLast(([, step]) => isSameStep(step, started))?.[0] ?? Number.POSITIVE_INFINITY;
    const [first, last] = [sound[0]![0], sound.at(-1)![0]];
    const isWhole = head !== null && sound.length === steps.size && last - first + 1 === sound.length;
    // One that is not whole is written anew, texts and all.
    const isKept = isWhole && first <= at && at <= last;
    this.#kept = isKept ? { line: sound.map(([, step]) => step), first } : null;
    this.#texts = new Map(isKept ? [...texts].map(([name, text]) => [text, name]) : []);
    const placeOf = ([key, { id, revision, savedAt }]: JournalPlace): [JobKey, ShelfPlace] => [
      key,
      { id, revision, document: (savedAt === null ? null : steps.get(savedAt)?.document) ?? null },
    ];
    return {
      past: sound.filter(([position]) => position < at).map(([, step]) => step),
      present: steps.get(at) ?? null,
      future: sound.filter(([position]) => position > at).map(([, step]) => step),
      places: new Map(head?.places.map(placeOf)),
    };
  }
}

/** All records of a window's journal. */
const recordsOf = (window: string): IDBKeyRange =>
  IDBKeyRange.bound([window, Number.NEGATIVE_INFINITY], [window, []], false, true);

/** Deletes a journal. */
export const forgetJournal = (database: ShelfDatabase, window: string): Promise<void> =>
  inTransaction(database, ['journals', 'steps'], async (transaction) => {
    await Promise.all([
      transaction.objectStore('steps').delete(recordsOf(window)),
      transaction.objectStore('journals').delete(window),
    ]);
  });

const isStep = (a: Step | undefined, b: Step | undefined): boolean =>
  a !== undefined && a.document === b?.document && a.typed === b.typed && a.key === b.key;

const known = new WeakMap<JobDocument, readonly string[]>();

function longTexts(document: JobDocument): readonly string[] {
  const texts = known.get(document) ?? textsApart(document);
  known.set(document, texts);
  return texts;
}

function placesIn({ places }: JobHistory, line: readonly Step[], first: number): readonly JournalPlace[] {
  const keys = new Set(line.map(({ key }) => key));
  return [...places]
    .filter(([key]) => keys.has(key))
    .map(([key, { id, revision, document }]) => {
      const saved = line.findLastIndex((step) => step.key === key && step.document === document);
      return [key, { id, revision, savedAt: saved < 0 ? null : first + saved }];
    });
}

/**
 * The places on the shelf with those saves of this window that it had not yet noted when it was killed: they have the
 * state of a step, or are the first of a job that stands under its key.
 */
async function withOwnSaves(
  database: ShelfDatabase,
  { past, present, future, places }: Recalled,
): Promise<Recalled['places']> {
  const steps = [...past, ...(present === null ? [] : [present]), ...future];
  const keys = [...new Set(steps.map(({ key }) => key))];
  const found = await Promise.all(
    keys.map(async (key): Promise<[JobKey, ShelfPlace | undefined]> => {
      const place = places.get(key);
      const job = await database.get('jobs', place?.id ?? key);
      if (job === undefined || !isSound(job) || job.revision <= (place?.revision ?? 0)) return [key, place];
      const text = JSON.stringify(job.document);
      const document =
        steps.find((step) => step.key === key && JSON.stringify(step.document) === text)?.document ?? null;
      const isOwn = document !== null || (place === undefined && job.revision === 1);
      return [key, isOwn ? { id: job.id, revision: job.revision, document } : place];
    }),
  );
  return new Map(found.filter((entry): entry is [JobKey, ShelfPlace] => entry[1] !== undefined));
}
