import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { jobSchema } from '../../../src/core/job/jobSchema.ts';
import { JOB_MIGRATIONS, type Migration, migrate } from '../../../src/core/job/migrate.ts';
import { openJob } from '../../../src/core/job/openJob.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';
import { RECORDED_VERSIONS } from './recordedVersions.ts';

/** A made-up chain, 1 -> 2 -> 3: a field renamed, then moved into an object. The job document has no such history. */
const rename: Migration = ({ breadth, ...rest }) => ({ ...rest, width: breadth });
const nest: Migration = ({ width, ...rest }) => ({ ...rest, book: { width: width as number } });
const CHAIN = [rename, nest];

describe('migration', () => {
  test('the schema reads the version at which the chain ends', () => {
    expect(jobSchema.shape.version.def.values).toEqual([JOB_MIGRATIONS.length + 1]);
  });

  test.each([[{ version: 1, breadth: 165 }], [{ version: 2, width: 165 }], [{ version: 3, book: { width: 165 } }]])(
    'every earlier version becomes the same current document: %j',
    (document) => {
      expect(migrate(document, CHAIN)).toEqual({ ok: true, document: { version: 3, book: { width: 165 } } });
    },
  );

  test('a step that forgets the version, or writes a wrong one, does not stop the chain', () => {
    const forgetful: Migration = ({ version: _, ...rest }) => rest;
    const wrong: Migration = (document) => ({ ...document, version: 7 });
    expect(migrate({ version: 1, a: 1 }, [forgetful, wrong])).toEqual({ ok: true, document: { version: 3, a: 1 } });
  });

  test('the document handed in is not changed', () => {
    const document = Object.freeze({ version: 1, breadth: 165 });
    migrate(document, CHAIN);
    expect(document).toEqual({ version: 1, breadth: 165 });
  });

  test('migrating twice is migrating once', () => {
    const once = migrate({ version: 1, breadth: 165 }, CHAIN);
    expect(once.ok && migrate(once.document, CHAIN)).toEqual(once);
  });

  test.each([[4], [99], [0], [-1]])('version %d is an issue at "version"', (version) => {
    const migrated = migrate({ version }, CHAIN);
    expect(migrated).toMatchObject({
      ok: false,
      issue: { code: 'choice', path: 'version', got: String(version), allowed: '1 to 3' },
    });
  });

  test('a step that stumbles over a damaged document gives an issue, not a throw', () => {
    const strict: Migration = (document) => ({ ...document, name: (document.name as string).trim() });
    expect(migrate({ version: 1, name: 42 }, [strict])).toMatchObject({ ok: false, issue: { path: 'version' } });
  });

  test('anything at all comes back or is refused, without a throw', () => {
    checkLaw(
      fc.property(fc.anything(), (value) => {
        const migrated = migrate(value, CHAIN);
        if (!migrated.ok) expect(migrated.issue.path).toBe('version');
      }),
      { cost: 0.1 },
    );
  });
});

describe('opening a job', () => {
  test.each(RECORDED_VERSIONS)('recorded in version $version gives the same cover as ever', ({ version, document }) => {
    expect(document.version).toBe(version);
    const opened = openJob(document);
    if (!opened.ok) throw new Error(opened.issues.map(({ message }) => message).join('; '));
    expect(opened.document.version).toBe(JOB_MIGRATIONS.length + 1);
    const { book, leather, seam } = opened.job;
    expect([book.width_mm, book.height_mm, book.thickness_mm]).toEqual([167, 240, 28]);
    expect(leather.outside).toMatchObject({ min_mm: 1.5875, max_mm: 1.984375, modulus_MPa: 60 });
    expect(seam).toMatchObject({ method: 'lacing', style: 'double loop', pitch_mm: 4.76 });
  });

  test.each(EXAMPLE_JOBS.map(({ id, document }) => [id, document]))('keeps %s as it was written', (_id, document) => {
    const opened = openJob(document);
    expect(opened.ok && opened.document).toEqual(document);
  });

  test('of version 1 writes its ease of 1 mm and drops the strain limit of 45 % that was written out', () => {
    const job = (ease: object | undefined, strainLimit?: number) => {
      const { document } = nth(RECORDED_VERSIONS, 0);
      const { outside } = document.leather as { outside: object };
      const opened = openJob({ ...document, ease, leather: { outside: { ...outside, strainLimit } } });
      if (!opened.ok) throw new Error(opened.issues.map(({ message }) => message).join('; '));
      return opened.job;
    };
    expect(job(undefined).ease).toMatchObject({ foreEdge_mm: 1, head_mm: 1, tail_mm: 1, share: 0.95 });
    expect(job({ head_mm: 2 }).ease).toMatchObject({ foreEdge_mm: 1, head_mm: 2, tail_mm: 1 });
    expect(job({ head_mm: 2 }).making).toMatchObject({ state: 'dry', changeAlong: null });
    expect(job(undefined, 0.45).leather.outside.strainLimit).toBeNull();
    expect(job(undefined, 0.4).leather.outside.strainLimit).toBe(0.4);
  });

  test('says where a document is wrong', () => {
    expect(openJob({ format: 'coverwright-job', version: 3 })).toMatchObject({ issues: [{ path: 'version' }] });
    const opened = openJob({ format: 'coverwright-job', version: 1 });
    expect(!opened.ok && opened.issues.map(({ path }) => path)).toEqual(['book', 'leather']);
    expect(openJob('x').ok).toBe(false);
  });
});
