// Builds the app when it is missing or out of date, then serves it on this machine only. PORT chooses the first port tried.
import { join } from 'node:path';
import { preview } from 'vite';
import { freshBuild } from './freshBuild.mjs';

const HOST = '127.0.0.1';
const DEFAULT_PORT = 4173;
const PORTS_TRIED = 20;

process.chdir(join(import.meta.dirname, '..'));

const firstPort = Number(process.env.PORT || DEFAULT_PORT);
if (!Number.isInteger(firstPort) || firstPort < 1 || firstPort > 65535 - PORTS_TRIED) {
  console.error(`PORT: got “${process.env.PORT}”; allowed: a whole number from 1 to ${65535 - PORTS_TRIED}.`);
  process.exit(2);
}

await freshBuild();

const server = await serve();
console.log(`\nCoverwright is at ${server.resolvedUrls.local[0]}\nPress Ctrl-C to stop.`);

for (const signal of ['SIGINT', 'SIGTERM']) {
  process.on(signal, () => {
    // Open pages hold their connections; without this the close would wait for them.
    server.httpServer.closeAllConnections?.();
    process.exit(0);
  });
}

async function serve() {
  for (let port = firstPort; port < firstPort + PORTS_TRIED; port++) {
    try {
      return await preview({ logLevel: 'error', preview: { host: HOST, port, strictPort: true, open: false } });
    } catch (error) {
      if (!/already in use|EADDRINUSE/.test(error.message)) throw error;
      console.log(`Port ${port} is taken by another program; trying ${port + 1}.`);
    }
  }
  console.error(
    `Ports ${firstPort} to ${firstPort + PORTS_TRIED - 1} are all taken. Choose another: PORT=5000 npm start`,
  );
  process.exit(1);
}
