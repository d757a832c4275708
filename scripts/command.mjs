// Runs one command of the command line in this process: `node scripts/command.mjs NAME WORDS`. Builds its bundle first when it
// is missing or out of date. Standard output is left to the command alone: the build is silent, and where it fails, the reason
// goes to standard error with exit code 3 (internal failure).
import { mkdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { isStale } from './stale.mjs';

const root = join(import.meta.dirname, '..');
const folder = join(root, 'dist-cli');
const bundle = join(folder, 'main.js');
const sources = [
  'src/core',
  'src/artwork',
  'src/output',
  'src/cli',
  'public/jobs',
  'package.json',
  'vite.cli.config.ts',
];

/** @type {(error: unknown) => void} */
const fail = (error) => {
  console.error(error);
  process.exit(3);
};
process.on('uncaughtException', fail);

const paths = sources.map((source) => join(root, source));
if (isStale(bundle, paths)) {
  await buildBundle().catch((error) => {
    console.error('The command line could not be built.');
    fail(error);
  });
}

// npm changes to the package's folder; file names are relative to the folder in which the maker typed them.
if (process.env.npm_lifecycle_event === process.argv[2] && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);

process.argv[1] = bundle;
await import(pathToFileURL(bundle).href).catch(fail);

/** Builds beside the bundle and renames, so that a run started meanwhile never reads a half-written file. */
async function buildBundle() {
  const outDir = join(folder, `build-${process.pid}`);
  mkdirSync(outDir, { recursive: true });
  try {
    const { build } = await import('vite');
    await build({
      root,
      configFile: join(root, 'vite.cli.config.ts'),
      logLevel: 'silent',
      build: { outDir },
    });
    renameSync(join(outDir, 'main.js'), bundle);
  } finally {
    rmSync(outDir, { recursive: true, force: true });
  }
}
