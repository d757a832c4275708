import type { JobDocument } from '../../core/index.ts';
import { fileName } from '../../output/fileName.ts';
import { saveFile } from './saveFile.ts';

/** Gives the document to the browser as a file to save. */
export function saveJobFile(document: JobDocument): void {
  saveFile(fileName(document.name, 'job.json'), `${JSON.stringify(document, null, 2)}\n`, 'application/json');
}
