import {
  finishing,
  fittingsStep,
  inOneName,
  type Printer,
  printer,
  type StepId,
  type WorkId,
  workSteps,
} from '../../core/index.ts';
import { dayWords } from '../dayWords.ts';
import { type Detail, stepDetail } from './stepDetail.ts';
import type { WorkSource } from './workSource.ts';

/** A danger of a step, and how to avoid it. */
export interface Caution {
  /** Counts the cautions of the order of work from 1: the same danger at a later step has the same number. */
  readonly number: number;
  /** The danger in a few words, within a sentence. */
  readonly subject: string;
  readonly words: string;
  /** Whether it is said in full here: repeated warnings are not read. */
  readonly isFirst: boolean;
}

/** One step at the workbench. */
export interface WorkCard extends Detail {
  readonly id: WorkId;
  readonly name: string;
  /** Printed time; empty where it is counted with another step or is none. */
  readonly time: string;
  readonly cautions: readonly Caution[];
  /** `done`, with its day where that is known; null for a step that is not done. */
  readonly done: string | null;
}

/** Steps that bring the layers together; what is sewn on or laid in by itself comes before the first of them. */
const JOINING: readonly StepId[] = ['line', 'cement', 'assemble'];

/**
 * The order of work: each step with its figures, its instructions, what stands in its way, and its cautions.
 * @param say prints the figures; in the unit of the job unless told otherwise
 */
export function orderOfWork(source: WorkSource, say: Printer = printer(source.design.job.work.units)): WorkCard[] {
  const { job } = source.design;
  const caution = numberedCautions();
  const card = (id: WorkId, name: string, printed = '', words: readonly string[] = []): WorkCard => ({
    id,
    name,
    time: printed,
    ...stepDetail(id, source, say),
    cautions: words.map(caution),
    done: doneWords(job.made[id]),
  });
  const fitted = fittingsStep(job);
  const steps = workSteps(job, source.supplies);
  const joining = steps.find(({ id }) => JOINING.includes(id));
  return steps.flatMap((step): WorkCard[] => {
    const { id, name, minutes, cautions } = step;
    if (id === 'finish') {
      const before = finishing(job);
      const left = minutes > 0 ? `${time(minutes)} to the end` : '';
      return [
        ...(before.length === 0 ? [] : [card(id, inOneName(before), left, cautions)]),
        card('load', 'Load the book', before.length === 0 ? left : ''),
        card('close', 'Close and press'),
      ];
    }
    return [
      ...(step === joining && fitted !== null ? [card('fittings', fitted.name, '', fitted.cautions)] : []),
      card(id, name, time(minutes), cautions),
    ];
  });
}

/**
 * That a step is done, as `done 26 Nov 2026`.
 * @param day null where it is not known, undefined for a step that is not done
 */
export function doneWords(day: string | null | undefined): string | null {
  if (day === undefined) return null;
  return day === null ? 'done' : `done ${dayWords(day)}`;
}

function numberedCautions(): (words: string) => Caution {
  const known: string[] = [];
  return (words) => {
    const at = known.indexOf(words);
    const subject = words.slice(0, words.search(/[:;.]/));
    return {
      number: at < 0 ? known.push(words) : at + 1,
      subject: `${subject.charAt(0).toLowerCase()}${subject.slice(1)}`,
      words,
      isFirst: at < 0,
    };
  };
}

/** Minutes rounded to 5 min, in hours from 60 min on. */
function time(minutes: number): string {
  if (minutes === 0) return '';
  const rounded = Math.max(5, Math.round(minutes / 5) * 5);
  if (rounded < 60) return `${rounded} min`;
  const rest = rounded % 60;
  return `${Math.floor(rounded / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
}
