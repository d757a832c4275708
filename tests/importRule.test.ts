import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { findCycle, importsOf, resolveImport, wrongImport } from './importRule.ts';

const root = join(import.meta.dirname, '..');
const src = join(root, 'src');

const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.d.ts'))
  .sort();
const imports = new Map(files.map((file) => [file, importsOf(readFileSync(join(src, file), 'utf8'))]));
const edges = [...imports].flatMap(([file, specifiers]) => specifiers.map((specifier) => ({ file, specifier })));
const relative = edges.filter(({ specifier }) => specifier.startsWith('.'));

describe('the import rule', () => {
  test('every import under src goes to its own layer or a lower one, and only app knows React', () => {
    expect(edges.length).toBeGreaterThan(0);
    const wrong = edges.flatMap(({ file, specifier }) => {
      const why = wrongImport(file, specifier);
      return why === null ? [] : [`src/${file} imports ${specifier}: ${why}`];
    });
    expect(wrong).toEqual([]);
  });

  test('every relative import names a file that exists', () => {
    const missing = relative.filter(({ file, specifier }) => !existsSync(join(src, resolveImport(file, specifier))));
    expect(missing).toEqual([]);
  });

  test('no file imports itself by way of others', () => {
    const graph = new Map(
      files.map((file) => [
        file,
        relative.filter((edge) => edge.file === file).map(({ specifier }) => resolveImport(file, specifier)),
      ]),
    );
    expect(findCycle(graph)?.join(' -> ') ?? null).toBeNull();
  });

  test('figures are printed by the printer alone', () => {
    const printing = /import \{[^}]*\bformat(Length|LeatherWeight|Fraction)\b/;
    const wrong = files.filter(
      (file) =>
        !file.startsWith('core/units/') &&
        // The marks of an axis are no figures of a job: they divide it as a ruler is divided.
        file !== 'app/explore/axisTicks.ts' &&
        printing.test(readFileSync(join(src, file), 'utf8')),
    );
    expect(wrong).toEqual([]);
  });

  test('there is no folder for what has no name', () => {
    expect(files.filter((file) => /(^|\/)(utils?|helpers?|common|misc|shared)[/.]/.test(file))).toEqual([]);
  });

  test('core compiles without the types of a browser or of Node', () => {
    const core = files.filter((file) => file.startsWith('core/')).map((file) => join('src', file));
    const options =
      '--ignoreConfig --noEmit --strict --noUncheckedIndexedAccess --skipLibCheck --target es2022 --lib es2023 --module esnext ' +
      '--moduleResolution bundler --allowImportingTsExtensions --resolveJsonModule --verbatimModuleSyntax';
    const tsc = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
    const { stdout, stderr } = spawnSync(process.execPath, [tsc, ...options.split(' '), ...core], {
      cwd: root,
      encoding: 'utf8',
    });
    expect(stdout + stderr).toBe('');
  });
});

describe('what the rule refuses', () => {
  test.each([
    ['core/units/mm.ts', '../math/vec2.ts', 'side by side'],
    ['core/leather/bend.ts', '../book/bookModel.ts', 'side by side'],
    ['core/job/parseJob.ts', '../book/bookModel.ts', 'comes before'],
    ['core/fold/elastic/solve.ts', '../../report/checks.ts', 'comes before'],
    ['core/strip/solveStrip.ts', '../math/vec2.ts', 'side by side'],
    ['core/report/checks.ts', '../fitReport.ts', 'comes before'],
    ['core/fitReport.ts', './index.ts', 'comes before'],
    ['core/fitReport.ts', '../output/svg.ts', 'comes before'],
    ['output/svg.ts', '../app/main.tsx', 'comes before'],
    ['output/svg.ts', '../core/pattern/drawing.ts', 'one door'],
    ['app/strip/Tuner.tsx', '../../core/fold/segments.ts', 'one door'],
    ['cli/fit.ts', '../core/fitReport.ts', 'one door'],
    ['app/state/bench.ts', '../stage/Stage.tsx', 'comes before'],
    ['app/strip/Tuner.tsx', '../panel/Checks.tsx', 'side by side'],
    ['app/strip/Tuner.tsx', '../App.tsx', 'comes before'],
    ['app/utils/x.ts', '../state/bench.ts', 'no layer'],
    ['cli/main.ts', '../app/main.tsx', 'no part of it'],
    ['core/units/mm.ts', './radians', 'extension'],
    ['core/units/mm.ts', '../../../tests/importRule.ts', 'outside src'],
    ['core/utils/x.ts', '../units/mm.ts', 'no layer'],
    ['app/main.tsx', '../stray.ts', 'no layer'],
    ['core/fitReport.ts', 'react', 'plain TypeScript'],
    ['core/fitReport.ts', 'three', 'plain TypeScript'],
    ['core/fitReport.ts', 'node:fs', 'plain TypeScript'],
    ['core/fitReport.ts', 'fs', 'plain TypeScript'],
    ['output/svg.ts', 'node:fs', 'neither React nor Node'],
    ['output/glb.ts', '@react-three/fiber', 'neither React nor Node'],
    ['cli/main.ts', 'react-dom', 'draws nothing'],
    ['app/main.tsx', 'node:fs', 'browser'],
  ])('%s importing %s', (file, specifier, why) => expect(wrongImport(file, specifier)).toContain(why));

  test.each([
    ['core/fitReport.ts', './units/mm.ts'],
    ['core/fold/elastic/solve.ts', '../../math/vec2.ts'],
    ['core/job/examples.ts', '../../../public/jobs/tide-ledger.json'],
    ['core/job/jobSchema.ts', 'zod/mini'],
    ['cli/main.ts', 'node:fs'],
    ['cli/main.ts', '../core/index.ts'],
    ['app/main.tsx', 'react-dom/client'],
    ['app/main.tsx', '../output/svg.ts'],
    ['app/main.tsx', './customer/CustomerView.tsx'],
    ['app/making/Making.tsx', '../styles/making.css'],
  ])('but not %s importing %s', (file, specifier) => expect(wrongImport(file, specifier)).toBeNull());

  test('every form of import is seen, and words in comments and strings are not', () => {
    const source = `
      import { a,
        type B } from './one.ts';
      import * as c from "./two.ts";
      import type { D } from './three.ts';
      import './four.css';
      export * from './five.ts';
      export * as six from './six.ts';
      export { g } from './seven.ts';
      const late = await import('./eight.ts');
      new Worker(new URL('./nine.ts', import.meta.url), { type: 'module' });
      import text from './ten.ts?raw';
      // import { no } from './no.ts';
      /**
       * import no from './no.ts'
       */
      const words = "import { no } from './no.ts'";
    `;
    const names = [
      'one.ts',
      'two.ts',
      'three.ts',
      'four.css',
      'five.ts',
      'six.ts',
      'seven.ts',
      'eight.ts',
      'nine.ts',
      'ten.ts',
    ];
    expect(importsOf(source).sort()).toEqual(names.map((name) => `./${name}`).sort());
  });

  test('a cycle is found and named', () => {
    const graph = new Map([
      ['a', ['b']],
      ['b', ['c', 'd']],
      ['c', []],
      ['d', ['b']],
    ]);
    expect(findCycle(graph)).toEqual(['b', 'd', 'b']);
    graph.set('d', ['c']);
    expect(findCycle(graph)).toBeNull();
  });
});
