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
