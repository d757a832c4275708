// Runs large must-shows whole: `npm run proof -- NAME [NAME ...]`, or all of them without a name. The ordinary tests run a
// seeded sample of each (see tests/proof/proofSize.ts).
//
// The convention: NAME is a file tests/proof/NAME.test.ts (run by vitest) or tests/browser/NAME.proof.spec.ts (run in the
// browser). A name in words, as visual-truth, runs every proof whose name begins with them. What a proof prints is its output: a
// table a closing note can quote.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { run } from './chromium.mjs';

process.chdir(join(import.meta.dirname, '..'));

const UNIT = 'tests/proof';
const BROWSER = 'tests/browser';
/** @type {(folder: string, ending: string) => string[]} */
const namesIn = (folder, ending) =>
  readdirSync(folder)
    .filter((file) => file.endsWith(ending))
    .map((file) => file.slice(0, -ending.length));

const known = [...namesIn(UNIT, '.test.ts'), ...namesIn(BROWSER, '.proof.spec.ts')];
/** @type {(name: string) => string} */
const inWords = (name) => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
/** @type {(asked: string) => string[]} */
const named = (asked) => known.filter((name) => name === asked || `${inWords(name)}-`.startsWith(`${asked}-`));
const asked = process.argv.length > 2 ? process.argv.slice(2) : known;
const unknown = asked.filter((name) => named(name).length === 0);
const wanted = [...new Set(asked.flatMap(named))];
if (unknown.length > 0) {
  console.error(`No proof named ${unknown.join(', ')}; there are: ${known.join(', ') || 'none'}.`);
  process.exit(2);
}

const env = { PROOF: 'whole' };
let failed = 0;
for (const name of wanted) {
  console.log(`\nproof ${name}`);
  const unit = `${UNIT}/${name}.test.ts`;
  failed += existsSync(unit)
    ? run(
        process.execPath,
        ['node_modules/vitest/vitest.mjs', 'run', unit, '--testTimeout=7200000', '--hookTimeout=7200000'],
        env,
      )
    : run(process.execPath, ['scripts/browser.mjs', `${BROWSER}/${name}.proof.spec.ts`, '--timeout=0'], env);
}
process.exit(failed > 0 ? 1 : 0);
