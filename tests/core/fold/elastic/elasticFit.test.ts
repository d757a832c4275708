import { describe, expect, test } from 'vitest';
import { elasticOverRange, fitReport } from '../../../../src/core/fitReport.ts';
import { coverDesign } from '../../../../src/core/fold/coverDesign.ts';
import { createElasticSolvers, elasticFit } from '../../../../src/core/fold/elastic/elasticFit.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import { designReport } from '../../../../src/core/report/designReport.ts';
import { reportSchema } from '../../../../src/core/report/reportSchema.ts';
import { withStrip } from '../../../../src/core/report/withStrip.ts';
import { soundJob } from '../../../jobArbitrary.ts';

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
      return elasticFit(coverDesign({ ...job, leather: { ...job.leather, outside } }), 'nominal', solvers).creased;
    });
    for (const { status } of openings) expect(status).toBe('converged');
    const [fresh, half, set] = openings.map(({ opening }) => opening) as [number, number, number];
    expect(half).toBeLessThanOrEqual(fresh);
    expect(set).toBeLessThanOrEqual(half);
    const [freshForce, , setForce] = openings.map(({ closingForce }) => closingForce) as [number, number, number];
    expect(setForce).toBeLessThan(freshForce);
  });

  test('gives forces in proportion to the stiffness, and a shape that does not depend on it', () => {
    const { job } = jobs[0]!;
    const at = (modulus_MPa: number) => {
      const outside = { ...job.leather.outside, modulus_MPa, creaseSet: 0 };
      return elasticFit(coverDesign({ ...job, leather: { ...job.leather, outside } }), 'nominal', solvers);
    };
    const [soft, stiff] = [at(40), at(80)];
    expect(stiff.newCover.closedMoment / soft.newCover.closedMoment).toBeCloseTo(2, 2);
    expect(stiff.closed.spineBow).toBeCloseTo(soft.closed.spineBow, 3);
  });
});

describe('the report', () => {
  test('carries the strip when it was solved, obeys its schema, and says how far the cover springs', () => {
    const report = fitReport(jobs[1]!.job, { solvers });
    expect(reportSchema.safeParse(JSON.parse(JSON.stringify(report))).error).toBeUndefined();
    expect(report.fit.thick.strip?.status).toBe('converged');
    expect(report.checks.find(({ id }) => id === 'springsOpen')?.message).toMatch(/new cover.+creased damp.+60 MPa/);
  });

  test('keeps to the closed form, and says so, where the strip did not settle', () => {
    const { job } = jobs[0]!;
    const design = coverDesign(job);
    const solved = elasticOverRange(design, solvers);
    const failed = { ...solved.thick, creased: { ...solved.thick.creased, status: 'stalled' as const } };
    const report = withStrip(designReport(design), design, { ...solved, thick: failed });
    expect(report.checks.find(({ id }) => id === 'springsOpen')?.message).toContain('found no answer');
    expect(report.fit.thick.strip?.releasedOpening_deg).toBeNull();
    expect(report.fit.thick.closed).toEqual(fitReport(job).fit.thick.closed);
  });
});
