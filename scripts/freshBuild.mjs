import { build } from 'vite';
import { isStale } from './stale.mjs';

const SOURCES = ['src', 'public', 'scripts', 'package.json', 'package-lock.json', 'vite.config.ts'];

/** Builds the app when it is missing or out of date. The current folder is the project's. */
export async function freshBuild() {
  if (!isStale('dist/index.html', SOURCES)) return;
  console.log('Building …');
  await build({ logLevel: 'warn' });
}
