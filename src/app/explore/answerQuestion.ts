import {
  type CoverDesign,
  coverDesign,
  coverTrials,
  designReport,
  EXPLORE_RESULTS,
  exploreFields,
  type JobDocument,
  mustChangeList,
  parseJob,
  sweep,
} from '../../core/index.ts';
import type { Answer, Answers, Curve, FieldFacts, Question, Questions } from './exploreMessage.ts';

/** Answers a question, in the worker or in a test. */
export function answerQuestion(question: Question): Answer {
  switch (question.kind) {
    case 'curve':
      return curves(question);
    case 'changes':
      return changes(question);
    case 'trials':
      return trials(question);
  }
}

function curves({ document, overlay, fieldId, resultId, range }: Questions['curve']): Answers['curve'] {
  const result = EXPLORE_RESULTS.find(({ id }) => id === resultId);
  const over = (job: JobDocument): Curve | null => {
    const field = exploreFields(job, designOf(job)).find(({ id }) => id === fieldId);
    if (field === undefined || result === undefined) return null;
    return { field: facts(field), points: sweep(job, field, [result], range) };
  };
  const curve = over(document);
  if (curve === null) throw new Error(`This job has no ${fieldId}, or no result ${resultId}.`);
  return { curve, overlay: overlay === null ? null : over(overlay) };
}

function changes({ document, target }: Questions['changes']): Answers['changes'] {
  return mustChangeList(document, designOf(document), target).map(({ field, outcome }) => ({
    field: facts(field),
    outcome,
  }));
}

function trials({ document }: Questions['trials']): Answers['trials'] {
  const design = designOf(document);
  return coverTrials(design, designReport(design).doubt);
}

const facts = ({ id, note, present, step }: FieldFacts): FieldFacts => ({ id, note, present, step });

function designOf(document: JobDocument): CoverDesign {
  const parsed = parseJob(document);
  if (!parsed.ok) throw new Error(`The job does not parse: ${parsed.issues[0]?.message}`);
  return coverDesign(parsed.job);
}
