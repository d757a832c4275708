import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';

const lastLine = (text: string) => text.trimEnd().split('\n').at(-1);

test('a step that fails ends the command with its own exit code, and the last line says which step it was', () => {
  const script = `
    import { step } from './scripts/steps.mjs';
    step('first', () => 0);
    step('second', () => 3);
    step('third', () => console.log('third is reached'));
  `;
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', script], {
    encoding: 'utf8',
  });
  expect(status).toBe(3);
  expect(lastLine(stderr)).toBe('Failed step: second');
  expect(stdout).toBe('');
});

test('of steps side by side the first that failed is named, and what comes after them is not reached', () => {
  const script = `
    import { stepsTogether } from './scripts/steps.mjs';
    await stepsTogether(['no-such-script', 'nor-this']);
    console.log('the next step is reached');
  `;
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', script], {
    encoding: 'utf8',
  });
  expect(status).toBe(1);
  expect(lastLine(stderr)).toBe('Failed step: no-such-script');
  expect(stdout).toBe('');
});

test('browser tests without a browser that starts say which step failed', () => {
  const { status, stderr } = spawnSync(process.execPath, ['scripts/browser.mjs'], {
    encoding: 'utf8',
    env: { ...process.env, CHROMIUM_PATH: '/no/such/browser' },
  });
  expect(status).toBe(2);
  expect(lastLine(stderr)).toBe('Failed step: find a browser');
});
