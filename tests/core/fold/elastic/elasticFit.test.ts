import { describe, expect, test } from 'vitest';
import { elasticOverRange, fitReport } from '../../../../src/core/fitReport.ts';
import { coverDesign } from '../../../../src/core/fold/coverDesign.ts';
import { createElasticSolvers, elasticFit } from '../../../../src/core/fold/elastic/elasticFit.ts';
import { sectionInputAt } from '../../../../src/core/fold/elastic/sectionInputAt.ts';
import { solveSection } from '../../../../src/core/fold/elastic/solveSection.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import { designReport } from '../../../../src/core/report/designReport.ts';
import { reportSchema } from '../../../../src/core/report/reportSchema.ts';
import { withStrip } from '../../../../src/core/report/withStrip.ts';
import { createStripSolver } from '../../../../src/core/strip/solveStrip.ts';
import { soundJob } from '../../../jobArbitrary.ts';
import { nth } from '../../../nth.ts';

const solvers = createElasticSolvers();
const jobs = EXAMPLE_JOBS.map(({ id, document }) => ({ id, job: soundJob(document) }));

describe('the strip round a demo book', () => {
  test.each(jobs)('settles, stays outside the book and uses the length it was cut: $id', ({ job }) => {
    const design = coverDesign(job);
    const { closed } = elasticFit(design, 'nominal', solvers);
    expect(closed.status).toBe('converged');
    expect(closed.contactGap).toBeLessThan(1e-3);
    // Frictionless leather slides to its seats, so that all the spare wrap stands over spine and boards.
    const spare = closed.slack + closed.foreEdgeGap.front + closed.foreEdgeGap.back;
    expect(Math.abs(spare - design.fits.nominal.closedSlack)).toBeLessThan(0.6);
  });

  test.each(jobs)('springs open less, and less hard, the more its crease is set: $id', ({ job }) => {
    const openings = [0, 0.5, 0.9].map((creaseSet) => {
      const outside = { ...job.leather.outside, creaseSet };
      return elasticFit(coverDesign({ ...job, leather: { ...job.leather, outside } }), 'nominal', solvers).rest.creased;
    });
    for (const { status } of openings) expect(status).toBe('converged');
    const [fresh, half, set] = openings.map(({ opening }) => opening) as [number, number, number];
    expect(half).toBeLessThanOrEqual(fresh);
    expect(set).toBeLessThanOrEqual(half);
    const [freshForce, , setForce] = openings.map(({ most }) => most.force) as [number, number, number];
    expect(setForce).toBeLessThan(freshForce);
  });

  test('gives forces in proportion to the stiffness, and a shape that does not depend on it', () => {
    const { job } = nth(jobs, 0);
    const at = (modulus_MPa: number) => {
      const outside = { ...job.leather.outside, modulus_MPa, creaseSet: 0 };
      return elasticFit(coverDesign({ ...job, leather: { ...job.leather, outside } }), 'nominal', solvers);
    };
    const [soft, stiff] = [at(40), at(80)];
    expect(stiff.rest.newCover.closedMoment / soft.rest.newCover.closedMoment).toBeCloseTo(2, 2);
    expect(stiff.closed.spineBow).toBeCloseTo(soft.closed.spineBow, 3);
  });
});

describe('the report', () => {
  test('carries the strip when it was solved, obeys its schema, and says how far the cover springs', () => {
    const report = fitReport(nth(jobs, 1).job, { solvers });
    expect(reportSchema.safeParse(JSON.parse(JSON.stringify(report))).error).toBeUndefined();
    expect(report.fit.thick.strip?.status).toBe('converged');
    expect(report.checks.find(({ id }) => id === 'springsOpen')?.message).toMatch(
      /new cover.+creased it.+pressed for a day/,
    );
  });

  test('keeps to the closed form, and says so, where the strip did not settle', () => {
    const { job } = nth(jobs, 0);
    const design = coverDesign(job);
    const solved = elasticOverRange(design, solvers);
    const creased = { ...solved.thick.rest.creased, status: 'stalled' as const };
    const failed = { ...solved.thick, rest: { ...solved.thick.rest, creased } };
    const report = withStrip(designReport(design), design, { ...solved, thick: failed });
    expect(report.checks.find(({ id }) => id === 'springsOpen')?.message).toContain('found no answer');
    expect(report.fit.thick.strip?.releasedOpening_deg).toBeNull();
    expect(report.fit.thick.closed).toEqual(fitReport(job).fit.thick.closed);
  });
});

describe('thick leather round a nearly flat back', () => {
  test('throws no loop at any length: energy falls as it grows longer', () => {
    // Coarse strips of this cover throw one at some lengths and not at others.
    const job = soundJob({
      format: 'coverwright-job',
      version: 1,
      book: { width_mm: 200.577, height_mm: 90, thickness_mm: 28.615, spine: { shape: 'rounded', rise_mm: 0.5723 } },
      leather: {
        outside: { min_mm: 3.5, max_mm: 3.5, neutral: 0.46732, bendRatio: 0.05 },
        lining: { min_mm: 1.30431, max_mm: 1.30431, neutral: 0.4, bendRatio: 0.05 },
      },
    });
    const input = sectionInputAt(coverDesign(job), 'nominal', 0);
    const solver = createStripSolver();
    const energies = Array.from({ length: 80 }, (_, i) => {
      const section = solveSection({ ...input, length: input.length - 3 + 0.05 * i }, solver);
      expect(section.status).toBe('converged');
      return section.energy;
    });
    energies.slice(1).forEach((energy, i) => {
      expect(energy).toBeLessThan(nth(energies, i));
    });
  });
});
