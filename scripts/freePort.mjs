import { once } from 'node:events';
import { createServer } from 'node:net';

/** A port of this machine at which no program listens; the operating system names it. */
export async function freePort() {
  const server = createServer();
  await once(server.listen(0, '127.0.0.1'), 'listening');
  const { port } = server.address();
  await once(server.close(), 'close');
  return port;
}
