import { randomUUID } from 'node:crypto';
import { access, constants, type FileHandle, open, rename, rm, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { type BadInput, badWord } from './badInput.ts';
import { FileSink, type Sink, WriteError } from './terminal.ts';

/**
 * Makes a file beside its place, waits until it is on the disk, and moves it there, so that nobody ever finds half of it and an
 * older one stays until then.
 * @param fill writes its content
 * @throws BadInput where none can be there, WriteError where the disk does not take it
 */
export async function replaceFile(path: string, fill: (sink: Sink) => Promise<void>): Promise<void> {
  const part = `${path}.${randomUUID().slice(0, 8)}.part`;
  try {
    await using(await open(part, 'wx'), async (file) => {
      await fill(new FileSink(file.fd));
      await file.sync();
    });
    await rename(part, path);
    await settle(path);
  } catch (error) {
    await rm(part, { force: true });
    throw outTrouble(error);
  }
}

/**
 * Writes a file whole or not at all.
 * @param make makes its content, once it is known that a file can be there
 * @throws BadInput where none can be there, WriteError where the disk does not take it
 */
export async function writeWhole(path: string, make: () => Promise<string | Uint8Array>): Promise<void> {
  try {
    await access(dirname(path), constants.W_OK);
    if ((await stat(path).catch(() => null))?.isDirectory()) throw badWord('--out', `a folder: ${path}`, 'a file');
  } catch (error) {
    throw outTrouble(error);
  }
  const content = await make();
  await replaceFile(path, (sink) => sink.write(content));
}

/** Waits until a name is on the disk as well; systems that know no such thing are left alone. */
export async function settle(path: string): Promise<void> {
  const folder = await open(dirname(path)).catch(() => null);
  await folder?.sync().catch(() => {});
  await folder?.close();
}

/** What an error in writing to `--out` is: no room, or no place for a file. Other errors stay what they are. */
export function outTrouble(error: unknown): BadInput | WriteError | unknown {
  const cause = error as NodeJS.ErrnoException;
  if (cause.syscall === undefined) return error;
  if (WriteError.isFull(cause)) return new WriteError(cause);
  return badWord('--out', cause.message, 'a file in a folder that can be written to');
}

/** Closes a file after its use; that may fail too, where the disk is told only then that there is no room. */
async function using(file: FileHandle, use: (file: FileHandle) => Promise<void>): Promise<void> {
  try {
    await use(file);
  } finally {
    await file.close();
  }
}
