import * as z from 'zod/mini';
import { accepting } from '../worker/accepting.ts';
import type { Answer, Answers, Question, QuestionKind } from './exploreMessage.ts';

/** Starts a worker that answers questions of Explore. */
export const startExploring = (): Worker =>
  new Worker(new URL('./explore.worker.ts', import.meta.url), { type: 'module' });

const number = z.number();
const field = z.looseObject({ id: z.string(), present: number, step: number });
const curve = z.looseObject({ field, points: z.array(z.looseObject({})) });

const SHAPES = {
  curve: z.looseObject({ curve, overlay: z.nullable(curve) }),
  changes: z.array(z.looseObject({ field, outcome: z.looseObject({ status: z.string() }) })),
  trials: z.looseObject({ draws: number, chance: z.looseObject({ closes: number, fits: number }) }),
} satisfies Readonly<Record<QuestionKind, unknown>>;

/** What its worker may answer to a question of one kind. */
export const isAnswerTo = <K extends QuestionKind>(kind: K) => accepting<Answers[K]>(SHAPES[kind]);

/** What its worker may answer to a question: of that kind, and about that field. */
export const isAnswer = (answer: unknown, question: Question): answer is Answer =>
  isAnswerTo(question.kind)(answer) &&
  (question.kind !== 'curve' || !('curve' in answer) || answer.curve.field.id === question.fieldId);
