import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { Plugin } from 'vite';

/** The built service worker, and where it finds what it is to keep. */
const WORKER = 'sw.js';

/** Tells the service worker which files were built, so that all of them are there without a network. */
export function offline(): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    enforce: 'post',
    writeBundle({ dir }) {
      const folder = dir!;
      const files = readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && entry.name !== WORKER)
        .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
        .sort();
      const mark = createHash('sha256');
      for (const file of files) mark.update(file).update(readFileSync(join(folder, file)));
      const edition = { mark: mark.digest('hex').slice(0, 16), files: files.map((file) => `./${file}`) };
      const path = join(folder, WORKER);
      writeFileSync(path, `const EDITION = ${JSON.stringify(edition)};\n${readFileSync(path, 'utf8')}`);
    },
  };
}
