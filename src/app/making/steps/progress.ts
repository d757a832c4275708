import * as z from 'zod/mini';
import type { WorkCard } from '../../../output/benchSheet/orderOfWork.ts';
import { keptChoice } from '../../state/keptChoice.ts';

/** One step printed in both units: the unit of the page is no change of the step. */
export interface PrintedStep {
  readonly mm: WorkCard;
  readonly in: WorkCard;
}

const saidSchema = z.object({
  /** Figures by name, as they were printed in each unit. */
  figures: z.catchall(z.object({}), z.object({ mm: z.string(), in: z.string() })),
  words: z.string(),
});

const jobSchema = z.object({
  key: z.string(),
  /** Id of the step that is shown; `END` after the last. */
  at: z.nullable(z.string()),
  /** What each done step said when it was done, by its id. */
  done: z.catchall(z.object({}), saidSchema),
  /** Whether the job itself has the ticks: earlier versions kept them here alone, without their days. */
  isInJob: z._default(z.boolean(), false),
});

export const keptSchema = z.object({ jobs: z._default(z.array(jobSchema), []) });

/** What a step said when it was done. */
export type Said = z.output<typeof saidSchema>;
/** Progress of every job, the last worked first. */
export type KeptProgress = z.output<typeof keptSchema>;
/** Where the work on one job was left, and what its done steps said. Which steps are done, and when, is kept in the job. */
export type Progress = Omit<z.output<typeof jobSchema>, 'key'>;
/** The day of each step that is done, by its id; null where it is not known. */
export type Made = Readonly<Record<string, unknown>>;

export const { read: readProgress, keep: keepProgress } = keptChoice('coverwright.steps.v1', keptSchema);

/** Shown after the last step. */
export const END = 'end';

/** Jobs whose progress is kept: some 5 kB each. */
const MOST_JOBS = 40;

export const NOT_BEGUN: Progress = { at: null, done: {}, isInJob: true };

/**
 * Keys of a job, the one to write under first. A job that got its place on the shelf since is found by its name.
 * @param last key that it was last kept under, if that is known
 */
export const progressKeys = (shelfId: string | undefined, name: string, last?: string): readonly string[] => [
  ...(shelfId === undefined ? [] : [`shelf:${shelfId}`]),
  `name:${name}`,
  ...(last === undefined ? [] : [last]),
];

/** Progress of the job with these keys. */
export function progressOf({ jobs }: KeptProgress, keys: readonly string[]): Progress {
  const found = keys.map((key) => jobs.find((job) => job.key === key)).find((job) => job !== undefined);
  return found ?? NOT_BEGUN;
}

/** All progress with that of one job replaced, under its first key alone. */
export function withProgress(
  { jobs }: KeptProgress,
  keys: readonly string[],
  { at, done, isInJob }: Progress,
): KeptProgress {
  const others = jobs.filter(({ key }) => !keys.includes(key));
  return { jobs: [{ key: keys[0]!, at, done, isInJob }, ...others].slice(0, MOST_JOBS) };
}

/** What a job has of its done steps, with the ticks that an earlier version kept beside it; null where it has them all. */
export function withTicksOfBefore(made: Made, { done, isInJob }: Progress, ids: readonly string[]): Made | null {
  const added = isInJob ? [] : ids.filter((id) => done[id] !== undefined && made[id] === undefined);
  return added.length === 0 ? null : { ...made, ...Object.fromEntries(added.map((id) => [id, null])) };
}

/** What a step says now. */
export function saidBy({ mm, in: inch }: PrintedStep): Said {
  const texts = mm.figures.map(({ name, text }, i) => [name, { mm: text, in: inch.figures[i]!.text }] as const);
  return { figures: Object.fromEntries(texts), words: [...mm.words, ...mm.troubles].join(' ') };
}

/**
 * What a done step says now that it did not say when it was done, one sentence a change; none where it is the same.
 * @param units unit of the printed figures
 */
export function changesSince(said: Said, step: PrintedStep, units: 'mm' | 'in'): string[] {
  const now = saidBy(step);
  const names = [...new Set([...Object.keys(said.figures), ...Object.keys(now.figures)])];
  const figures = names.flatMap((name) => {
    const [was, is] = [said.figures[name], now.figures[name]];
    if (was?.mm === is?.mm) return [];
    if (was === undefined) return [`${name}: ${is![units]}, new.`];
    return [is === undefined ? `${name}: ${was[units]} no longer.` : `${name}: ${is[units]}, was ${was[units]}.`];
  });
  return figures.length === 0 && said.words !== now.words
    ? ['The instructions have changed: read them again.']
    : figures;
}

/** Index of the step to show: the one that was left, else the first that is not done; the number of steps for the end. */
export function shownStep({ at }: Pick<Progress, 'at'>, made: Made, ids: readonly string[]): number {
  if (at === END) return ids.length;
  const left = ids.indexOf(at ?? '');
  if (left >= 0) return left;
  const open = ids.findIndex((id) => made[id] === undefined);
  return open < 0 ? ids.length : open;
}

/** Progress with what a done step says now. */
export const withSaid = (progress: Progress, id: string, said: Said): Progress => ({
  ...progress,
  isInJob: true,
  done: { ...progress.done, [id]: said },
});

/** A time's calendar day where the maker is, ISO 8601. */
export const dayOf = (time: Date): string =>
  [time.getFullYear(), time.getMonth() + 1, time.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
