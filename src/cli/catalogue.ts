import process from 'node:process';
import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { batchWork, type Task } from './catalogue/batchWork.ts';
import { runCatalogue } from './catalogue/runCatalogue.ts';
import { EXIT } from './exitCode.ts';

/** One script for the command and for its threads: it is bundled into one file. */
if (isMainThread) command();
else serve();

function command(): void {
  // A reader that stops early, as `head` does, is not a failure of the command.
  process.stdout.on('error', () => process.exit(EXIT.fits));
  runCatalogue(process.argv.slice(2), new URL(import.meta.url)).then(
    (code) => {
      process.exitCode = code;
    },
    (error: unknown) => {
      process.stderr.write(`internal failure: ${error instanceof Error ? error.message : String(error)}\n`);
      process.exitCode = EXIT.internal;
    },
  );
}

function serve(): void {
  const work = batchWork(workerData as Task);
  parentPort?.on('message', (rows) => {
    const result = work(rows);
    parentPort?.postMessage(result, [result.output.buffer]);
  });
}
