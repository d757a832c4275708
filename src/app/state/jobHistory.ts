import {
  inCurrentVersion,
  type Job,
  type JobDocument,
  type JobPath,
  type LengthUnit,
  type ParsedJob,
  type Patch,
  parseJob,
  patched,
} from '../../core/index.ts';
import { freshId } from './freshId.ts';

/** What the maker typed into a field, and the unit of figures without one. */
export interface Typed {
  readonly text: string;
  readonly unit: LengthUnit;
}

/** Typed texts by the path of their value. */
type TypedTexts = Readonly<Partial<Record<JobPath, Typed>>>;

/** A job document, and the typed texts behind its values by path. */
export interface Written {
  readonly document: JobDocument;
  readonly typed: TypedTexts;
}

/** Place of a job on the shelf, and the last of its saves that this window knows. */
export interface ShelfPlace {
  readonly id: string;
  readonly revision: number;
  /** The document of that save; null where it is not known to be the open one. */
  readonly document: JobDocument | null;
}

/**
 * Identifies a job in every window and visit. A job that is new on the shelf stands there under it, so that a window that
 * was killed before it heard of its save finds the job again. Edits and undo keep it.
 */
export type JobKey = string;

/** One state that undo can bring back. */
export interface Step extends Written {
  readonly key: JobKey;
}

/** The open job and its history. `good` is the last state that parsed: picture and report show that one. */
export interface JobHistory extends Step {
  readonly parsed: ParsedJob;
  readonly good: { readonly document: JobDocument; readonly job: Job };
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  /** The step that takes further edits with the same key, and the state before it; null once the field is left. */
  readonly editing: { readonly key: string; readonly before: JobHistory } | null;
  /** Places on the shelf of the jobs that have one. */
  readonly places: ReadonlyMap<JobKey, ShelfPlace>;
  /** What the keys of the jobs opened from here on begin with, and how many there are. */
  readonly keys: { readonly seed: string; readonly count: number };
}

export type JobAction =
  | {
      readonly type: 'edit';
      readonly patches: readonly Patch[];
      /** Typed text to keep by path, undefined to forget it. */
      readonly typed?: Readonly<Partial<Record<JobPath, Typed | undefined>>>;
      /** Edits in a row with the same key are one step. */
      readonly key?: string;
    }
  | {
      readonly type: 'open';
      readonly document: JobDocument;
      readonly typed?: Step['typed'];
      readonly place?: ShelfPlace | undefined;
      /** True for another state of the open job, which keeps its place. */
      readonly isSameJob?: boolean;
    }
  /** Which steps are done, by their ids; no step of undo, for what hands have done stays done. */
  | { readonly type: 'made'; readonly made: JobDocument }
  | { readonly type: 'place'; readonly key: JobKey; readonly place: ShelfPlace }
  /** The history with that of an earlier visit round it (`shelf/recalled.ts`). */
  | { readonly type: 'recall'; readonly history: JobHistory }
  /** `settle` ends the step under way, `cancel` reverts it. */
  | { readonly type: 'settle' | 'cancel' | 'undo' | 'redo' };

/** Steps that undo goes back at most: a long session's worth of a document of about 2 kB. */
export const MAX_STEPS = 500;

/**
 * Starts a history.
 * @param fallback a job known to parse, for the picture when `written` does not
 * @param origin of the job: its place on the shelf, and its key in an earlier visit
 */
export function startHistory(
  written: Written,
  fallback: JobDocument,
  { place, key }: { readonly place?: ShelfPlace | undefined; readonly key?: JobKey | undefined } = {},
): JobHistory {
  const good = parseJob(fallback);
  if (!good.ok) throw new Error(`The fallback job does not parse: ${good.issues[0]?.message}`);
  const seed = freshId();
  const step = { ...written, document: inCurrentVersion(written.document), key: key ?? `${seed}.0` };
  return {
    ...stand(step, { document: fallback, job: good.job }),
    past: [],
    future: [],
    editing: null,
    places: new Map(place && [[step.key, place]]),
    keys: { seed, count: 1 },
  };
}

/** Place of the open job on the shelf; undefined while it has none. */
export const placeOf = ({ places, key }: JobHistory): ShelfPlace | undefined => places.get(key);

export function jobHistory(state: JobHistory, action: JobAction): JobHistory {
  switch (action.type) {
    case 'edit': {
      const document = patched(state.document, action.patches);
      const step = { document, typed: keepTyped(state.typed, action), key: state.key };
      if (action.key === undefined) return { ...state, ...advance(state, step), editing: null };
      if (action.key === state.editing?.key) return { ...state, ...stand(step, state.good), future: [] };
      const editing = { key: action.key, before: { ...state, editing: null } };
      return { ...state, ...advance(state, step), editing };
    }
    case 'open': {
      const { typed = {}, place, isSameJob = false } = action;
      const { seed, count } = state.keys;
      const key = isSameJob ? state.key : `${seed}.${count}`;
      const places = place === undefined ? state.places : new Map(state.places).set(key, place);
      const step = { document: inCurrentVersion(action.document), typed, key };
      return { ...state, ...advance(state, step), editing: null, places, keys: { seed, count: count + 1 } };
    }
    case 'made': {
      const made = Object.keys(action.made).length === 0 ? undefined : action.made;
      const withMade = (step: Step): Step => (step.key === state.key ? noted(step, made) : step);
      const { document } = noted({ ...state, document: state.good.document }, made);
      const parsed = parseJob(document);
      return {
        ...state,
        ...stand(withMade(stepOf(state)), parsed.ok ? { document, job: parsed.job } : state.good),
        past: state.past.map(withMade),
        future: state.future.map(withMade),
        editing: null,
      };
    }
    case 'place':
      return { ...state, places: new Map(state.places).set(action.key, action.place) };
    case 'recall':
      return action.history;
    case 'settle':
      return state.editing === null ? state : { ...state, editing: null };
    case 'cancel':
      return state.editing === null ? state : { ...state.editing.before, places: state.places };
    case 'undo': {
      const step = state.past.at(-1);
      if (step === undefined) return state;
      const future = [stepOf(state), ...state.future];
      return { ...state, ...stand(step, state.good), past: state.past.slice(0, -1), future, editing: null };
    }
    case 'redo': {
      const [step, ...future] = state.future;
      if (step === undefined) return state;
      return { ...state, ...stand(step, state.good), past: [...state.past, stepOf(state)], future, editing: null };
    }
  }
}

/** A step with what hands have done. */
export const noted = (step: Step, made: unknown): Step => ({
  ...step,
  document: patched(step.document, [{ path: 'made', value: made }]),
});

export const stepOf = ({ document, typed, key }: Step): Step => ({ document, typed, key });

function stand(step: Step, lastGood: JobHistory['good']) {
  const parsed = parseJob(step.document);
  const good = parsed.ok ? { document: step.document, job: parsed.job } : lastGood;
  return { ...stepOf(step), parsed, good };
}

/** A new step after the present one, which becomes the past. */
const advance = (state: JobHistory, step: Step) => ({
  ...stand(step, state.good),
  past: [...state.past, stepOf(state)].slice(-MAX_STEPS),
  future: [],
});

/** A patched value loses the typed texts at, above and below its path. */
function keepTyped(typed: Step['typed'], { patches, typed: added = {} }: JobAction & { type: 'edit' }): Step['typed'] {
  const isTouched = (path: string): boolean =>
    patches.some((patch) => `${path}.`.startsWith(`${patch.path}.`) || `${patch.path}.`.startsWith(`${path}.`));
  const kept = Object.entries(typed).filter(([path]) => !(path in added) && !isTouched(path));
  const fresh = Object.entries(added).filter((entry): entry is [string, Typed] => entry[1] !== undefined);
  return Object.fromEntries([...kept, ...fresh]);
}
