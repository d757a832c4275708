import * as z from 'zod/mini';
import { type ElasticOverRange, type Job, withStrip } from '../../core/index.ts';
import { accepting } from '../worker/accepting.ts';
import { WorkerQueue } from '../worker/WorkerQueue.ts';
import { askedAgain, type BenchStore, gaveUp } from './bench.ts';

const status = z.looseObject({ status: z.string() });
const stripShape = z.looseObject({
  closed: status,
  rest: z.looseObject({ newCover: status, creased: status, pressedDay: status }),
  seats: z.looseObject({ foreEdge: z.nullable(status), headTail: z.nullable(status) }),
  spare: z.looseObject({}),
  stretch: z.nullable(z.looseObject({})),
});

/** What the worker of the elastic strip may answer. */
export const isElasticOverRange = accepting<ElasticOverRange>(
  z.looseObject({ thin: stripShape, nominal: stripShape, thick: stripShape }),
);

/** Solves the elastic strip in a worker for every job that the bench shows. Returns a way to stop. */
export function solveElastic(bench: BenchStore): () => void {
  const queue = new WorkerQueue<Job, ElasticOverRange>(
    () => new Worker(new URL('./elastic.worker.ts', import.meta.url), { type: 'module' }),
    isElasticOverRange,
  );
  const ask = (): void => {
    const { design } = bench.getState();
    queue.ask(design.job).then(
      (elastic) => {
        const report = withStrip(bench.getState().report, design, elastic);
        bench.setState({ report, settled: report, elastic: { status: 'solved' } });
      },
      ({ message }: Error) => bench.setState(gaveUp(message, retry)),
    );
  };
  const retry = (): void => {
    bench.setState(askedAgain);
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
