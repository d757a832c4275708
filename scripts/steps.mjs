import { spawn } from 'node:child_process';

let current = '';
process.on('exit', (status) => {
  if (status !== 0) console.error(`\nFailed step: ${current}`);
});

/**
 * Does one step of a command. A step that fails ends the command with the step's exit code, and says which it was.
 * @type {(name: string, work: () => number | void) => void}
 */
export function step(name, work) {
  current = name;
  const status = work() ?? 0;
  if (status !== 0) process.exit(status);
}

/**
 * Runs scripts of package.json side by side, each one's output in one piece. Once all have ended, the first that failed ends
 * the command as a step does.
 * @type {(names: string[]) => Promise<void>}
 */
export async function stepsTogether(names) {
  const outcomes = await Promise.all(names.map(script));
  for (const [i, status] of outcomes.entries()) step(/** @type {string} */ (names[i]), () => status);
}

/** @type {(name: string) => Promise<number>} */
async function script(name) {
  const child = spawn('npm', ['run', '--silent', name], { stdio: ['ignore', 'pipe', 'pipe'] });
  /** @type {Buffer[]} */
  const output = [];
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => output.push(chunk));
  const status = await new Promise((resolve) => {
    child.on('close', (code) => resolve(code ?? 1));
    child.on('error', ({ message }) => {
      output.push(Buffer.from(`npm: ${message}\n`));
      resolve(1);
    });
  });
  process.stdout.write(Buffer.concat(output));
  return status;
}
