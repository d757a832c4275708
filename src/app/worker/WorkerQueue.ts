import type { AskedWorker } from './AskedWorker.ts';

/**
 * Hands a worker one question at a time. Of each kind only the newest waits, so that a dragged slider leaves no queue
 * behind, and an answer to anything but the newest of its kind is dropped.
 */
export class WorkerQueue<Q, A> {
  private readonly newest = new Map<string, Q>();
  private readonly waiting = new Map<string, Q>();
  private isBusy = false;
  private readonly worker: Pick<AskedWorker<Q, A>, 'ask' | 'close'>;
  private readonly kindOf: (question: Q) => string;
  private readonly onAnswer: (question: Q, answer: A) => void;
  private readonly onFailure: (question: Q, why: Error) => void;

  /** @param onFailure told of the question that has no answer, and why */
  constructor(
    worker: Pick<AskedWorker<Q, A>, 'ask' | 'close'>,
    kindOf: (question: Q) => string,
    onAnswer: (question: Q, answer: A) => void,
    onFailure: (question: Q, why: Error) => void,
  ) {
    this.worker = worker;
    this.kindOf = kindOf;
    this.onAnswer = onAnswer;
    this.onFailure = onFailure;
  }

  ask(question: Q): void {
    this.newest.set(this.kindOf(question), question);
    this.waiting.set(this.kindOf(question), question);
    this.next();
  }

  close(): void {
    this.newest.clear();
    this.waiting.clear();
    this.worker.close();
  }

  private next(): void {
    const [question] = this.waiting.values();
    if (this.isBusy || question === undefined) return;
    this.waiting.delete(this.kindOf(question));
    this.isBusy = true;
    this.worker.ask(question).then(
      (answer) => this.settle(question, () => this.onAnswer(question, answer)),
      (why: Error) => this.settle(question, () => this.onFailure(question, why)),
    );
  }

  private settle(question: Q, tell: () => void): void {
    this.isBusy = false;
    this.next();
    if (this.newest.get(this.kindOf(question)) === question) tell();
  }
}
