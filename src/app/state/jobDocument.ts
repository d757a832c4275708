import { migrate } from '../../core/job/migrate.ts';

/** A job document as it stands while it is edited: it may be incomplete or wrong, so nothing is known of its inside. */
export type JobDocument = Readonly<Record<string, unknown>>;

/** One change of a document. `value` undefined takes the field out, so that its default applies. */
export interface Patch {
  /** Dotted path from the top of the document, as `leather.outside.min_mm`. */
  readonly path: string;
  readonly value: unknown;
}

const isRecord = (value: unknown): value is JobDocument =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value at a dotted path, or undefined where the document does not reach that far. */
export function valueAt(root: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((value, key) => (isRecord(value) ? value[key] : undefined), root);
}

/** The document with its patches applied in order; parts that no patch touches are shared with the original. */
export function patched(document: JobDocument, patches: readonly Patch[]): JobDocument {
  return patches.reduce((result, { path, value }) => withValue(result, path.split('.'), value), document);
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

/** Brings a document of an earlier version to the current one, so that its fields stand where the form looks for them. */
export function inCurrentVersion(document: JobDocument): JobDocument {
  const migrated = migrate(document);
  // What cannot be brought further stays as it is, and is told of as any job that does not parse.
  return migrated.ok ? (migrated.document as JobDocument) : document;
}
