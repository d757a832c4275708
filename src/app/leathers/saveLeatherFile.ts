import type { JobRecord } from '../../core/index.ts';
import { fileName } from '../../output/fileName.ts';
import { saveFile } from '../state/saveFile.ts';

/** Gives one leather to the browser as a file to save. */
export function saveLeatherFile(document: JobRecord): void {
  saveFile(fileName(document.name, 'leather.json'), `${JSON.stringify(document, null, 2)}\n`, 'application/json');
}
