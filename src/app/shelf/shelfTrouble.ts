/** Why the browser could not store or read, with words for the maker. */
export interface ShelfTrouble {
  readonly kind: 'full' | 'unavailable' | 'blocked' | 'newer' | 'silent' | 'broken' | 'stuck' | 'missing' | 'failed';
  readonly message: string;
  readonly remedy: string;
}

export type Shelved<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly trouble: ShelfTrouble };

const FILE = 'save your work as a file';

export const TROUBLE = {
  full: {
    kind: 'full',
    message: 'The browser has no room left; this change was not kept.',
    remedy: `Free disk space or remove what you no longer need, or ${FILE}.`,
  },
  unavailable: {
    kind: 'unavailable',
    message: 'The browser keeps nothing here, as in a private window or where storage is switched off.',
    remedy: `Allow this page to store data, or ${FILE}.`,
  },
  blocked: {
    kind: 'blocked',
    message: 'Another window holds the shelf open in an older version.',
    remedy: 'Close or reload the other windows of this page.',
  },
  newer: {
    kind: 'newer',
    message: 'The shelf was written by a newer version of Coverwright.',
    remedy: `Reload the page to get that version, or ${FILE}.`,
  },
  silent: {
    kind: 'silent',
    message: 'The browser does not answer when it is asked for the shelf.',
    remedy: `Close all windows of the browser and start it again, or ${FILE}.`,
  },
  broken: {
    kind: 'broken',
    message: 'The browser cannot read the shelf: what it keeps on this machine is damaged.',
    remedy:
      'Close all windows of the browser and start it again. If that does not help, the place Shelf offers a new one.',
  },
  stuck: {
    kind: 'stuck',
    message: 'The browser cannot delete the damaged shelf either.',
    remedy: 'Save the job as a file, then clear the data of this page in the settings of the browser.',
  },
} as const satisfies Record<string, ShelfTrouble>;

/** That a record is not there, by what a maker calls it. */
export const missing = (noun: string): ShelfTrouble => ({
  kind: 'missing',
  message: `This ${noun} is no longer kept here.`,
  remedy: `Look among the removed ${noun}s, or import it from a file.`,
});

/** Names of errors with which browsers refuse storage altogether. */
const REFUSALS = new Set(['SecurityError', 'InvalidStateError', 'NotAllowedError']);

/** Turns an error of the browser's storage into words for the maker. */
export function troubleOf(error: unknown): ShelfTrouble {
  if (isTrouble(error)) return error;
  const name = error instanceof Error ? error.name : '';
  if (name === 'QuotaExceededError') return TROUBLE.full;
  if (name === 'VersionError') return TROUBLE.newer;
  if (name === 'UnknownError') return TROUBLE.broken;
  if (REFUSALS.has(name)) return TROUBLE.unavailable;
  const reason = error instanceof Error ? error.message : String(error);
  return { kind: 'failed', message: `The browser could not do this: ${reason}`, remedy: `Try again, or ${FILE}.` };
}

const isTrouble = (error: unknown): error is ShelfTrouble =>
  typeof error === 'object' && error !== null && 'kind' in error && 'remedy' in error;
