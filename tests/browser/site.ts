import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { test as base } from '@playwright/test';
import { defined } from '../defined.ts';

export { expect } from '@playwright/test';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
};

/** The built page on a server of its own, which can be taken away. */
export interface Site {
  readonly folder: string;
  readonly address: string;
  close(): Promise<void>;
  reopen(): Promise<void>;
}

/** `under` is the folder of the server that the page is in. */
export const test = base.extend<{ under: string; site: Site }>({
  under: ['/', { option: true }],
  site: async ({ under }, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'site-'));
    cpSync(join(import.meta.dirname, '../../dist'), folder, { recursive: true });
    const server: Server = createServer((request, response) => {
      const path = new URL(defined(request.url), 'http://site').pathname;
      try {
        if (!path.startsWith(under)) throw new Error(`${path} is not under ${under}`);
        const file = path === under ? 'index.html' : path.slice(under.length);
        const body = readFileSync(join(folder, file));
        response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'text/plain' }).end(body);
      } catch {
        response.writeHead(404).end();
      }
    });
    const listen = (port: number) => new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
    await listen(0);
    const { port } = server.address() as AddressInfo;
    const close = async (): Promise<void> => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    };
    await use({ folder, address: `http://127.0.0.1:${port}${under}`, close, reopen: () => listen(port) });
    if (server.listening) await close();
    rmSync(folder, { recursive: true });
  },
});
