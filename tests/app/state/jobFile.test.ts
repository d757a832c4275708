import { expect, test } from 'vitest';
import tideLedgerFile from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { openJobFile } from '../../../src/app/state/openJobFile.ts';
import { MAX_JOB_CHARACTERS } from '../../../src/core/job/parseJob.ts';

const tideLedger = { ...tideLedgerFile, version: 3, pockets: { share: 0.5 } };

test('a chosen file opens as written; one that cannot be read, or is far too large, is refused at (file)', async () => {
  expect(await openJobFile(new Blob([JSON.stringify(tideLedger)]))).toEqual({ document: tideLedger });
  const gone = { size: 7, text: () => Promise.reject(new DOMException('gone', 'NotReadableError')) };
  const huge = { size: 5 * MAX_JOB_CHARACTERS, text: () => Promise.reject(new Error('it was read')) };
  expect(await openJobFile(gone as unknown as Blob)).toMatchObject({
    issues: [{ code: 'unreadable', path: '(file)' }],
  });
  expect(await openJobFile(huge as unknown as Blob)).toMatchObject({ issues: [{ code: 'too_large', path: '(file)' }] });
});
