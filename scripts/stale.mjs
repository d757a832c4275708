import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Latest change, in ms, of a file, or of a folder and all it holds; a folder's own time shows what was removed from it.
 * @type {(path: string) => number}
 */
function changed(path) {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat === undefined) return 0;
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => changed(join(path, name))));
}

/**
 * Whether the built file is missing, or older than any of the files and folders it is built from.
 * @type {(built: string, sources: string[]) => boolean}
 */
export function isStale(built, sources) {
  const builtAt = statSync(built, { throwIfNoEntry: false })?.mtimeMs;
  return builtAt === undefined || sources.some((source) => changed(source) > builtAt);
}
