import { startTransition, useCallback, useEffect, useState } from 'react';
import { useWorkerQueue } from '../worker/useWorkerQueue.ts';
import type { WorkerQueue } from '../worker/WorkerQueue.ts';
import type { Answer, Answers, Question, QuestionKind, Questions } from './exploreMessage.ts';
import { isAnswer, startExploring } from './startExploring.ts';

/** The last answer of one kind, with the question that it answers. */
export interface Answered<K extends QuestionKind> {
  readonly question: Questions[K];
  readonly answer: Answers[K];
}

export interface Explored {
  readonly curve: Answered<'curve'> | null;
  readonly changes: Answered<'changes'> | null;
  /** Why the newest question of a kind has no answer. */
  readonly failures: Readonly<Partial<Record<QuestionKind, string>>>;
}

const NOTHING: Explored = { curve: null, changes: null, failures: {} };

/**
 * Answers both questions in workers, each again when it changes. Until the new answer comes the last one is kept
 * with its question, so that both always match.
 */
export function useExplored({ curve, changes }: Pick<Questions, 'curve' | 'changes'>): Explored {
  const [explored, setExplored] = useState(NOTHING);
  // What must change takes up to a second where a cover fails, and the curve must not wait for it.
  const quick = useWorkerQueue<Question, Answer>(startExploring, isAnswer);
  const slow = useWorkerQueue<Question, Answer>(startExploring, isAnswer);

  const ask = useCallback((queue: WorkerQueue<Question, Answer>, question: Question): void => {
    const { kind } = question;
    // Drawing a chart takes long; as a transition it gives way to typing.
    const keep = (change: Partial<Explored>, failure?: string): void =>
      startTransition(() =>
        setExplored((before) => ({ ...before, ...change, failures: { ...before.failures, [kind]: failure } })),
      );
    queue.ask(question, kind).then(
      (answer) => keep({ [kind]: { question, answer } }),
      ({ message }: Error) => keep({}, message),
    );
  }, []);
  useEffect(() => ask(quick, curve), [ask, quick, curve]);
  useEffect(() => ask(slow, changes), [ask, slow, changes]);

  return explored;
}
