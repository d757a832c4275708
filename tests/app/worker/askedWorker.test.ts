import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { AskedWorker, PATIENCE, WorkerGaveUp, type WorkerPort } from '../../../src/app/worker/AskedWorker.ts';
import { nth } from '../../nth.ts';

type Port = WorkerPort<string>;

const isNumber = (answer: unknown): answer is number => typeof answer === 'number' && !Number.isNaN(answer);

/** Workers as they are started one after another, and what is said to and by each. */
function workers(restarts?: number) {
  const started: (Port & { readonly got: string[]; isEnded: boolean })[] = [];
  let last = 0;
  const start = (): Port => {
    const port = {
      got: [] as string[],
      isEnded: false,
      postMessage: ({ number, question }: { number: number; question: string }) => {
        last = number;
        port.got.push(question);
      },
      onmessage: null,
      onmessageerror: null,
      onerror: null,
      terminate: () => {
        port.isEnded = true;
      },
    };
    started.push(port);
    return port;
  };
  const sayRaw = (data: unknown, at = -1) => nth(started, at).onmessage?.({ data } as MessageEvent);
  const say = (word: object, to = last) => sayRaw({ to, ...word });
  const fail = () => nth(started, -1).onerror?.({} as ErrorEvent);
  return {
    started,
    say,
    sayRaw,
    fail,
    last: () => last,
    worker: new AskedWorker<string, number>(start, isNumber, restarts),
  };
}

const seconds = (count: number) => vi.advanceTimersByTimeAsync(count * 1000);

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('a worker that is asked', () => {
  test('gives its answers, one after the other, and is started once', async () => {
    const { started, say, worker } = workers();
    for (const answer of [1, 2]) {
      const asked = worker.ask(`${answer}?`);
      say({ heard: true });
      await seconds(PATIENCE.answer - 1);
      say({ answer });
      expect(await asked).toBe(answer);
    }
    expect(started.map(({ got }) => got)).toEqual([['1?', '2?']]);
    await seconds(1000);
    expect(started).toHaveLength(1);
  });

  test('tells what it found wrong with a question, and goes on with the next', async () => {
    const { started, say, worker } = workers();
    const asked = worker.ask('bad');
    say({ heard: true });
    say({ failure: 'no such field' });
    await expect(asked).rejects.toThrow('no such field');
    const next = worker.ask('good');
    say({ answer: 7 });
    expect(await next).toBe(7);
    expect(started).toHaveLength(1);
  });

  test('and is mute is started once more, and then given up', async () => {
    const { started, worker } = workers();
    const asked = worker.ask('q');
    const givenUp = expect(asked).rejects.toThrow(WorkerGaveUp);
    await seconds(PATIENCE.start);
    expect(started.map(({ got, isEnded }) => [got, isEnded])).toEqual([
      [['q'], true],
      [['q'], false],
    ]);
    await seconds(PATIENCE.start);
    await givenUp;
    await expect(asked).rejects.toThrow('did not start or did not answer');
    expect(started.every(({ isEnded }) => isEnded)).toBe(true);
  });

  test('and is mute at first answers from its second start', async () => {
    const { say, worker } = workers();
    const asked = worker.ask('q');
    await seconds(PATIENCE.start);
    say({ heard: true });
    say({ answer: 3 });
    expect(await asked).toBe(3);
  });

  test('and cannot be fetched is given up at once after the second try', async () => {
    const { started, fail, worker } = workers();
    const asked = worker.ask('q');
    fail();
    fail();
    await expect(asked).rejects.toThrow(WorkerGaveUp);
    expect(started).toHaveLength(2);
  });

  test('and is forbidden by the browser is given up, not thrown', async () => {
    const start = vi.fn(() => {
      throw new DOMException('no', 'SecurityError');
    });
    await expect(new AskedWorker<string, number>(start, isNumber).ask('q')).rejects.toThrow(WorkerGaveUp);
    expect(start).toHaveBeenCalledTimes(2);
  });

  test('and dies at its work, or never ends it, is not set to the same work again', async () => {
    for (const end of ['dies', 'never ends']) {
      const { started, say, fail, worker } = workers();
      const asked = worker.ask('q');
      const givenUp = expect(asked).rejects.toThrow(WorkerGaveUp);
      say({ heard: true });
      if (end === 'dies') fail();
      else await seconds(PATIENCE.answer);
      await givenUp;
      expect(started).toHaveLength(1);
      expect(nth(started, 0).isEnded).toBe(true);
      // The next question has a fresh worker.
      const next = worker.ask('next');
      say({ answer: 5 });
      expect(await next).toBe(5);
    }
  });

  test('once given up is tried once for each further question, until it answers again', async () => {
    const { started, say, fail, worker } = workers();
    const first = worker.ask('1');
    fail();
    fail();
    await expect(first).rejects.toThrow(WorkerGaveUp);
    const second = worker.ask('2');
    fail();
    await expect(second).rejects.toThrow(WorkerGaveUp);
    expect(started).toHaveLength(3);
    const third = worker.ask('3');
    say({ answer: 3 });
    await third;
    const fourth = worker.ask('4');
    fail();
    say({ answer: 4 });
    expect(await fourth).toBe(4);
  });

  test('is not late because the page was asleep or busy meanwhile', async () => {
    const { started, say, worker } = workers();
    const asked = worker.ask('q');
    // A page that wakes runs its clock once for all the time that it slept.
    vi.setSystemTime(Date.now() + 3_600_000);
    await seconds(1);
    say({ answer: 1 });
    expect(await asked).toBe(1);
    expect(started).toHaveLength(1);
  });

  test('may do without a second start', async () => {
    const { started, fail, worker } = workers(0);
    const asked = worker.ask('q');
    fail();
    await expect(asked).rejects.toThrow(WorkerGaveUp);
    expect(started).toHaveLength(1);
  });

  test('says nothing more once it is closed', async () => {
    const { started, worker } = workers();
    const settled = vi.fn();
    void worker.ask('q').then(settled, settled);
    worker.close();
    await seconds(1000);
    expect(settled).not.toHaveBeenCalled();
    expect(started.map(({ isEnded }) => isEnded)).toEqual([true]);
  });

  test.each([
    ['no answer at all', { nonsense: true }],
    ['an answer of another shape', { answer: 'seven' }],
    ['an answer that is NaN', { answer: Number.NaN }],
    ['a failure without words', { failure: 7 }],
  ])('and says %s is started once more, and then given up in plain words', async (_, word) => {
    const { started, say, worker } = workers();
    const asked = worker.ask('q');
    const givenUp = expect(asked).rejects.toThrow('answered with something that cannot be right');
    say({ heard: true });
    say(word);
    expect(started.map(({ got, isEnded }) => [got, isEnded])).toEqual([
      [['q'], true],
      [['q'], false],
    ]);
    say(word);
    await givenUp;
    await expect(asked).rejects.toThrow(WorkerGaveUp);
    expect(started.every(({ isEnded }) => isEnded)).toBe(true);
    const next = worker.ask('next');
    say({ answer: 5 });
    expect(await next).toBe(5);
  });

  test.each([
    undefined,
    null,
    'done',
    7,
    [],
    { answer: 1 },
    { to: 'q', answer: 1 },
    { to: 99, answer: 1 },
    { to: 0.5, answer: 1 },
  ])('and says %j, which is about no question, is started once more', async (data) => {
    const { started, say, sayRaw, worker } = workers();
    const asked = worker.ask('q');
    sayRaw(data);
    expect(started).toHaveLength(2);
    say({ answer: 4 });
    expect(await asked).toBe(4);
  });

  test('and says what cannot be read is started once more', async () => {
    const { started, say, worker } = workers();
    const asked = worker.ask('q');
    nth(started, -1).onmessageerror?.({} as MessageEvent);
    say({ answer: 4 });
    expect(await asked).toBe(4);
    expect(started).toHaveLength(2);
  });

  test('is not heard on an earlier question: neither late nor twice is its answer that of the next', async () => {
    const { started, say, last, worker } = workers();
    const first = worker.ask('1');
    const before = last();
    say({ answer: 1 });
    say({ answer: 100 });
    expect(await first).toBe(1);
    const second = worker.ask('2');
    say({ answer: 200 }, before);
    say({ failure: 'late' }, before);
    say({ heard: true });
    say({ answer: 2 });
    expect(await second).toBe(2);
    expect(started).toHaveLength(1);
  });

  test('is not heard any more once another is started in its place', async () => {
    const { started, say, last, worker } = workers();
    const asked = worker.ask('q');
    const before = last();
    const { onmessage } = nth(started, 0);
    await seconds(PATIENCE.start);
    onmessage?.({ data: { to: before, answer: 100 } } as MessageEvent);
    say({ answer: 3 });
    expect(await asked).toBe(3);
  });

  test('and dies while nothing is asked of it is started again by the next question, with its second try', async () => {
    const { started, say, fail, worker } = workers();
    const first = worker.ask('1');
    say({ answer: 1 });
    await first;
    fail();
    const second = worker.ask('2');
    fail();
    say({ answer: 2 });
    expect(await second).toBe(2);
    expect(started).toHaveLength(3);
  });
});
