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

/** What the maker typed into a field, in the unit that then stood for figures without one. */
export interface Typed {
  readonly text: string;
  readonly unit: LengthUnit;
}

/** Typed texts by the path of the value that they stand for. */
type TypedTexts = Readonly<Partial<Record<JobPath, Typed>>>;

/** A job as it lies on the bench: the document, and the typed texts behind its values by path. */
export interface Written {
  readonly document: JobDocument;
  readonly typed: TypedTexts;
}

/** Stands for one job from its opening on. Edits and undo keep it, so that what is kept of a job stays with it. */
export type JobKey = object;

/** The job with which the page starts. */
export const FIRST_JOB: JobKey = {};

/** One state of the bench that undo can bring back. */
export interface Step extends Written {
  readonly key: JobKey;
}

/** The open job and its history. `good` is the last state that parsed: picture and report show that one. */
export interface JobHistory extends Step {
  readonly parsed: ParsedJob;
  readonly good: { readonly document: JobDocument; readonly job: Job };
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  /** Field whose keystrokes still go into one step; null once it is left. */
  readonly editing: string | null;
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
  | { readonly type: 'open'; readonly document: JobDocument; readonly typed?: Step['typed']; readonly key?: JobKey }
  | { readonly type: 'settle' | 'undo' | 'redo' };

/** Steps that undo goes back at most: a long session's worth of a document of about 2 kB. */
const MAX_STEPS = 500;

/** Starts a history. `fallback` is a job known to parse, for the picture when `written` does not. */
export function startHistory(written: Written, fallback: JobDocument): JobHistory {
  const good = parseJob(fallback);
  if (!good.ok) throw new Error(`The fallback job does not parse: ${good.issues[0]?.message}`);
  const start = { document: fallback, job: good.job };
  const step = { ...written, document: inCurrentVersion(written.document), key: FIRST_JOB };
  return { ...stand(step, start), past: [], future: [], editing: null };
}

export function jobHistory(state: JobHistory, action: JobAction): JobHistory {
  switch (action.type) {
    case 'edit': {
      const document = patched(state.document, action.patches);
      const typed = keepTyped(state.typed, action);
      const isSameStep = action.key !== undefined && action.key === state.editing;
      return advance(state, { document, typed, key: state.key }, isSameStep, action.key ?? null);
    }
    case 'open':
      return advance(
        state,
        { document: inCurrentVersion(action.document), typed: action.typed ?? {}, key: action.key ?? {} },
        false,
        null,
      );
    case 'settle':
      return state.editing === null ? state : { ...state, editing: null };
    case 'undo': {
      const step = state.past.at(-1);
      if (step === undefined) return state;
      const future = [stepOf(state), ...state.future];
      return { ...stand(step, state.good), past: state.past.slice(0, -1), future, editing: null };
    }
    case 'redo': {
      const [step, ...future] = state.future;
      if (step === undefined) return state;
      return { ...stand(step, state.good), past: [...state.past, stepOf(state)], future, editing: null };
    }
  }
}

const stepOf = ({ document, typed, key }: Step): Step => ({ document, typed, key });

function stand(step: Step, lastGood: JobHistory['good']) {
  const parsed = parseJob(step.document);
  const good = parsed.ok ? { document: step.document, job: parsed.job } : lastGood;
  return { ...stepOf(step), parsed, good };
}

function advance(state: JobHistory, step: Step, isSameStep: boolean, editing: string | null): JobHistory {
  const past = isSameStep ? state.past : [...state.past, stepOf(state)].slice(-MAX_STEPS);
  return { ...stand(step, state.good), past, future: [], editing };
}

/** A patched value no longer has the typed text that stood at, above or below its path. */
function keepTyped(typed: Step['typed'], { patches, typed: added = {} }: JobAction & { type: 'edit' }): Step['typed'] {
  const isTouched = (path: string): boolean =>
    patches.some((patch) => `${path}.`.startsWith(`${patch.path}.`) || `${patch.path}.`.startsWith(`${path}.`));
  const kept = Object.entries(typed).filter(([path]) => !(path in added) && !isTouched(path));
  const fresh = Object.entries(added).filter((entry): entry is [string, Typed] => entry[1] !== undefined);
  return Object.fromEntries([...kept, ...fresh]);
}
