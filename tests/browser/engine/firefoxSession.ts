import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from '@playwright/test';
import { defined } from '../../defined.ts';
import { Programs } from './program.ts';
import type { WebDriverSession } from './webDriverWindow.ts';

/** Nothing is asked of the network: no updates, no lists, no portal. */
const PREFERENCES = {
  'marionette.port': 0,
  'app.normandy.enabled': false,
  'app.update.disabledForTesting': true,
  'browser.safebrowsing.downloads.remote.enabled': false,
  'browser.safebrowsing.malware.enabled': false,
  'browser.safebrowsing.phishing.enabled': false,
  'browser.shell.checkDefaultBrowser': false,
  'datareporting.policy.dataSubmissionEnabled': false,
  'extensions.systemAddon.update.enabled': false,
  'network.captive-portal-service.enabled': false,
  'network.connectivity-service.enabled': false,
  'services.settings.server': 'data:,',
  'toolkit.telemetry.enabled': false,
} as const;

/**
 * Firefox speaks WebDriver's commands itself, over a socket, as Marionette (Firefox Source Docs, "Marionette protocol"): each
 * message is its length in bytes, a colon, and JSON: [0, number, command, parameters], answered by [1, number, error, result].
 */
export async function firefoxSession(program: string): Promise<WebDriverSession> {
  const profile = mkdtempSync(join(tmpdir(), 'firefox-'));
  const programs = new Programs();
  const end = async (): Promise<void> => {
    await programs.end();
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    const lines = Object.entries(PREFERENCES).map(([name, value]) => `user_pref("${name}", ${JSON.stringify(value)});`);
    writeFileSync(join(profile, 'user.js'), lines.join('\n'));
    // On a screen of its own: without one it draws no WebGL.
    const DISPLAY = await programs.screen();
    const args = ['--marionette', '--no-remote', '--profile', profile, 'about:blank'];
    programs.start(program, args, { DISPLAY, MOZ_CRASHREPORTER_DISABLE: '1' }).stdout?.resume();
    const portFile = join(profile, 'MarionetteActivePort');
    await expect.poll(() => existsSync(portFile) && readFileSync(portFile, 'utf8') !== '').toBe(true);
    const { ask, hangUp } = await marionette(Number(readFileSync(portFile, 'utf8')));
    const session = await ask('WebDriver:NewSession', {});
    const { capabilities } = session as { readonly capabilities: { readonly browserVersion: string } };
    return {
      name: `Firefox ${capabilities.browserVersion}`,
      async send(command, parameters = {}) {
        const result = await ask(`WebDriver:${command}`, parameters);
        // What is no object comes wrapped.
        return result !== null && typeof result === 'object' && 'value' in result ? result.value : result;
      },
      async close() {
        hangUp();
        await end();
      },
    };
  } catch (error) {
    await end();
    throw error;
  }
}

async function marionette(port: number) {
  const socket = connect(port, '127.0.0.1');
  const waiting = new Map<number, (error: object | null, result: unknown) => void>();
  let heard = Buffer.alloc(0);
  const hear = (message: unknown): void => {
    // Before anything is asked it says who it is.
    if (!Array.isArray(message)) return;
    const [, id, error, result] = message;
    waiting.get(id)?.(error, result);
    waiting.delete(id);
  };
  socket.on('data', (chunk) => {
    heard = Buffer.concat([heard, chunk]);
    for (;;) {
      const start = heard.indexOf(':') + 1;
      const end = start + Number(heard.subarray(0, Math.max(start - 1, 0)));
      if (start === 0 || heard.length < end) return;
      hear(JSON.parse(heard.subarray(start, end).toString()));
      heard = heard.subarray(end);
    }
  });
  socket.on('close', () => {
    for (const answer of waiting.values()) answer({ message: 'Firefox has ended.' }, null);
  });
  socket.on('error', () => {});
  await once(socket, 'connect');
  let count = 0;
  return {
    hangUp: () => socket.destroy(),
    ask: (command: string, parameters: object): Promise<unknown> =>
      new Promise((resolve, reject) => {
        const id = ++count;
        waiting.set(id, (error, result) => {
          if (error === null) resolve(result);
          else reject(new Error(`${command}: ${defined((error as { message?: string }).message)}`));
        });
        const text = JSON.stringify([0, id, command, parameters]);
        socket.write(`${Buffer.byteLength(text)}:${text}`);
      }),
  };
}
