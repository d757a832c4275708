import { isJobPath, type JobPath, readField, valueAt } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import type { JobHistory } from '../state/jobHistory.ts';
import { issueWords, labelAt } from './issueWords.ts';

/** What the document holds at a path; undefined where it leaves it out. */
export const useWritten = (path: JobPath): unknown => useBench(({ history }) => valueAt(history.document, path));

/** Why the entry at a path, or at an item of a list, cannot be used, in one line each; empty where it can. */
export const useFieldIssues = (path: string): readonly string[] =>
  useBench(({ history }) => fieldIssues(history, path));

/** As `useFieldIssues`, of a history. */
export function fieldIssues({ typed, parsed }: JobHistory, path: string): readonly string[] {
  if (isJobPath(path)) {
    const entry = typed[path];
    const reading = entry && readField(path, entry.text, entry.unit);
    if (reading?.ok === false) return [reading.message];
  }
  if (parsed.ok) return [];
  return parsed.issues.filter((issue) => issue.path === path || issue.path.startsWith(`${path}.`)).map(issueWords);
}

/** An entry that cannot be used. */
export interface OpenIssue {
  readonly path: string;
  readonly label: string;
  /** The words after the label: ` is missing.`, or a colon and what is wrong. */
  readonly words: string;
}

const IS_MISSING = ' is missing.';

/** Every entry of the job that cannot be used, each once, by its label. */
export function openIssues({ typed, parsed }: Pick<JobHistory, 'typed' | 'parsed'>): readonly OpenIssue[] {
  const unread = Object.entries(typed).flatMap(([path, entry]) => {
    const reading = isJobPath(path) ? readField(path, entry.text, entry.unit) : null;
    if (reading === null || reading.ok) return [];
    return [{ path, label: labelAt(path), words: entry.text.trim() === '' ? IS_MISSING : `: ${reading.message}` }];
  });
  const refused = (parsed.ok ? [] : parsed.issues).map((issue) => ({
    path: issue.path,
    label: labelAt(issue.path),
    words: issue.code === 'missing' ? IS_MISSING : `: ${issueWords(issue)}`,
  }));
  const issues = [...unread, ...refused];
  return issues.filter(({ label }, i) => issues.findIndex((other) => other.label === label) === i);
}

/** How a typed entry was understood, where that says more than the text itself. */
export function understood({ typed }: JobHistory, path: JobPath): string | null {
  const entry = typed[path];
  if (entry === undefined) return null;
  const reading = readField(path, entry.text, entry.unit);
  return reading.ok && reading.understood !== entry.text.trim() ? reading.understood : null;
}
