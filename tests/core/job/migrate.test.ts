import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { jobSchema } from '../../../src/core/job/jobSchema.ts';
import { JOB_MIGRATIONS, type Migration, migrate } from '../../../src/core/job/migrate.ts';
import { openJob } from '../../../src/core/job/openJob.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { fullRangeDocument } from '../../fullRangeJob.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
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

  test('of version 1 or 2 keeps pockets that cover half of the board, unless it says how much', () => {
    const pocketsOf = (version: number, pockets: unknown): unknown => {
      const opened = openJob({ ...nth(RECORDED_VERSIONS, version - 1).document, pockets });
      return opened.ok ? [opened.document.pockets, opened.job.pockets.share] : opened.issues.map(({ path }) => path);
    };
    for (const version of [1, 2]) {
      expect(pocketsOf(version, undefined)).toEqual([{ share: 0.5 }, 0.5]);
      // A depth that is given counts; once it is taken out, it is half of the board again.
      expect(pocketsOf(version, { depth_mm: 70 })).toEqual([{ depth_mm: 70, share: 0.5 }, 0.5]);
      expect(pocketsOf(version, { share: 0.6 })).toEqual([{ share: 0.6 }, 0.6]);
      for (const wrong of [null, 7, []]) expect(pocketsOf(version, wrong)).toEqual(['pockets']);
    }
    expect(pocketsOf(3, undefined)).toEqual([undefined, 2 / 3]);
  });

  test('says where a document is wrong', () => {
    expect(openJob({ format: 'coverwright-job', version: 4 })).toMatchObject({ issues: [{ path: 'version' }] });
    const opened = openJob({ format: 'coverwright-job', version: 1 });
    expect(!opened.ok && opened.issues.map(({ path }) => path)).toEqual(['book', 'leather']);
    expect(openJob('x').ok).toBe(false);
  });
});

describe('a job of an earlier version has the same pieces as ever', () => {
  /**
   * Jobs of versions 1 and 2, drawn at random, and what the last edition with version 2 cut them to, mm: width and height of
   * the outside, of a pocket and of the lining (0 without one), depth of the pockets. No later edition may rewrite them.
   */
  const CUT = readFileSync(join(import.meta.dirname, 'versions', 'pieces.txt'), 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as { document: { version: number }; cut: number[] });

  const cutOf = (document: unknown): number[] => {
    const { outside, pocket, lining, pocketDepth } = coverDesign(soundJob(document)).pieces;
    const sizes = [outside, pocket, lining ?? { width: 0, height: 0 }];
    return [...sizes.flatMap(({ width, height }) => [width, height]), pocketDepth];
  };

  test.each([1, 2])('as those recorded in version %d', (version) => {
    const recorded = CUT.filter(({ document }) => document.version === version);
    expect(recorded).toHaveLength(30);
    for (const { document, cut } of recorded)
      cutOf(document).forEach((size, i) => {
        expect(size).toBeCloseTo(nth(cut, i), 3);
      });
  });

  test('as the current job that takes half of the board, where no depth is given', () => {
    let isOther = 0;
    checkLaw(
      fc.property(fc.oneof(jobDocument, fullRangeDocument), fc.constantFrom(1, 2), (drawn, version) => {
        // Its ease is the same in every version.
        const document = { ...drawn, ease: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 } };
        fc.pre(parseJob({ ...document, version }).ok);
        const before = cutOf({ ...document, version });
        const pockets = document.pockets as object;
        expect(cutOf({ ...document, version: 3, pockets: { ...pockets, share: 0.5 } })).toEqual(before);
        if (cutOf({ ...document, version: 3 }).join() !== before.join()) isOther++;
      }),
      { cost: 4 },
    );
    expect(isOther).toBeGreaterThan(10);
  });
});
