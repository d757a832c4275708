import { describe, expect, test } from 'vitest';
import type { WorkerPort } from '../../../src/app/worker/AskedWorker.ts';
import { type QueueOptions, WorkerQueue } from '../../../src/app/worker/WorkerQueue.ts';
import { nth } from '../../nth.ts';

/** A queue whose worker answers when the test says so. A question's kind is its first letter. */
function queued(options?: QueueOptions) {
  const sent: string[] = [];
  const told: string[] = [];
  const ports: (WorkerPort<string> & { isEnded: boolean })[] = [];
  let last = 0;
  const start = () => {
    const port = {
      postMessage: ({ number, question }: { number: number; question: string }) => {
        last = number;
        sent.push(question);
      },
      onmessage: null,
      onmessageerror: null,
      onerror: null,
      isEnded: false,
      terminate: () => {
        port.isEnded = true;
      },
    };
    ports.push(port);
    return port;
  };
  const queue = new WorkerQueue<string, number>(start, (answer) => typeof answer === 'number', options);
  const say = (word: object) => {
    nth(ports, -1).onmessage?.({ data: { to: last, ...word } } as MessageEvent);
    return new Promise((resolve) => setTimeout(resolve));
  };
  return {
    ask: (...questions: string[]) => {
      for (const question of questions)
        queue.ask(question, question[0]).then(
          () => told.push(question),
          ({ message }) => told.push(`${question} ${message}`),
        );
    },
    answer: () => say({ answer: 1 }),
    breakDown: () => say({ failure: 'broke' }),
    close: () => queue.close(),
    ports,
    sent,
    told,
  };
}

describe('the queue of a worker', () => {
  test('answers what was asked', async () => {
    const { ask, answer, told } = queued();
    ask('a1');
    await answer();
    expect(told).toEqual(['a1']);
  });

  test('has one question at the worker, and of each kind only the newest waiting; a stale answer is dropped', async () => {
    const { ask, answer, sent, told } = queued();
    ask('a1', 'b1', 'a2', 'a3');
    expect(sent).toEqual(['a1']);
    for (let i = 0; i < 3; i++) await answer();
    expect(sent).toEqual(['a1', 'b1', 'a3']);
    expect(told).toEqual(['b1', 'a3']);
  });

  test('tells a stale answer too where it is to, and still of each kind only the newest waits', async () => {
    const { ask, answer, sent, told } = queued({ tellsStale: true });
    ask('a1', 'a2', 'a3');
    for (let i = 0; i < 2; i++) await answer();
    expect(sent).toEqual(['a1', 'a3']);
    expect(told).toEqual(['a1', 'a3']);
  });

  test('tells of a question that has no answer, and goes on with the next', async () => {
    const { ask, answer, breakDown, sent, told } = queued();
    ask('a1', 'b1');
    await breakDown();
    expect(told).toEqual(['a1 broke']);
    await answer();
    expect(sent).toEqual(['a1', 'b1']);
    expect(told).toEqual(['a1 broke', 'b1']);
  });

  test('lets the worker go when it closes, and tells nothing more', async () => {
    const { ask, answer, close, sent, told, ports } = queued();
    ask('a1', 'b1');
    close();
    await answer();
    expect(ports.map(({ isEnded }) => isEnded)).toEqual([true]);
    expect(sent).toEqual(['a1']);
    expect(told).toEqual([]);
  });

  test('starts the worker again for a question after it was closed', async () => {
    const { ask, answer, close, told, ports } = queued();
    ask('a1');
    close();
    ask('a2');
    await answer();
    expect(ports).toHaveLength(2);
    expect(told).toEqual(['a2']);
  });
});
