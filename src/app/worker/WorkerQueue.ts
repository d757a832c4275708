import { type Accepts, AskedWorker, type WorkerPort } from './AskedWorker.ts';

interface Waiting<Q, A> {
  readonly question: Q;
  readonly resolve: (answer: A) => void;
  readonly reject: (why: Error) => void;
}

export interface QueueOptions {
  /** How often a worker that does not begin, or answers wrongly, is started again, 1 by default. */
  readonly restarts?: number;
  /** Whether an answer counts although a newer question is asked, as for a picture that is dragged. */
  readonly tellsStale?: boolean;
}

/**
 * Asks a worker one question at a time. Of each kind only the newest waits, so that a dragged slider leaves no queue
 * behind; unless stale answers count, only the promise for the newest of each kind is settled.
 */
export class WorkerQueue<Q, A> {
  private readonly newest = new Map<string, Waiting<Q, A>>();
  private readonly waiting = new Map<string, Waiting<Q, A>>();
  private isBusy = false;
  private readonly tellsStale: boolean;
  private readonly worker: AskedWorker<Q, A>;

  /**
   * @param start starts the worker; called when the first question comes, and after it was closed or had to be stopped
   * @param accepts tells an answer from anything else that a worker may say
   */
  constructor(start: () => WorkerPort<Q>, accepts: Accepts<Q, A>, { restarts, tellsStale = false }: QueueOptions = {}) {
    this.worker = new AskedWorker(start, accepts, restarts);
    this.tellsStale = tellsStale;
  }

  /**
   * @returns the answer; never settled where a newer question of this kind takes its place, or the queue is closed
   * @throws WorkerGaveUp, or Error with what the worker says is wrong with the question
   */
  ask(question: Q, kind = ''): Promise<A> {
    return new Promise((resolve, reject) => {
      const asked = { question, resolve, reject };
      this.newest.set(kind, asked);
      this.waiting.set(kind, asked);
      this.next();
    });
  }

  /** Ends the worker; a later question starts it again. */
  close(): void {
    this.newest.clear();
    this.waiting.clear();
    this.isBusy = false;
    this.worker.close();
  }

  private next(): void {
    const [first] = this.waiting;
    if (this.isBusy || first === undefined) return;
    const [kind, asked] = first;
    const settle = (act: () => void): void => {
      this.isBusy = false;
      this.next();
      if (this.tellsStale ? this.newest.has(kind) : this.newest.get(kind) === asked) act();
    };
    this.waiting.delete(kind);
    this.isBusy = true;
    this.worker.ask(asked.question).then(
      (answer) => settle(() => asked.resolve(answer)),
      (why: Error) => settle(() => asked.reject(why)),
    );
  }
}
