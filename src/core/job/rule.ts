import type * as z from 'zod/mini';

/** What a broken rule between fields carries beside zod's own issue. */
export interface RuleParams {
  readonly got: unknown;
  readonly allowed: string;
  readonly remedy: string;
}

/** Reports a rule between fields of one object, in the same shape as every other issue of a job. */
export function addRuleIssue(
  context: z.core.$RefinementCtx,
  path: readonly PropertyKey[],
  got: unknown,
  allowed: string,
  remedy: string,
): void {
  const params: RuleParams = { got, allowed, remedy };
  context.addIssue({ code: 'custom', path: [...path], message: allowed, params: { ...params } });
}
