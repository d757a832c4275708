import { isRecord } from '../job/jobDocument.ts';
import { type JobIssue, jobIssue, jobIssues } from '../job/jobIssue.ts';
import { type Migration, migrate } from '../job/migrate.ts';
import { LEATHER_FORMAT, type StockLeather, stockLeatherSchema } from './stockSchema.ts';

/** The steps from version 1 of the document on. */
const LEATHER_MIGRATIONS: readonly Migration[] = [];

/** A leather from outside, with every default filled in. */
export type OpenedLeather =
  | { readonly ok: true; readonly document: StockLeather }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/**
 * Opens a leather document of any version.
 * @param value anything read from JSON
 * @returns the leather, or every issue found; never throws
 */
export function openLeather(value: unknown): OpenedLeather {
  const format = isRecord(value) ? value.format : undefined;
  if (isRecord(value) && format !== undefined && format !== LEATHER_FORMAT)
    return refused(
      jobIssue(
        'choice',
        'format',
        JSON.stringify(format).slice(0, 80),
        `"${LEATHER_FORMAT}"`,
        'choose a file of leathers',
      ),
    );
  const migrated = migrate(value, LEATHER_MIGRATIONS);
  if (!migrated.ok) return refused(migrated.issue);
  const result = stockLeatherSchema.safeParse(migrated.document);
  return result.success
    ? { ok: true, document: result.data }
    : { ok: false, issues: jobIssues(result.error, migrated.document, 'leather') };
}

const refused = (issue: JobIssue): OpenedLeather => ({ ok: false, issues: [issue] });
