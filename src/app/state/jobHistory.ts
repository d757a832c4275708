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

/** Number of a job, counted as jobs are opened. Edits and undo keep it. */
export type JobKey = number;

/** The job with which the page starts. */
export const FIRST_JOB: JobKey = 0;

/** One state that undo can bring back. */
interface Step extends Written {
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
  /** Key of the job opened last, the highest so far. */
  readonly lastKey: JobKey;
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
  /** `settle` ends the step under way, `cancel` reverts it. */
  | { readonly type: 'settle' | 'cancel' | 'undo' | 'redo' };

/** Steps that undo goes back at most: a long session's worth of a document of about 2 kB. */
const MAX_STEPS = 500;

/** Starts a history. `fallback` is a job known to parse, for the picture when `written` does not. */
export function startHistory(written: Written, fallback: JobDocument, place?: ShelfPlace): JobHistory {
  const good = parseJob(fallback);
  if (!good.ok) throw new Error(`The fallback job does not parse: ${good.issues[0]?.message}`);
  const step = { ...written, document: inCurrentVersion(written.document), key: FIRST_JOB };
  return {
    ...stand(step, { document: fallback, job: good.job }),
    past: [],
    future: [],
    editing: null,
    places: new Map(place && [[FIRST_JOB, place]]),
    lastKey: FIRST_JOB,
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
      const key = isSameJob ? state.key : state.lastKey + 1;
      const places = place === undefined ? state.places : new Map(state.places).set(key, place);
      const step = { document: inCurrentVersion(action.document), typed, key };
      return { ...state, ...advance(state, step), editing: null, places, lastKey: Math.max(key, state.lastKey) };
    }
    case 'made': {
      const value = Object.keys(action.made).length === 0 ? undefined : action.made;
      const noted = (document: JobDocument): JobDocument => patched(document, [{ path: 'made', value }]);
      const withMade = (step: Step): Step =>
        step.key === state.key ? { ...step, document: noted(step.document) } : step;
      const document = noted(state.good.document);
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

const stepOf = ({ document, typed, key }: Step): Step => ({ document, typed, key });

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
