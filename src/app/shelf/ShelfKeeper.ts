import type { JobDocument } from '../../core/index.ts';
import type { JobKey, ShelfPlace } from '../state/jobHistory.ts';
import type { Saved, Shelf } from './shelf.ts';
import type { ShelfTrouble, Shelved } from './shelfTrouble.ts';

/** Pause after the last change before a save, ms: a drag is one save, and a crash after the pause loses nothing. */
const PAUSE_MS = 300;

/** Result of a save. `parted`: another window had saved first, so this state became a new record. */
export type Kept =
  | { readonly what: 'kept' | 'parted'; readonly key: JobKey }
  | { readonly what: 'trouble'; readonly key: JobKey; readonly trouble: ShelfTrouble };

/** Places of the documents on the shelf. */
interface Places {
  get(key: JobKey): ShelfPlace | undefined;
  set(key: JobKey, place: ShelfPlace): void;
}

interface Waiting {
  readonly key: JobKey;
  readonly document: JobDocument;
}

/** Writes what is being edited to its shelf a moment after it changed, one save after another. */
export class ShelfKeeper {
  readonly #shelf: Shelf;
  readonly #places: Places;
  readonly #tell: (kept: Kept) => void;
  #waiting: Waiting | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #saves: Promise<void> = Promise.resolve();

  /** @param tell called after each save */
  constructor(shelf: Shelf, places: Places, tell: (kept: Kept) => void) {
    this.#shelf = shelf;
    this.#places = places;
    this.#tell = tell;
  }

  /** Keeps a state of a document; a later one of the same replaces it if it comes before the shelf is written. */
  keep(key: JobKey, document: JobDocument): void {
    if (this.#waiting !== null && this.#waiting.key !== key) void this.flush();
    clearTimeout(this.#timer);
    this.#waiting = { key, document };
    this.#timer = setTimeout(() => void this.flush(), PAUSE_MS);
  }

  /** Writes a waiting state at once. Resolves when every save has succeeded or failed. */
  flush(): Promise<void> {
    clearTimeout(this.#timer);
    const waiting = this.#waiting;
    this.#waiting = null;
    if (waiting !== null) this.#saves = this.#saves.then(() => this.#save(waiting));
    return this.#saves;
  }

  async #save({ key, document }: Waiting): Promise<void> {
    const place = this.#places.get(key);
    // Unchanged or undone: not saved, so that no new job is made where another window has saved.
    if (place?.document === document) return;
    const saved =
      place === undefined ? await this.#put(key, document) : await this.#shelf.save(place.id, place.revision, document);
    if (!saved.ok) {
      this.#tell({ what: 'trouble', key, trouble: saved.trouble });
      return;
    }
    const { record, isCopy } = saved.value;
    this.#places.set(key, { id: record.id, revision: record.revision, document });
    this.#tell({ what: isCopy ? 'parted' : 'kept', key });
  }

  /** Uses an equal job on the shelf, so that a link opened twice is kept once, or adds the job under its key. */
  async #put(key: JobKey, document: JobDocument): Promise<Shelved<Saved>> {
    const list = await this.#shelf.list();
    if (!list.ok) return list;
    const text = JSON.stringify(document);
    const equal = list.value.find((job) => JSON.stringify(job.document) === text);
    if (equal !== undefined) return { ok: true, value: { record: equal, isCopy: false } };
    const added = await this.#shelf.add(document, key);
    return added.ok ? { ok: true, value: { record: added.value, isCopy: false } } : added;
  }
}
