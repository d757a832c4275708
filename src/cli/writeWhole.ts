import { randomUUID } from 'node:crypto';
import { open, rename, rm } from 'node:fs/promises';
import { badWord } from './badInput.ts';
import { FileSink } from './terminal.ts';

/**
 * Writes a file beside its place and moves it there, so that nobody finds half of it.
 * @param make makes what is written, once it is known that it can be
 * @throws BadInput where none can be there, WriteError where the disk does not take it
 */
export async function writeWhole(path: string, make: () => Promise<string | Uint8Array>): Promise<void> {
  const part = `${path}.${randomUUID().slice(0, 8)}.part`;
  const refused = (error: NodeJS.ErrnoException): never => {
    throw badWord('--out', error.message, 'a file in a folder that can be written to');
  };
  const file = await open(part, 'wx').catch(refused);
  try {
    try {
      await new FileSink(file.fd).write(await make());
    } finally {
      await file.close();
    }
    await rename(part, path).catch(refused);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}
