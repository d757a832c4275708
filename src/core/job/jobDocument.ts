import type { JobPath } from './jobPath.ts';

/** A job document as it stands while it is edited: it may be incomplete or wrong, so nothing is known of its inside. */
export type JobDocument = Readonly<Record<string, unknown>>;

/** A value to put at a path of a document; undefined takes the field out, so that its default applies. */
export interface Patch<Value = unknown> {
  readonly path: JobPath;
  readonly value: Value;
}

/** Whether a value is an object with fields, not a list. */
export const isRecord = (value: unknown): value is JobDocument =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value at a dotted path, or undefined where the document does not reach that far. */
export function valueAt(root: unknown, path: JobPath): unknown {
  return keysOf(path).reduce<unknown>((value, key) => (isRecord(value) ? value[key] : undefined), root);
}

/** The keys of a path. A doubt has the path of its input as one key, as `doubts`, `book.width_mm`, `u`. */
export function keysOf(path: JobPath): string[] {
  const [, input, key] = /^doubts\.(.+?)(?:\.(u|distribution|from|with))?$/.exec(path) ?? [];
  if (input === undefined) return path.split('.');
  return key === undefined ? ['doubts', input] : ['doubts', input, key];
}

/** The document with its patches applied in order; parts that no patch touches are shared with the original. */
export function patched(document: JobDocument, patches: readonly Patch[]): JobDocument {
  return patches.reduce((result, { path, value }) => withValue(result, keysOf(path), value), document);
}

function withValue(root: JobDocument, [key, ...rest]: string[], value: unknown): JobDocument {
  if (key === undefined) return root;
  if (rest.length > 0) {
    const inner = root[key];
    if (value === undefined && !isRecord(inner)) return root;
    return { ...root, [key]: withValue(isRecord(inner) ? inner : {}, rest, value) };
  }
  if (value !== undefined) return { ...root, [key]: value };
  const { [key]: _removed, ...kept } = root;
  return kept;
}
