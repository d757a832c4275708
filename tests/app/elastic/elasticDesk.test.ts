import { describe, expect, test } from 'vitest';
import { ElasticDesk, type ElasticWorker } from '../../../src/app/elastic/ElasticDesk.ts';
import type { ElasticOverRange, ElasticQuestion } from '../../../src/app/elastic/elasticMessage.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';

const job = (name: string) => ({ name }) as Job;
const ELASTIC = {} as ElasticOverRange;

/** A desk with a worker that answers when the test says so. */
function desk() {
  const sent: ElasticQuestion[] = [];
  const told: string[] = [];
  const worker: ElasticWorker = {
    postMessage: (question) => void sent.push(question),
    onmessage: null,
    onerror: null,
    terminate: () => {},
  };
  const elasticDesk = new ElasticDesk(
    worker,
    ({ name }) => told.push(name),
    ({ name }) => told.push(`failed ${name}`),
  );
  const answer = () => worker.onmessage?.({ data: { id: sent.at(-1)!.id, elastic: ELASTIC } } as MessageEvent);
  const breakDown = () => worker.onerror?.({} as ErrorEvent);
  return {
    ask: (name: string) => elasticDesk.ask(job(name)),
    answer,
    breakDown,
    sent: () => sent.map((q) => q.job.name),
    told,
  };
}

describe('the desk of the elastic worker', () => {
  test('answers a job that was asked about', () => {
    const { ask, answer, told } = desk();
    ask('tide');
    answer();
    expect(told).toEqual(['tide']);
  });

  test('lets only the newest of the jobs that came meanwhile wait, and drops the answer that is stale', () => {
    const { ask, answer, sent, told } = desk();
    for (const name of ['a', 'b', 'c', 'd']) ask(name);
    expect(sent()).toEqual(['a']);
    answer();
    expect(told).toEqual([]);
    expect(sent()).toEqual(['a', 'd']);
    answer();
    expect(told).toEqual(['d']);
  });

  test('goes on with the job that waits when the worker breaks down, and names the one it broke on', () => {
    const { ask, answer, breakDown, sent, told } = desk();
    ask('a');
    ask('b');
    breakDown();
    expect(told).toEqual(['failed a']);
    answer();
    expect(sent()).toEqual(['a', 'b']);
    expect(told).toEqual(['failed a', 'b']);
  });
});
