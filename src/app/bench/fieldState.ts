import { readField } from '../../core/job/readField.ts';
import type { JobHistory } from '../state/jobHistory.ts';
import { typedText } from '../state/typedText.ts';

/** Why the entry at a path cannot be used, in one line each; empty where it can. */
export function fieldIssues({ typed, parsed }: JobHistory, path: string): readonly string[] {
  const entry = typed[path];
  if (entry !== undefined) {
    const reading = readField(path, entry.text, entry.unit);
    if (!reading.ok) return [reading.message];
  }
  if (parsed.ok) return [];
  return parsed.issues
    .filter((issue) => issue.path === path || issue.path.startsWith(`${path}.`))
    .map((issue) => `${issue.message.charAt(0).toUpperCase()}${issue.message.slice(1)}. Lengths here are in mm.`);
}

/** Every entry of the job that cannot be used: its path and its first line. */
export function openIssues(history: JobHistory): readonly { readonly path: string; readonly message: string }[] {
  const { typed, parsed } = history;
  const unread = Object.entries(typed).flatMap(([path, entry]) => {
    const reading = readField(path, entry.text, entry.unit);
    return reading.ok ? [] : [{ path, message: reading.message }];
  });
  const refused = parsed.ok ? [] : parsed.issues.map(({ path, message }) => ({ path, message }));
  return [...unread, ...refused];
}

/** How a typed entry was understood, where that says more than the text itself. */
export function understood({ typed }: JobHistory, path: string): string | null {
  const entry = typed[path];
  if (entry === undefined) return null;
  const reading = readField(path, entry.text, entry.unit);
  return reading.ok && reading.understood !== typedText(entry, entry.unit).trim() ? reading.understood : null;
}
