import type { JobDocument } from '../../core/index.ts';
import { fileName } from '../../output/fileName.ts';
import { saveFile } from '../state/saveFile.ts';
import { shelfFile } from './shelfFile.ts';

/** Saves jobs as one file, named by the day. */
export function saveShelfFile(documents: readonly JobDocument[]): void {
  const day = new Date().toISOString().slice(0, 10);
  saveFile(fileName('Coverwright shelf', 'json', [day]), shelfFile(documents), 'application/json');
}
