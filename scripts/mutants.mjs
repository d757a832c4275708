// Finds mutants that no test kills: `npm run mutants -- NAME|FILE [...]`, or all modules without a name.
//
// A module is a file tests/mutants/NAME.json:
//   floor       least score, percent, that the module must reach
//   files       what is mutated
//   tests       the module's own tests, the quick ones where there are many
//   testsOf     of a file that has quick tests of its own, those alone
//   equivalent  mutants that no test can kill, each with its file, line of code, from, to and reason: at most 5 % of the
//               module; one that is no mutant of its file fails the run
// The score is killed mutants (or such that never end) by all that were tried. Texts and what runs once while a file is
// loaded are not mutated. The result of every file stays in test-results/mutants; `--kept` takes those that are there and
// younger than the module's files and tests.
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Stryker } from '@stryker-mutator/core';

// Tests that share modules share what a mutant did to them (vite.config.ts).
process.env.OWN_MODULES = 'all';
process.chdir(join(import.meta.dirname, '..'));

const MODULES = 'tests/mutants';
const RESULTS = 'test-results/mutants';
const MOST_EQUIVALENT = 0.05;
const MODULE_KEYS = ['floor', 'files', 'tests', 'testsOf', 'equivalent'];
const PLACE_KEYS = ['file', 'code', 'from', 'to'];
const EQUIVALENT_KEYS = [...PLACE_KEYS, 'reason'];

/**
 * @typedef {{ file: string, code: string, from: string, to: string }} Place
 * @typedef {Place & { line: number, status: string }} Mutant
 * @typedef {{
 *   name: string, floor: number, files: string[], tests: string[],
 *   testsOf?: Record<string, string[]>, equivalent?: (Place & { reason: string })[],
 * }} Module
 */

/** @type {Module[]} */
const modules = readdirSync(MODULES)
  .filter((file) => file.endsWith('.json'))
  .map((file) => ({ name: file.slice(0, -'.json'.length), ...JSON.parse(readFileSync(join(MODULES, file), 'utf8')) }));
const isKeptWanted = process.argv.includes('--kept');
const wanted = process.argv.slice(2).filter((argument) => argument !== '--kept');
/** @type {(module: Module, file: string) => boolean} */
const isWanted = (module, file) => wanted.length === 0 || wanted.includes(module.name) || wanted.includes(file);

const unknown = wanted.filter((each) => !modules.some(({ name, files }) => name === each || files.includes(each)));
if (unknown.length > 0) {
  console.error(`No module or file ${unknown.join(', ')}; modules: ${modules.map(({ name }) => name).join(', ')}.`);
  process.exit(2);
}

/**
 * Keys of a module that have no meaning, and keys that one of its equivalents lacks or should not have.
 * @type {(module: Module) => string[]}
 */
const faultsIn = ({ name, ...module }) => [
  ...Object.keys(module)
    .filter((key) => !MODULE_KEYS.includes(key))
    .map((key) => `${name}: unknown key "${key}"`),
  ...(module.equivalent ?? [])
    .filter((each) => Object.keys(each).sort().join() !== [...EQUIVALENT_KEYS].sort().join())
    .map((each) => `${name}: an equivalent has the keys ${Object.keys(each)}, not ${EQUIVALENT_KEYS}`),
];
const faults = modules.flatMap(faultsIn);
if (faults.length > 0) {
  console.error(faults.join('\n'));
  process.exit(2);
}

/** @type {(files: string[]) => number} */
const changedAt = (files) => Math.max(...files.map((file) => statSync(file).mtimeMs));

/**
 * The mutants of one file, each with its place, what it replaces by what, and whether a test killed it.
 * @type {(file: string, module: Module) => Promise<Mutant[]>}
 */
async function mutantsOf(file, { files, tests: common, testsOf = {} }) {
  const tests = testsOf[file] ?? common;
  const kept = join(RESULTS, `${file.replaceAll('/', '.')}.json`);
  if (isKeptWanted && existsSync(kept) && statSync(kept).mtimeMs > changedAt([...files, ...tests]))
    return JSON.parse(readFileSync(kept, 'utf8'));
  const results = await new Stryker({
    mutate: [file],
    testFiles: tests,
    testRunner: 'vitest',
    mutator: { excludedMutations: ['StringLiteral'] },
    ignoreStatic: true,
    concurrency: Math.max(1, availableParallelism() - 1),
    // Long, so that a slow test on a busy machine is not taken for a loop without end.
    timeoutMS: 10_000,
    // One directory a run: the first to end deletes its own.
    tempDirName: `test-results/stryker-${process.pid}`,
    // Stryker reads the project's file by an interface that this TypeScript no longer has; vitest needs none.
    tsconfigFile: 'none',
    ignorePatterns: ['test-results', 'dist', 'dist-cli', 'bench'],
    reporters: ['json'],
    jsonReporter: { fileName: 'test-results/stryker.json' },
    logLevel: 'warn',
  }).runMutationTest();
  const lines = readFileSync(file, 'utf8').split('\n');
  const mutants = results
    .filter(({ status }) => ['Killed', 'Timeout', 'Survived', 'NoCoverage'].includes(status))
    .map(({ status, location: { start, end }, replacement }) => ({
      file,
      line: start.line,
      code: lines[start.line - 1].trim(),
      from: lines[start.line - 1].slice(start.column - 1, end.line === start.line ? end.column - 1 : undefined),
      to: replacement.split('\n')[0],
      status,
    }));
  mkdirSync(RESULTS, { recursive: true });
  writeFileSync(kept, JSON.stringify(mutants, null, 1));
  return mutants;
}

/** @type {(mutant: Mutant) => boolean} */
const isKilled = ({ status }) => status === 'Killed' || status === 'Timeout';
/** @type {(part: number, whole: number) => number} */
const percent = (part, whole) => (whole === 0 ? 100 : (100 * part) / whole);

let failed = false;
for (const module of modules) {
  const files = module.files.filter((file) => isWanted(module, file));
  if (files.length === 0) continue;
  /** @type {Mutant[]} */
  const all = [];
  for (const file of files) {
    const mutants = await mutantsOf(file, module);
    all.push(...mutants);
    console.log(
      `${percent(mutants.filter(isKilled).length, mutants.length).toFixed(1)} % of ${mutants.length}  ${file}`,
    );
  }
  const named = module.equivalent ?? [];
  /** @type {(each: Place, mutant: Mutant) => boolean} */
  const isSame = (each, mutant) => PLACE_KEYS.every((key) => each[key] === mutant[key]);
  /** @type {(mutant: Mutant) => boolean} */
  const isEquivalent = (mutant) => named.some((each) => isSame(each, mutant));
  const survivors = all.filter((mutant) => !isKilled(mutant));
  for (const { file, line, from, to, status } of survivors.filter((mutant) => !isEquivalent(mutant)))
    console.log(`  ${status === 'NoCoverage' ? 'not reached' : 'survived'}  ${file}:${line}  ${from}  ->  ${to}`);
  const equivalent = survivors.filter(isEquivalent);
  const outdated = named.filter(
    (each) =>
      (files.includes(each.file) || !module.files.includes(each.file)) && !all.some((mutant) => isSame(each, mutant)),
  );
  for (const { file, from, to } of outdated) console.log(`  no such mutant  ${file}  ${from}  ->  ${to}`);
  const score = percent(all.length - survivors.length, all.length);
  const isTooManyEquivalent = equivalent.length > MOST_EQUIVALENT * all.length;
  const isLow = score < module.floor;
  console.log(
    `${module.name}: ${score.toFixed(1)} % of ${all.length} mutants killed (floor ${module.floor} %), ${equivalent.length} named equivalent` +
      `${isTooManyEquivalent ? ': more than 5 %' : ''}${outdated.length > 0 ? ': SOME ARE NO MUTANTS' : ''}` +
      `${isLow ? ': BELOW THE FLOOR' : ''}`,
  );
  failed ||= isLow || isTooManyEquivalent || outdated.length > 0;
}
process.exit(failed ? 1 : 0);
