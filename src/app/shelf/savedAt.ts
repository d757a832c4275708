let dateAndTime: Intl.DateTimeFormat | undefined;

/** A time in ms since 1970 as day and hour. */
export function savedAt(time: number): string {
  // Made when first asked for: it takes longer than all else that starts with the shelf.
  dateAndTime ??= new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
  return dateAndTime.format(time);
}
