import { type ElasticOverRange, type Job, withStrip } from '../../core/index.ts';
import { WorkerQueue } from '../worker/WorkerQueue.ts';
import type { BenchStore } from './bench.ts';

/** Solves the elastic strip in a worker for every job that the bench shows. Returns a way to stop. */
export function solveElastic(bench: BenchStore): () => void {
  const queue = new WorkerQueue<Job, ElasticOverRange>(
    () => new Worker(new URL('./elastic.worker.ts', import.meta.url), { type: 'module' }),
  );
  const ask = (): void => {
    const { design } = bench.getState();
    queue.ask(design.job).then(
      (elastic) => {
        const report = withStrip(bench.getState().report, design, elastic);
        bench.setState({ report, settled: report, elastic: { status: 'solved' } });
      },
      ({ message: why }: Error) => bench.setState({ elastic: { status: 'gaveUp', why, retry } }),
    );
  };
  const retry = (): void => {
    bench.setState({ elastic: { status: 'solving' } });
    ask();
  };
  const forget = bench.subscribe(({ design }, before) => {
    if (design !== before.design) ask();
  });
  ask();
  return () => {
    forget();
    queue.close();
  };
}
