import * as z from 'zod/mini';
import { isDay } from '../units/isDay.ts';
import { addRuleIssue } from './rule.ts';

/** A local calendar day (ISO 8601), as "2026-11-26". */
export const daySchema = z.string().check(
  z.superRefine((text, context) => {
    if (!isDay(text)) addRuleIssue(context, [], text, 'a day, as "2026-11-26"', 'write year, month and day');
  }),
);
