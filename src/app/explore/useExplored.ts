import { startTransition, useEffect, useRef, useState } from 'react';
import { AskedWorker } from '../worker/AskedWorker.ts';
import { WorkerQueue } from '../worker/WorkerQueue.ts';
import type { Answer, Answers, Question, QuestionKind, Questions } from './exploreMessage.ts';

/** The last answer of one kind, with the question that it answers. */
export interface Answered<K extends QuestionKind> {
  readonly question: Questions[K];
  readonly answer: Answers[K];
}

export interface Explored {
  readonly curve: Answered<'curve'> | null;
  readonly changes: Answered<'changes'> | null;
  readonly errors: Answered<'errors'> | null;
  /** Why the newest question of a kind has no answer. */
  readonly failures: Readonly<Partial<Record<QuestionKind, string>>>;
}

type ExploreDesk = WorkerQueue<Question, Answer>;

const NOTHING: Explored = { curve: null, changes: null, errors: null, failures: {} };

/**
 * Answers the three questions in workers, each again when it changes. Until a new answer is here the last one stands, with
 * its question, so that what is drawn always belongs together.
 */
export function useExplored({ curve, changes, errors }: Questions): Explored {
  const desks = useRef<{ readonly quick: ExploreDesk; readonly slow: ExploreDesk } | null>(null);
  const [explored, setExplored] = useState(NOTHING);

  useEffect(() => {
    // A chart is a long drawing: it is drawn in slices, and gives way to whatever is typed meanwhile.
    const keep = ({ kind }: Question, change: Partial<Explored>, failure?: string): void =>
      startTransition(() =>
        setExplored((before) => ({ ...before, ...change, failures: { ...before.failures, [kind]: failure } })),
      );
    const desk = (): ExploreDesk =>
      new WorkerQueue(
        new AskedWorker<Question, Answer>(
          () => new Worker(new URL('./explore.worker.ts', import.meta.url), { type: 'module' }),
        ),
        ({ kind }) => kind,
        (question, answer) => keep(question, { [question.kind]: { question, answer } }),
        (question, { message }) => keep(question, {}, message),
      );
    // What must change takes up to a second where a cover fails, and the curve must not wait for it.
    const [quick, slow] = [desk(), desk()];
    desks.current = { quick, slow };
    return () => {
      quick.close();
      slow.close();
      desks.current = null;
    };
  }, []);

  useEffect(() => desks.current?.quick.ask(curve), [curve]);
  useEffect(() => desks.current?.slow.ask(changes), [changes]);
  useEffect(() => desks.current?.quick.ask(errors), [errors]);

  return explored;
}
