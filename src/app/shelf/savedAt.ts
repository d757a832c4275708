let dateAndTime: Intl.DateTimeFormat | undefined;

/** A time in ms since 1970 as day and hour. */
export function savedAt(time: number): string {
  // Made on demand: it takes longer than the rest of the shelf's start.
  dateAndTime ??= new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
  return dateAndTime.format(time);
}
