import { mkdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { isStale } from './stale.mjs';

const root = join(import.meta.dirname, '..');
const sources = ['src/core', 'src/output', 'src/cli', 'public/jobs', 'package.json', 'vite.cli.config.ts'];

/**
 * Runs a command line in this process, bundling it first when it is missing or out of date. Standard output is left to
 * the command alone: the build is silent, and its failure goes to standard error with exit code 3 (internal failure).
 * @param name of the npm script and of the bundle
 * @param entry file under the root to bundle
 */
export async function runBundle(name, entry) {
  const fail = (error) => {
    console.error(error);
    process.exit(3);
  };
  process.on('uncaughtException', fail);
  const bundle = join(root, 'dist-cli', `${name}.js`);
  if (
    isStale(
      bundle,
      sources.map((source) => join(root, source)),
    )
  ) {
    try {
      await buildBundle(name, entry, bundle);
    } catch (error) {
      console.error('The command line could not be built.');
      fail(error);
    }
  }

  // npm changes to the package's folder; file names are meant from where the maker stands.
  if (process.env.npm_lifecycle_event === name && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);

  process.argv[1] = bundle;
  await import(pathToFileURL(bundle).href).catch(fail);
}

/** Builds beside the bundle and renames, so that a run started meanwhile never reads a half-written file. */
async function buildBundle(name, entry, bundle) {
  const outDir = join(root, 'dist-cli', `build-${name}-${process.pid}`);
  mkdirSync(outDir, { recursive: true });
  try {
    const { build } = await import('vite');
    const output = { entryFileNames: `${name}.js` };
    await build({
      root,
      configFile: join(root, 'vite.cli.config.ts'),
      logLevel: 'silent',
      build: { ssr: entry, outDir, rolldownOptions: { output } },
    });
    renameSync(join(outDir, `${name}.js`), bundle);
  } finally {
    rmSync(outDir, { recursive: true, force: true });
  }
}
