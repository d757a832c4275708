import process from 'node:process';
import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { jobIssue } from '../core/index.ts';
import { BadInput } from './badInput.ts';
import { batchWork, type Task } from './catalogue/batchWork.ts';
import { catalogueCommand } from './catalogue/catalogueCommand.ts';
import type { Row } from './catalogue/row.ts';
import { fitCommand } from './fitCommand.ts';
import { modelCommand } from './modelCommand.ts';
import { runCommand } from './runCommand.ts';
import { sheetsCommand } from './sheets/sheetsCommand.ts';
import { FileSink, Terminal } from './terminal.ts';
import { validateCommand } from './validateCommand.ts';

// The script of every command, as `node main.js NAME WORDS`, and of the threads that the catalogue starts.
if (isMainThread) await main();
else serve();

async function main(): Promise<never> {
  const commands = new Map([
    ['fit', fitCommand],
    ['validate', validateCommand],
    ['catalogue', catalogueCommand(new URL(import.meta.url))],
    ['model', modelCommand],
    ['sheets', sheetsCommand],
  ]);
  const [, , name = '', ...words] = process.argv;
  const unknown = async (): Promise<never> => {
    const allowed = [...commands.keys()].join(', ');
    throw new BadInput([jobIssue('choice', '(command)', name || 'nothing', allowed, 'name one of them')]);
  };
  const terminal = new Terminal(process.stdin, new FileSink(1), new FileSink(2));
  const code = await runCommand(commands.get(name) ?? unknown, words, terminal);
  // All output has been written; an input that never ends would keep the process alive.
  process.exit(code);
}

function serve(): void {
  const work = batchWork(workerData as Task);
  parentPort?.on('message', (rows: readonly Row[]) => {
    const result = work(rows);
    parentPort?.postMessage(result, [result.output.buffer]);
  });
}
