// Builds the core as a library into dist-lib: ESM JavaScript for any runtime, and its types. What it exports is decided by
// src/core/index.ts and `exports` in package.json.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { build } from 'vite';

process.chdir(join(import.meta.dirname, '..'));

await build({
  configFile: false,
  publicDir: false,
  logLevel: 'warn',
  build: {
    target: 'es2022',
    outDir: 'dist-lib',
    minify: false,
    lib: { entry: { index: 'src/core/index.ts', strip: 'src/core/strip/index.ts' }, formats: ['es'] },
    rolldownOptions: { external: [/^zod/, 'clipper2-ts'] },
  },
});
const tsc = join('node_modules', 'typescript', 'bin', 'tsc');
process.exit(spawnSync(process.execPath, [tsc, '--project', 'tsconfig.lib.json'], { stdio: 'inherit' }).status ?? 1);
