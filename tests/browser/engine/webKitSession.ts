import { expect } from '@playwright/test';
import { freePort } from '../../../scripts/freePort.mjs';
import { Programs } from './program.ts';
import { PATHS, type WebDriverSession } from './webDriverWindow.ts';

/** WebKit as its GTK driver starts it, on a screen of its own; the driver speaks WebDriver over HTTP. */
export async function webKitSession(driver: string): Promise<WebDriverSession> {
  const programs = new Programs();
  try {
    const DISPLAY = await programs.screen();
    const port = await freePort();
    programs.start(driver, [`--port=${port}`, '--host=127.0.0.1'], { DISPLAY }).stdout?.resume();
    const ask = async (method: string, path: string, parameters: object): Promise<unknown> => {
      const body = method === 'POST' ? JSON.stringify(parameters) : undefined;
      const response = await fetch(`http://127.0.0.1:${port}${path}`, { method, body });
      const { value } = (await response.json()) as { readonly value: { readonly message?: string } };
      if (!response.ok) throw new Error(`${method} ${path}: ${value.message}`);
      return value;
    };
    await expect.poll(() => ask('GET', '/status', {}).catch(() => null)).toMatchObject({ ready: true });
    const session = await ask('POST', '/session', { capabilities: { alwaysMatch: {} } });
    const { sessionId, capabilities } = session as {
      readonly sessionId: string;
      readonly capabilities: { readonly browserVersion: string };
    };
    return {
      name: `WebKit ${capabilities.browserVersion}`,
      send: (command, parameters = {}) => {
        const [method, path] = PATHS[command];
        return ask(method, `/session/${sessionId}${path}`, parameters);
      },
      async close() {
        await ask('DELETE', `/session/${sessionId}`, {}).catch(() => {});
        await programs.end();
      },
    };
  } catch (error) {
    await programs.end();
    throw error;
  }
}
