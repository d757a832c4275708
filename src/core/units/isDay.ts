/** Whether a text is a calendar day, as `2026-11-26` (ISO 8601); one beyond the end of its month is none. */
export const isDay = (text: string): boolean =>
  Number.isFinite(Date.parse(text)) && new Date(text).toISOString().slice(0, 10) === text;
