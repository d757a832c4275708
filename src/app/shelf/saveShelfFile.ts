import type { JobRecord } from '../../core/index.ts';
import { fileName } from '../../output/fileName.ts';
import { saveFile } from '../state/saveFile.ts';
import { shelfFile } from './shelfFile.ts';
import type { ShelfKind } from './shelfKind.ts';

const NAMES = { jobs: 'Coverwright shelf', leathers: 'Coverwright leathers' } as const;

/** Saves jobs or leathers as one file, named by the day; with their ids where others name them by these. */
export function saveShelfFile(documents: readonly JobRecord[], kind: ShelfKind, ids: readonly string[] = []): void {
  const day = new Date().toISOString().slice(0, 10);
  saveFile(
    fileName(NAMES[kind.records], 'json', [day]),
    shelfFile(documents, kind, kind.isNamedById ? ids : []),
    'application/json',
  );
}
