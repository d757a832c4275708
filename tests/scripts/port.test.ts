import { once } from 'node:events';
import { createServer } from 'node:net';
import { afterEach, expect, test, vi } from 'vitest';
import { defined } from '../defined.ts';

afterEach(() => {
  vi.unstubAllEnvs();
  vi.resetModules();
});

/** The port on which the browser tests would be served. */
async function chosenPort(named: string | undefined): Promise<number> {
  vi.stubEnv('PORT', named);
  vi.resetModules();
  const { default: config } = await import('../../playwright.config.ts');
  return Number(new URL(defined(defined(config.use).baseURL)).port);
}

test('browser tests take a port that is free, another where the one of before is taken', async () => {
  const before = await chosenPort(undefined);
  const other = createServer().listen(before, '127.0.0.1');
  await once(other, 'listening');
  const now = await chosenPort(undefined);
  expect(now).not.toBe(before);
  const server = createServer().listen(now, '127.0.0.1');
  await once(server, 'listening');
  server.close();
  other.close();
});

test('a port that is named is taken', async () => {
  expect(await chosenPort('5123')).toBe(5123);
});
