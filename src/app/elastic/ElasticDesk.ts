import type { Job } from '../../core/job/jobSchema.ts';
import type { ElasticAnswer, ElasticOverRange, ElasticQuestion } from './elasticMessage.ts';

/** What the desk needs of a worker; a test gives it one of its own. */
export interface ElasticWorker {
  postMessage(question: ElasticQuestion): void;
  onmessage: ((event: MessageEvent<ElasticAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/**
 * Hands one job at a time to the worker. A job asked about meanwhile waits, and a newer one takes its place, so that a
 * dragged slider leaves no queue behind; an answer to anything but the newest job is dropped.
 */
export class ElasticDesk {
  private newest = 0;
  private asked: ElasticQuestion | null = null;
  private waiting: ElasticQuestion | null = null;
  private readonly worker: ElasticWorker;

  /** @param onFailure told of the job that the worker broke down on */
  constructor(
    worker: ElasticWorker,
    onAnswer: (job: Job, elastic: ElasticOverRange) => void,
    onFailure: (job: Job) => void,
  ) {
    this.worker = worker;
    worker.onmessage = ({ data: { id, elastic } }) => {
      const answered = this.next();
      if (answered?.id === id && id === this.newest) onAnswer(answered.job, elastic);
    };
    worker.onerror = () => {
      const failed = this.next();
      if (failed !== null) onFailure(failed.job);
    };
  }

  ask(job: Job): void {
    const question = { id: ++this.newest, job };
    if (this.asked === null) this.send(question);
    else this.waiting = question;
  }

  /** Takes the question that is done with off the desk and sends the one that waits. */
  private next(): ElasticQuestion | null {
    const done = this.asked;
    this.asked = null;
    if (this.waiting !== null) this.send(this.waiting);
    return done;
  }

  close(): void {
    this.worker.terminate();
  }

  private send(question: ElasticQuestion): void {
    this.waiting = null;
    this.asked = question;
    this.worker.postMessage(question);
  }
}
