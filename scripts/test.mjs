// The test command: types, lint, type coverage and unused code side by side, unit tests, then the browser tests. The first
// step that fails ends it and is named.
import { join } from 'node:path';
import { run } from './chromium.mjs';
import { step, stepsTogether } from './steps.mjs';

process.chdir(join(import.meta.dirname, '..'));

await stepsTogether(['types', 'lint', 'typed', 'unused']);
step('unit', () => run('npm', ['run', '--silent', 'unit']));
await import('./browser.mjs');
