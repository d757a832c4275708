import type { StockLeather } from '../../core/index.ts';

/** A leather while it is edited, with the steps that undo and redo go through. */
export interface LeatherHistory {
  readonly present: StockLeather;
  readonly past: readonly StockLeather[];
  readonly future: readonly StockLeather[];
  /** The field whose next edits belong to the last step; null once it is left. */
  readonly editing: string | null;
}

export type LeatherAction =
  | {
      readonly type: 'change';
      readonly leather: StockLeather;
      /** Changes in a row of one field are one step. */
      readonly field?: string | undefined;
    }
  | { readonly type: 'settle' | 'undo' | 'redo' };

/** Steps that undo goes back at most. */
const MOST_STEPS = 200;

export const startLeather = (present: StockLeather): LeatherHistory => ({
  present,
  past: [],
  future: [],
  editing: null,
});

export function leatherHistory(state: LeatherHistory, action: LeatherAction): LeatherHistory {
  const { present, past, future, editing } = state;
  switch (action.type) {
    case 'change': {
      const { leather, field = null } = action;
      if (leather === present) return state;
      if (field !== null && field === editing) return { ...state, present: leather, future: [] };
      return { present: leather, past: [...past, present].slice(-MOST_STEPS), future: [], editing: field };
    }
    case 'settle':
      return editing === null ? state : { ...state, editing: null };
    case 'undo': {
      const before = past.at(-1);
      if (before === undefined) return state;
      return { present: before, past: past.slice(0, -1), future: [present, ...future], editing: null };
    }
    case 'redo': {
      const [after, ...rest] = future;
      if (after === undefined) return state;
      return { present: after, past: [...past, present], future: rest, editing: null };
    }
  }
}
