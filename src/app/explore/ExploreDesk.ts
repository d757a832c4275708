import type { Answer, Question, QuestionKind } from './exploreMessage.ts';

/** What the desk needs of a worker; a test gives it one of its own. */
export interface ExploreWorker {
  postMessage(question: Question): void;
  onmessage: ((event: MessageEvent<Answer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/**
 * Hands the worker one question at a time. Of each kind only the newest waits, so that a dragged slider leaves no queue
 * behind, and an answer to anything but the newest of its kind is dropped.
 */
export class ExploreDesk {
  private readonly newest = new Map<QuestionKind, Question>();
  private readonly waiting = new Map<QuestionKind, Question>();
  private asked: Question | null = null;
  private readonly worker: ExploreWorker;

  /** @param onFailure told of the question that the worker broke down on, and why */
  constructor(
    worker: ExploreWorker,
    onAnswer: (question: Question, answer: Answer) => void,
    onFailure: (question: Question, why: string) => void,
  ) {
    this.worker = worker;
    worker.onmessage = ({ data }) => this.settle((question) => onAnswer(question, data));
    worker.onerror = ({ message }) => this.settle((question) => onFailure(question, message));
  }

  ask(question: Question): void {
    this.newest.set(question.kind, question);
    this.waiting.set(question.kind, question);
    this.next();
  }

  close(): void {
    this.worker.terminate();
  }

  private settle(tell: (question: Question) => void): void {
    const done = this.asked;
    this.asked = null;
    this.next();
    if (done !== null && this.newest.get(done.kind) === done) tell(done);
  }

  private next(): void {
    const [question] = this.waiting.values();
    if (this.asked !== null || question === undefined) return;
    this.waiting.delete(question.kind);
    this.asked = question;
    this.worker.postMessage(question);
  }
}
