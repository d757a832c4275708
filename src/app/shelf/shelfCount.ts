import { isRecord } from '../../core/index.ts';

/** How many records a shelf had when it was read last. */
interface Count {
  /** Those that stood on it. */
  readonly standing: number;
  /** All records, with removed jobs and damaged ones. */
  readonly all: number;
  /** When that was, ms since 1970. */
  readonly at: number;
  /** A loss that the maker has not yet been told of, or has not yet put away. */
  readonly lost?: { readonly covers: number; readonly at: number } | undefined;
}

/** What the browser has deleted. */
export interface Lost {
  /** How many there were, and when, ms since 1970. */
  readonly covers: number;
  readonly at: number;
  /** How many there are now. */
  readonly left: number;
}

/** Fewer that are missing from a shelf that is not empty are no loss of the browser's. */
const MANY = 3;

/** How long the shelf is not counted after records were deleted by hand, ms: other windows may have read it just before. */
const QUIET = 60_000;

/** The count of one shelf, kept apart from it so that a loss is noticed. */
class ShelfCount {
  readonly #key: string;

  /** @param key under which the browser keeps it */
  constructor(key: string) {
    this.#key = key;
  }

  /**
   * Compares what the shelf holds with what it held when it was read last, and notes it. An empty shelf, or one with less than half of
   * its records, has lost them, for all that is deleted by hand is told to `expectFewer`.
   * @param asked when it was read, ms since 1970
   */
  take(
    { standing, removed, damaged }: Readonly<Record<'standing' | 'removed' | 'damaged', readonly unknown[]>>,
    asked: number,
  ): void {
    const before = this.#noted();
    // One from the future was noted while the clock was wrong.
    const isLater = before !== null && before.at >= asked && before.at <= asked + 2 * QUIET;
    if (isLater) return;
    const all = standing.length + removed.length + damaged.length;
    const missing = (before?.all ?? 0) - all;
    const isLoss =
      before !== null && before.standing > 0 && missing > 0 && (all === 0 || (missing >= MANY && missing > all));
    const lost = before?.lost ?? (isLoss ? { covers: before.standing, at: before.at } : undefined);
    this.#note({ standing: standing.length, all, at: asked, lost });
  }

  /** Called before records are deleted because the maker wants it so. */
  expectFewer(now: number): void {
    this.#note({ standing: 0, all: 0, at: now + QUIET, lost: this.#noted()?.lost });
  }

  /** What the browser has deleted, as far as the maker has not closed the note of it; null for nothing. */
  lost(): Lost | null {
    const { lost, standing } = this.#noted() ?? {};
    return lost === undefined ? null : { ...lost, left: standing ?? 0 };
  }

  /** Forgets the loss that was told. */
  dismissLost(): void {
    const before = this.#noted();
    if (before !== null) this.#note({ ...before, lost: undefined });
  }

  // A browser without storage may throw as soon as it is accessed.
  #noted(): Count | null {
    try {
      const value: unknown = JSON.parse(localStorage.getItem(this.#key) ?? '');
      if (!isRecord(value) || !isCount(value.standing) || !isCount(value.all) || !isCount(value.at)) return null;
      const { standing, all, at, lost } = value;
      const isLost = isRecord(lost) && isCount(lost.covers) && isCount(lost.at);
      return { standing, all, at, lost: isLost ? { covers: Number(lost.covers), at: Number(lost.at) } : undefined };
    } catch {
      return null;
    }
  }

  #note(count: Count): void {
    try {
      localStorage.setItem(this.#key, JSON.stringify(count));
    } catch {
      // Then nothing is told; the shelf itself is as it is.
    }
  }
}

const isCount = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** The counts of the shelves, by the store of their records. */
export const COUNTS = {
  jobs: new ShelfCount('coverwright.shelf-count.v1'),
  leathers: new ShelfCount('coverwright.leather-count.v1'),
} as const;
