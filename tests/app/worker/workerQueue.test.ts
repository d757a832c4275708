import { describe, expect, test, vi } from 'vitest';
import { WorkerQueue } from '../../../src/app/worker/WorkerQueue.ts';

/** A desk whose worker answers when the test says so. A question's kind is its first letter. */
function desk() {
  const sent: string[] = [];
  const told: string[] = [];
  let answer: (value: number) => void = () => {};
  let breakDown: (why: Error) => void = () => {};
  const worker = {
    ask: (question: string) => {
      sent.push(question);
      return new Promise<number>((resolve, reject) => {
        [answer, breakDown] = [resolve, reject];
      });
    },
    close: vi.fn(),
  };
  const made = new WorkerQueue<string, number>(
    worker,
    (question) => question[0]!,
    (question) => told.push(question),
    (question, { message }) => told.push(`${question} ${message}`),
  );
  const settled = () => new Promise((resolve) => setTimeout(resolve));
  return {
    ask: (...questions: string[]) => {
      for (const question of questions) made.ask(question);
    },
    answer: () => {
      answer(1);
      return settled();
    },
    breakDown: () => {
      breakDown(new Error('broke'));
      return settled();
    },
    close: () => made.close(),
    worker,
    sent,
    told,
  };
}

describe('the desk of a worker', () => {
  test('answers what was asked', async () => {
    const { ask, answer, told } = desk();
    ask('a1');
    await answer();
    expect(told).toEqual(['a1']);
  });

  test('has one question at the worker, and of each kind only the newest waiting; a stale answer is dropped', async () => {
    const { ask, answer, sent, told } = desk();
    ask('a1', 'b1', 'a2', 'a3');
    expect(sent).toEqual(['a1']);
    for (let i = 0; i < 3; i++) await answer();
    expect(sent).toEqual(['a1', 'b1', 'a3']);
    expect(told).toEqual(['b1', 'a3']);
  });

  test('tells of a question that has no answer, and goes on with the next', async () => {
    const { ask, answer, breakDown, sent, told } = desk();
    ask('a1', 'b1');
    await breakDown();
    expect(told).toEqual(['a1 broke']);
    await answer();
    expect(sent).toEqual(['a1', 'b1']);
    expect(told).toEqual(['a1 broke', 'b1']);
  });

  test('lets the worker go when it closes, and tells nothing more', async () => {
    const { ask, answer, close, sent, told, worker } = desk();
    ask('a1', 'b1');
    close();
    await answer();
    expect(worker.close).toHaveBeenCalledOnce();
    expect(sent).toEqual(['a1']);
    expect(told).toEqual([]);
  });
});
