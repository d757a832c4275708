import { type FileHandle, open, stat } from 'node:fs/promises';
import { FileSink, type Terminal } from '../terminal.ts';
import { outTrouble } from '../writeWhole.ts';
import { KeptOutput } from './keptOutput.ts';
import type { RunOutput } from './runOutput.ts';
import { FIRST_MARK, notToGoOn, type RunHead } from './runRecord.ts';

/** Standard output. */
export const printedOutput = (terminal: Terminal): RunOutput => plainOutput((content) => terminal.print(content), null);

/**
 * The output named by `--out`: kept while it grows where it is a file, written as it comes where it is a pipe or a device.
 * @throws BadInput, WriteError
 */
export async function outputInto(out: string, head: RunHead, isResumed: boolean): Promise<RunOutput> {
  const older = await stat(out).catch(() => null);
  if (older === null || older.isFile()) return KeptOutput.open(out, head, isResumed);
  if (isResumed) throw notToGoOn(`${out}, which is no file`);
  const file = await open(out, 'w').catch((error) => {
    throw outTrouble(error);
  });
  const sink = new FileSink(file.fd);
  return plainOutput((content) => sink.write(content), file);
}

const plainOutput = (print: (content: string | Uint8Array) => Promise<void>, file: FileHandle | null): RunOutput => ({
  start: FIRST_MARK,
  isDone: false,
  isKept: false,
  async *earlierComplaints() {},
  write: print,
  async finish() {},
  async close() {
    await file?.close();
  },
});
