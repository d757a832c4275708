// Runs every bench/*.bench.ts (or those whose name contains an argument), one after the other, each in its own node.
//
// The convention: a bench file is a plain module. It makes its own tinybench `Bench`, awaits `bench.run()` at top level
// and prints with `printTable` from bench/table.ts, which states each median beside the machine's calibration loop.
//
//   import { Bench } from 'tinybench';
//   import { printTable } from './table.ts';
//   const bench = new Bench({ time: 500 });
//   bench.add('what is timed', () => work());
//   await bench.run();
//   printTable(bench);
//
// The file is bundled first, so it may import anything under src by its .ts path.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';

const root = join(import.meta.dirname, '..');
const outDir = join(root, 'dist-cli', 'bench');
const wanted = process.argv.slice(2);

const names = readdirSync(join(root, 'bench'))
  .filter((file) => file.endsWith('.bench.ts'))
  .map((file) => file.slice(0, -'.ts'.length))
  .filter((name) => wanted.length === 0 || wanted.some((part) => name.includes(part)));

if (names.length === 0) {
  console.error(`No bench file matches: ${wanted.join(' ')}. See the names in bench/.`);
  process.exit(2);
}

await build({
  root,
  configFile: false,
  publicDir: false,
  logLevel: 'warn',
  build: {
    ssr: true,
    outDir,
    emptyOutDir: true,
    target: 'node20',
    rolldownOptions: { input: Object.fromEntries(names.map((name) => [name, join(root, 'bench', `${name}.ts`)])) },
  },
});

let failed = false;
for (const name of names) {
  console.log(`\n${name}`);
  failed =
    spawnSync(process.execPath, [join(outDir, `${name}.js`)], { stdio: 'inherit', cwd: root }).status !== 0 || failed;
}
process.exit(failed ? 1 : 0);
