/// <reference types="vitest/config" />
import { readdirSync, readFileSync } from 'node:fs';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { contentSecurity, SECURITY_HEADERS } from './scripts/contentSecurity.ts';
import { namedExports } from './scripts/namedExports.ts';
import { offline } from './scripts/offline.ts';

const reports = process.env.TEST_REPORTS;

const TESTS = 'tests/**/*.test.{ts,tsx}';

/**
 * Tests that mock modules or change the global object. The others share what they load with those that the same worker runs
 * before and after them, which saves a fifth of the time.
 */
const ownModules = (): string[] =>
  readdirSync('tests', { recursive: true, encoding: 'utf8' })
    .map((file) => `tests/${file}`)
    .filter((file) => /\.test\.tsx?$/.test(file))
    .filter((file) => /vi\.(mock|doMock|spyOn|stubGlobal)\(|indexedDB/.test(readFileSync(file, 'utf8')));

/** In two projects of tests. Stryker loses mutants where there are several (scripts/mutants.mjs). */
function testFiles() {
  // Who serves or builds the page needs no list of its tests.
  if (!process.env.VITEST || process.env.OWN_MODULES === 'all') return { include: [TESTS] };
  const own = ownModules();
  return {
    projects: [
      { extends: true as const, test: { name: 'own modules', include: own } },
      { extends: true as const, test: { name: 'shared modules', include: [TESTS], exclude: own, isolate: false } },
    ],
  };
}

export default defineConfig({
  root: 'src',
  publicDir: '../public',
  base: './',
  plugins: [react(), contentSecurity(), offline(), namedExports()],
  optimizeDeps: { rolldownOptions: { plugins: [namedExports()] } },
  server: { host: '127.0.0.1', port: 4173 },
  // What `npm start` and the browser tests serve the built page with.
  preview: { headers: SECURITY_HEADERS },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    // Where a browser does not fetch ahead by itself (Safari before 17) the same comes a little later.
    modulePreload: {
      polyfill: false,
      // The lists of what late parts import weigh 2 kB in the first script: only the parts of the first screen have theirs.
      resolveDependencies: (file, imports) => (/(bench|Cards|LitScene)-/.test(file) ? imports : []),
    },
    rolldownOptions: {
      input: { index: 'src/index.html', sw: 'src/app/offline/serviceWorker.ts' },
      // A service worker keeps its name, for browsers look there for a newer one, and answers for the folder it is in.
      output: {
        entryFileNames: ({ name }) => (name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js'),
        // All that the first words need in one file, and all that answers to keys in another: they pack smaller than many. The
        // service worker stands alone.
        codeSplitting: {
          groups: [
            { name: 'first', tags: ['$initial'], test: /^(?!.*serviceWorker)/, priority: 2 },
            { name: 'bench', test: /app\/Bench\.tsx$/, priority: 1 },
          ],
        },
      },
    },
  },
  worker: { format: 'es', plugins: () => [namedExports()] },
  test: {
    root: import.meta.dirname,
    ...testFiles(),
    globalSetup: 'tests/lawSeed.ts',
    // One core is left idle by default.
    maxWorkers: '100%',
    // Only keeps a busy machine from being taken for a hang.
    testTimeout: process.env.LAWS === 'full' ? 3_600_000 : 300_000,
    // Hooks build the commands, which a slow machine takes its time for.
    hookTimeout: 300_000,
    reporters: reports ? ['default', ['json', { outputFile: `${reports}/unit.json` }]] : ['default'],
  },
});
