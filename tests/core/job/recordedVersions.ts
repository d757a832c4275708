import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { JOB_MIGRATIONS, type JobRecord } from '../../../src/core/job/migrate.ts';

/** A job document as an edition of that version wrote it, which no later edition may rewrite. */
export interface RecordedVersion {
  readonly version: number;
  readonly document: JobRecord;
}

/** One for every version from the first to the current one: whoever adds a step adds the document it starts from. */
export const RECORDED_VERSIONS: readonly RecordedVersion[] = Array.from(
  { length: JOB_MIGRATIONS.length + 1 },
  (_, i) => ({
    version: i + 1,
    document: JSON.parse(readFileSync(join(import.meta.dirname, 'versions', `${i + 1}.json`), 'utf8')) as JobRecord,
  }),
);
