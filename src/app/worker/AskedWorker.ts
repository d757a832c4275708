/** Message of a worker: that it has begun on a question, then its answer or why there is none. */
export type WorkerWord<A> =
  | { readonly heard: true }
  | { readonly answer: A }
  /** In words for the maker. */
  | { readonly failure: string };

/** The part of `Worker` that is used. */
export interface WorkerPort<Q, A> {
  postMessage(question: Q): void;
  onmessage: ((event: MessageEvent<WorkerWord<A>>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** A worker that does not start, does not answer or takes too long; the message says which. */
export class WorkerGaveUp extends Error {}

/** Time for a worker to start and to begin on a question, and for its answer; seconds in which the page is awake. */
export const PATIENCE = { start: 15, answer: 120 } as const;

const SILENT = 'the worker that does it did not start or did not answer';
const TOO_LONG = `it took longer than ${PATIENCE.answer / 60} minutes and was stopped`;

interface Asked<A> {
  readonly resolve: (answer: A) => void;
  readonly reject: (why: Error) => void;
}

/**
 * A worker that is asked one question at a time; one that is dead, silent or blocked is detected.
 *
 * One that does not begin is started a second time; one that began and then takes too long would do so again, and is
 * given up. Time is counted in seconds of an awake page: neither sleep nor a long task of the page makes a worker late.
 */
export class AskedWorker<Q, A> {
  private port: WorkerPort<Q, A> | null = null;
  private asked: Asked<A> | null = null;
  private clock: ReturnType<typeof setInterval> | undefined;
  /** Whether it has been given up and not answered since: it is then not tried twice. */
  private isDoubtful = false;
  private readonly start: () => WorkerPort<Q, A>;
  private readonly restarts: number;

  /**
   * @param start starts the worker; called when it is first asked, and again after it failed to begin
   * @param restarts how often one that does not begin is started again
   */
  constructor(start: () => WorkerPort<Q, A>, restarts = 1) {
    this.start = start;
    this.restarts = restarts;
  }

  /**
   * Asks a question. There must be none under way.
   * @returns the answer
   * @throws WorkerGaveUp, or Error with what the worker says is wrong with the question
   */
  ask(question: Q): Promise<A> {
    return new Promise((resolve, reject) => {
      this.asked = { resolve, reject };
      this.attempt(question, this.isDoubtful ? 0 : this.restarts);
    });
  }

  /** Ends the worker. A question under way stays without an answer. */
  close(): void {
    clearInterval(this.clock);
    this.port?.terminate();
    this.port = null;
  }

  private attempt(question: Q, restarts: number): void {
    let isHeard = false;
    let seconds = 0;
    const giveUp = (why: string): void => {
      this.close();
      if (!isHeard && restarts > 0) this.attempt(question, restarts - 1);
      else {
        this.isDoubtful = true;
        this.asked?.reject(new WorkerGaveUp(why));
      }
    };
    try {
      this.port ??= this.start();
      this.port.onmessage = ({ data }) => {
        isHeard = true;
        seconds = 0;
        if ('heard' in data) return;
        clearInterval(this.clock);
        this.isDoubtful = false;
        if ('answer' in data) this.asked?.resolve(data.answer);
        else this.asked?.reject(new Error(data.failure));
      };
      this.port.onerror = () => giveUp(SILENT);
      this.clock = setInterval(() => {
        seconds++;
        if (seconds >= (isHeard ? PATIENCE.answer : PATIENCE.start)) giveUp(isHeard ? TOO_LONG : SILENT);
      }, 1000);
      this.port.postMessage(question);
    } catch {
      giveUp(SILENT);
    }
  }
}
