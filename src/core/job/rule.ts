import type * as z from 'zod/mini';

/** What a broken rule between fields carries beside zod's own issue. */
export interface RuleParams {
  readonly got: unknown;
  readonly allowed: string;
  readonly remedy: string;
  /** The whole for the screen, where allowed and remedy make no good sentence. */
  readonly words?: string | undefined;
}

/** Reports a rule between fields of one object, in the same shape as every other issue of a job. */
export function addRuleIssue(
  context: z.core.$RefinementCtx,
  path: readonly PropertyKey[],
  got: unknown,
  allowed: string,
  remedy: string,
  words?: string,
): void {
  const params: RuleParams = { got, allowed, remedy, words };
  context.addIssue({ code: 'custom', path: [...path], message: allowed, params: { ...params } });
}
