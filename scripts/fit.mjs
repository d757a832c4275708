// Runs the command line in this process, bundling it first when it is missing or out of date. Standard output is left to
// the reports alone: the build is silent, and its failure goes to standard error with exit code 3 (internal failure).
import { mkdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { isStale } from './stale.mjs';

const root = join(import.meta.dirname, '..');
const bundle = join(root, 'dist-cli', 'fit.js');
const sources = ['src/core', 'src/output', 'src/cli', 'public/jobs', 'package.json', 'vite.cli.config.ts'];

function fail(error) {
  console.error(error);
  process.exit(3);
}
process.on('uncaughtException', fail);

if (
  isStale(
    bundle,
    sources.map((source) => join(root, source)),
  )
)
  await buildBundle();

// npm changes to the package's folder; file names are meant from where the maker stands.
if (process.env.npm_lifecycle_event === 'fit' && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);

process.argv[1] = bundle;
await import(pathToFileURL(bundle).href).catch(fail);

/** Builds beside the bundle and renames, so that a run started meanwhile never reads a half-written file. */
async function buildBundle() {
  const outDir = join(root, 'dist-cli', `build-${process.pid}`);
  mkdirSync(outDir, { recursive: true });
  try {
    const { build } = await import('vite');
    await build({ root, configFile: join(root, 'vite.cli.config.ts'), logLevel: 'silent', build: { outDir } });
    renameSync(join(outDir, 'fit.js'), bundle);
  } catch (error) {
    console.error('The command line could not be built.');
    rmSync(outDir, { recursive: true, force: true });
    fail(error);
  }
  rmSync(outDir, { recursive: true, force: true });
}
