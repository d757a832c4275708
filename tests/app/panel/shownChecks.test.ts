import { describe, expect, test } from 'vitest';
import { shownChecks } from '../../../src/app/panel/shownChecks.ts';
import { fitReport } from '../../../src/core/fitReport.ts';
import { createElasticSolvers } from '../../../src/core/fold/elastic/elasticFit.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import type { ResultOrigin } from '../../../src/core/words/resultOrigin.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';

const job = soundJob(EXAMPLE_JOBS[0].document);
const settled = fitReport(job, { solvers: createElasticSolvers() });
const changed = fitReport({ ...job, name: 'changed since' });
const asked = (origin: ResultOrigin) => ({ ...changed, origin });
const ids = (checks: readonly { readonly id: string }[]): string[] => checks.map(({ id }) => id).sort();

describe('the rows of the springy model', () => {
  test('neither go nor come while it works: the last answer stays, marked', () => {
    const rows = shownChecks(asked('being worked out'), settled);
    expect(ids(rows)).toEqual(ids(settled.checks));
    const pending = rows.filter(({ origin }) => origin === 'being worked out');
    expect(ids(pending)).toEqual(['seats', 'springsOpen']);
    for (const row of pending)
      expect(row.message).toBe(defined(settled.checks.find(({ id }) => id === row.id)).message);
  });

  test('stand empty before the first answer, and say so when none can be had', () => {
    const first = shownChecks(asked('being worked out'), null);
    expect(ids(first)).toEqual(ids(settled.checks));
    expect(first.filter(({ origin }) => origin === 'being worked out').map(({ message }) => message)).toEqual(['', '']);
    const failed = shownChecks(asked('not known'), settled).filter(({ id }) => id === 'seats' || id === 'springsOpen');
    for (const row of failed) {
      expect(row).toMatchObject({ verdict: 'unknown', origin: 'not known', change: [] });
      expect(row.message).toMatch(/could not be asked/);
    }
  });

  test('are the report’s own once it has answered', () => {
    expect(shownChecks(settled, settled)).toEqual(settled.checks);
  });
});
