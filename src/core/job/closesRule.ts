import type * as z from 'zod/mini';
import { addRuleIssue } from './rule.ts';

/** A cover, or a card of it, that is said to close cannot stay open as well. */
export function checkCloses(
  { closes, opening_deg: angle }: { readonly closes: boolean | null; readonly opening_deg: number | null },
  context: z.core.$RefinementCtx,
): void {
  if (closes === true && angle !== null && angle > 0)
    addRuleIssue(
      context,
      ['opening_deg'],
      angle,
      'none (null) or 0 where it closes',
      'say that it does not close, or take the angle out',
    );
}
