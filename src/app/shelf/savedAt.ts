const DATE_AND_TIME = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });

/** A time in ms since 1970 as day and hour. */
export const savedAt = (time: number): string => DATE_AND_TIME.format(time);
