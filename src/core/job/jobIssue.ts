import type * as z from 'zod/mini';
import type { RuleParams } from './rule.ts';

/** One thing wrong with a job, as data: where, what was got, what is allowed, what to do. */
export interface JobIssue {
  readonly code:
    | 'missing'
    | 'type'
    | 'range'
    | 'choice'
    | 'unknown_field'
    | 'rule'
    | 'empty'
    | 'unreadable'
    | 'not_json'
    | 'too_large';
  /** Dotted path from the top of the document, as `leather.outside.min_mm`. */
  readonly path: string;
  readonly got: string;
  readonly allowed: string;
  readonly remedy: string;
  /** The four above as one line. */
  readonly message: string;
  /** The whole as a sentence for the screen, where the rule has one. */
  readonly words?: string | undefined;
}

export function jobIssue(code: JobIssue['code'], path: string, got: string, allowed: string, remedy: string): JobIssue {
  return { code, path, got, allowed, remedy, message: `got ${got}; allowed: ${allowed}; ${remedy}` };
}

/** The value in as few words as an error line can bear. */
function shown(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'string') return JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}...` : value);
  return String(value);
}

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    root,
  );
}

const dotted = (path: readonly PropertyKey[]): string =>
  path.length === 0 ? '(document)' : path.map(String).join('.');

const TYPE_NAMES: Record<string, string> = {
  number: 'a number',
  object: 'an object',
  string: 'a text',
  int: 'a whole number',
};

function fromZod(issue: z.core.$ZodIssue, root: unknown, noun: string): JobIssue[] {
  const path = dotted(issue.path);
  const value = valueAt(root, issue.path);
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) =>
        jobIssue(
          'unknown_field',
          dotted([...issue.path, key.slice(0, 80)]),
          `a field that a ${noun} does not have`,
          `the fields of the ${noun} document`,
          'check the spelling, or take the field out',
        ),
      );
    case 'invalid_type': {
      const allowed = TYPE_NAMES[issue.expected] ?? issue.expected;
      if (value === undefined) return [jobIssue('missing', path, 'nothing', allowed, 'add this field')];
      const remedy =
        issue.expected === 'number' && typeof value === 'string'
          ? 'write the number without quotes, in the unit that the name ends with'
          : `give ${allowed}`;
      return [jobIssue('type', path, shown(value), allowed, remedy)];
    }
    case 'too_small':
    case 'too_big': {
      const text = issue.code === 'too_small' ? `${issue.minimum} or more` : `${issue.maximum} or less`;
      if (typeof value === 'string')
        return [
          jobIssue(
            'range',
            path,
            `${value.length} characters`,
            text,
            value === '' ? 'write a text' : 'shorten the text',
          ),
        ];
      return [jobIssue('range', path, shown(value), text, 'check the measure and its unit')];
    }
    case 'invalid_value': {
      const allowed = issue.values.map((choice) => JSON.stringify(choice)).join(', ');
      if (value === undefined) return [jobIssue('missing', path, 'nothing', allowed, 'add this field')];
      return [jobIssue('choice', path, shown(value), allowed, 'choose one of these')];
    }
    case 'invalid_union':
      // A union by kind carries its kinds as its message.
      return [jobIssue('choice', path, shown(value), issue.message, 'choose one of these')];
    case 'custom': {
      const rule = issue.params as RuleParams | undefined;
      if (rule)
        return [
          {
            ...jobIssue('rule', path, shown(rule.got), rule.allowed, rule.remedy),
            ...(rule.words && { words: rule.words }),
          },
        ];
      return [jobIssue('rule', path, shown(value), issue.message, 'correct this value')];
    }
    default:
      return [jobIssue('type', path, shown(value), issue.message, 'correct this value')];
  }
}

/**
 * Turns zod's error into the project's issues.
 * @param root the value that was parsed, to quote what was got
 * @param noun what the document is called
 */
export function jobIssues(error: z.core.$ZodError, root: unknown, noun = 'job'): JobIssue[] {
  return error.issues.flatMap((issue) => fromZod(issue, root, noun));
}
