/** A question as it is sent, with its number. */
export interface AskedQuestion<Q> {
  readonly number: number;
  readonly question: Q;
}

/** Message of a worker about the question of that number: that it has begun on it, then its answer or why there is none. */
export type WorkerWord<A> = { readonly to: number } & (
  | { readonly heard: true }
  | { readonly answer: A }
  /** In words for the maker. */
  | { readonly failure: string }
);

/** The part of `Worker` that is used. What a worker says is not trusted to be a `WorkerWord`. */
export interface WorkerPort<Q> {
  postMessage(question: AskedQuestion<Q>): void;
  onmessage: ((event: MessageEvent<unknown>) => void) | null;
  onmessageerror: ((event: MessageEvent<unknown>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** Whether what a worker answered is an answer to that question: of its shape, of its cover, and with numbers that are numbers. */
export type Accepts<Q, A> = (answer: unknown, question: Q) => answer is A;

/** A worker that does not start, does not answer, answers something else or takes too long; the message says which. */
export class WorkerGaveUp extends Error {}

/** Time for a worker to start and to begin on a question, and for its answer; seconds in which the page is awake. */
export const PATIENCE = { start: 15, answer: 120 } as const;

const SILENT = 'the worker that does it did not start or did not answer';
const WRONG = 'the worker that does it answered with something that cannot be right';
const TOO_LONG = `it took longer than ${PATIENCE.answer / 60} minutes and was stopped`;

interface Asked<Q, A> extends AskedQuestion<Q> {
  readonly resolve: (answer: A) => void;
  readonly reject: (why: Error) => void;
}

/**
 * A worker that is asked one question at a time; one that is dead, silent or blocked is detected, and one that answers
 * wrongly too.
 *
 * One that does not begin, or gives no acceptable answer, is started a second time; one that began and then takes too long
 * would do so again, and is given up. Time is counted in seconds of an awake page: neither sleep nor a long task of the page
 * makes a worker late. What it says of a question that is no longer asked, or a second time, is not heard.
 */
export class AskedWorker<Q, A> {
  private port: WorkerPort<Q> | null = null;
  /** The question under way. */
  private asked: Asked<Q, A> | null = null;
  private lastNumber = 0;
  private clock: ReturnType<typeof setInterval> | undefined;
  /** Whether it has been given up and not answered since: it is then not tried twice. */
  private isDoubtful = false;
  private readonly start: () => WorkerPort<Q>;
  private readonly accepts: Accepts<Q, A>;
  private readonly restarts: number;

  /**
   * @param start starts the worker; called when it is first asked, and again after it failed to begin
   * @param restarts how often one that does not begin, or answers wrongly, is started again
   */
  constructor(start: () => WorkerPort<Q>, accepts: Accepts<Q, A>, restarts = 1) {
    this.start = start;
    this.accepts = accepts;
    this.restarts = restarts;
  }

  /**
   * Asks a question. There must be none under way.
   * @returns the answer
   * @throws WorkerGaveUp, or Error with what the worker says is wrong with the question
   */
  ask(question: Q): Promise<A> {
    return new Promise((resolve, reject) => {
      this.attempt({ number: 0, question, resolve, reject }, this.isDoubtful ? 0 : this.restarts);
    });
  }

  /** Ends the worker. A question under way stays without an answer. */
  close(): void {
    clearInterval(this.clock);
    this.asked = null;
    if (this.port === null) return;
    this.port.onmessage = null;
    this.port.onmessageerror = null;
    this.port.onerror = null;
    this.port.terminate();
    this.port = null;
  }

  private attempt(question: Asked<Q, A>, restarts: number): void {
    const asked = { ...question, number: ++this.lastNumber };
    this.asked = asked;
    let isHeard = false;
    let seconds = 0;
    const giveUp = (why: string, mayTryAgain: boolean): void => {
      const isAsked = this.asked === asked;
      this.close();
      // One that dies while nothing is asked is started again by the next question.
      if (!isAsked) return;
      if (mayTryAgain && restarts > 0) this.attempt(asked, restarts - 1);
      else {
        this.isDoubtful = true;
        asked.reject(new WorkerGaveUp(why));
      }
    };
    try {
      this.port ??= this.start();
      this.port.onmessage = ({ data }) => {
        if (this.asked !== asked) return;
        const word = wordTo(asked.number, data, (answer) => this.accepts(answer, asked.question));
        if (word === 'outdated') return;
        if (word === 'wrong') return giveUp(WRONG, true);
        isHeard = true;
        seconds = 0;
        if ('heard' in word) return;
        clearInterval(this.clock);
        this.asked = null;
        this.isDoubtful = false;
        if ('answer' in word) asked.resolve(word.answer);
        else asked.reject(new Error(word.failure));
      };
      this.port.onmessageerror = () => giveUp(WRONG, true);
      this.port.onerror = () => giveUp(SILENT, !isHeard);
      this.clock = setInterval(() => {
        seconds++;
        if (seconds >= (isHeard ? PATIENCE.answer : PATIENCE.start)) giveUp(isHeard ? TOO_LONG : SILENT, !isHeard);
      }, 1000);
      this.port.postMessage({ number: asked.number, question: asked.question });
    } catch {
      giveUp(SILENT, !isHeard);
    }
  }
}

/** Reads what a worker said: a word about the question of that number, one about an earlier question, or neither. */
function wordTo<A>(
  number: number,
  said: unknown,
  accepts: (answer: unknown) => answer is A,
): WorkerWord<A> | 'outdated' | 'wrong' {
  if (typeof said !== 'object' || said === null || !('to' in said)) return 'wrong';
  const { to } = said;
  if (typeof to !== 'number' || !Number.isInteger(to) || to < 1 || to > number) return 'wrong';
  if (to < number) return 'outdated';
  if ('heard' in said) return { to, heard: true };
  if ('failure' in said) return typeof said.failure === 'string' ? { to, failure: said.failure } : 'wrong';
  return 'answer' in said && accepts(said.answer) ? { to, answer: said.answer } : 'wrong';
}
