import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { batchWork, type Task } from './catalogue/batchWork.ts';
import { runCatalogue } from './catalogue/runCatalogue.ts';
import { runCommand } from './runCommand.ts';

/** One script for the command and for its threads: it is bundled into one file. */
if (isMainThread) await runCommand((words) => runCatalogue(words, new URL(import.meta.url)));
else serve();

function serve(): void {
  const work = batchWork(workerData as Task);
  parentPort?.on('message', (rows) => {
    const result = work(rows);
    parentPort?.postMessage(result, [result.output.buffer]);
  });
}
