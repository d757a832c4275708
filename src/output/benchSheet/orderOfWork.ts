import { type Printer, printer, type StepId, workSteps } from '../../core/index.ts';
import { type Detail, stepDetail } from './stepDetail.ts';
import type { WorkId, WorkSource } from './workSource.ts';

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
}

/** Steps that are timed as one, in their order, with the names they have at the workbench. */
const PARTS: Partial<Record<StepId, readonly (readonly [WorkId, string])[]>> = {
  assemble: [
    ['fittings', 'Fit'],
    ['assemble', 'Assemble'],
  ],
  finish: [
    ['finish', 'Burnish and dress'],
    ['load', 'Load the book'],
    ['close', 'Close and press'],
  ],
};

/**
 * The order of work: each step with its figures, its instructions, what stands in its way, and its cautions.
 * @param say prints the figures; in the unit of the job unless told otherwise
 */
export function orderOfWork(source: WorkSource, say: Printer = printer(source.design.job.work.units)): WorkCard[] {
  const { job } = source.design;
  const caution = numberedCautions();
  const fitted = fittings(source);
  return workSteps(job, source.supplies).flatMap(({ id, name, minutes, cautions }) => {
    const parts = (PARTS[id] ?? [[id, name] as const]).filter(([part]) => part !== 'fittings' || fitted !== '');
    return parts.map(([part, title]): WorkCard => {
      const isTimed = part === id;
      const until = id === 'finish' && minutes > 0 ? ' to the end' : '';
      return {
        id: part,
        name: part === 'fittings' ? `${title} ${fitted}` : title,
        time: isTimed ? `${time(minutes)}${until}` : '',
        ...stepDetail(part, source, say),
        cautions: isTimed ? cautions.map(caution) : [],
      };
    });
  });
}

/** What is sewn on or laid in by itself, in words; empty for none. */
function fittings({ design }: WorkSource): string {
  const { strap, ribbon, penLoop } = design.job.construction;
  const names = [strap && 'strap', ribbon && 'ribbon', penLoop && 'pen loop'].filter((name) => name !== null);
  return names.join(names.length === 3 ? ', ' : ' and ');
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
