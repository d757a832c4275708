// The test command: types, lint, type coverage, unused code, unit tests, then the browser tests. The first step that fails
// ends it and is named.
import { join } from 'node:path';
import { run } from './chromium.mjs';
import { step } from './steps.mjs';

process.chdir(join(import.meta.dirname, '..'));

step('types', () => run('npm', ['run', '--silent', 'types']));
step('lint', () => run('npm', ['run', '--silent', 'lint']));
step('typed', () => run('npm', ['run', '--silent', 'typed']));
step('unused', () => run('npm', ['run', '--silent', 'unused']));
step('unit', () => run('npm', ['run', '--silent', 'unit']));
await import('./browser.mjs');
