import { defineConfig } from 'vite';
import { namedExports } from './scripts/namedExports.ts';

/** The command line as one file with nothing left to resolve, so that plain node starts it at once. */
export default defineConfig({
  publicDir: false,
  plugins: [namedExports()],
  ssr: { noExternal: true },
  build: {
    ssr: 'src/cli/main.ts',
    outDir: 'dist-cli',
    emptyOutDir: false,
    copyPublicDir: false,
    target: 'node20',
    rolldownOptions: { output: { entryFileNames: 'main.js', codeSplitting: false } },
  },
});
