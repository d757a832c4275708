let format: Intl.DateTimeFormat | undefined;

/**
 * A calendar day as it is read, such as `26 Nov 2026`.
 * @param day ISO 8601, `2026-11-26`
 */
export function dayWords(day: string): string {
  // A date without a time is midnight in UTC (ECMA-262): in another zone it could be the day before.
  format ??= new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeZone: 'UTC' });
  return format.format(new Date(day));
}
