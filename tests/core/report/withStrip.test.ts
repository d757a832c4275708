import { describe, expect, test } from 'vitest';
import { elasticOverRange, fitReport } from '../../../src/core/fitReport.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { createElasticSolvers, elasticFit } from '../../../src/core/fold/elastic/elasticFit.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import { withStrip } from '../../../src/core/report/withStrip.ts';
import type { StripSolver } from '../../../src/core/strip/solveStrip.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { defined } from '../../defined.ts';
import { job, row } from './lacedLedger.ts';

const solvers = createElasticSolvers();
const design = coverDesign(job());
const quick = designReport(design);
const elastic = elasticOverRange(design, solvers);
const settled = withStrip(quick, design, elastic);

describe('rows that say nothing of the fit', () => {
  test('have no verdict: measures never checked, how it springs, where a springy board edge stops', () => {
    expect(row(settled, 'measures').verdict).toBe('none');
    expect(row(settled, 'springsOpen').verdict).toBe('none');
    expect(row(settled, 'seats').verdict).toBe('none');
  });

  test('are not known where the springy model found no answer, and decide no headline', () => {
    const hasty = ({ settings, levels }: StripSolver) => ({ levels, settings: { ...settings, maxIterations: 1 } });
    const { section, spring, seat } = createElasticSolvers();
    const thick = elasticFit(design, 'thick', { section: hasty(section), spring: hasty(spring), seat: hasty(seat) });
    for (const part of [
      thick.rest.newCover,
      thick.rest.creased,
      defined(thick.seats.foreEdge),
      defined(thick.seats.headTail),
    ])
      expect(part.status).toBe('iterationCap');
    const report = withStrip(quick, design, { ...elastic, thick });
    expect(row(report, 'springsOpen').verdict).toBe('unknown');
    expect(row(report, 'seats').verdict).toBe('unknown');
    expect(report.verdict).toBe(quick.verdict);
    expect(report.headline).toBe(quick.headline);
  });

  test('agree with what the quick model says: one verdict and headline with the springy model and without', () => {
    expect(settled.verdict).toBe(quick.verdict);
    expect(settled.headline).toBe(quick.headline);
    for (const check of quick.checks) expect(row(settled, check.id)).toMatchObject({ verdict: check.verdict });
  });
});

describe('grain at the folds', () => {
  test('is one figure, with the springy model and without, also for covers that do not go on', () => {
    for (const pattern of [{}, { outsideWidth_mm: quick.pattern.outside.width_mm - 30 }]) {
      const closedForm = row(designReport(coverDesign(job({ pattern }))), 'foldStrain');
      const settled = row(fitReport(job({ pattern }), { solvers }), 'foldStrain');
      expect(settled.value).toBe(closedForm.value);
      // (1 - K) / (r/t + K) with K = 2/pi and r = 0.2 t.
      expect(settled.value).toBeCloseTo((1 - 0.6366) / (0.2 + 0.6366), 3);
    }
  });
});

test('a cover into which the boards do not go is not asked how it springs, nor where its board edges stop', () => {
  const solved = fitReport(job({ pattern: { outsideHeight_mm: quick.pattern.outside.height_mm - 20 } }), { solvers });
  for (const id of ['springsOpen', 'seats'])
    expect(row(solved, id)).toMatchObject({
      verdict: 'none',
      state: 'does not apply',
      message: 'The boards do not go in, so this is not asked.',
    });
});

test('the strip’s figures stand under its rows: opening in degrees, seats at the tightest edge, force in newtons', () => {
  const strip = defined(settled.fit.thick.strip);
  const degrees = 180 / Math.PI;
  expect(strip).toMatchObject({
    status: 'converged',
    releasedOpening_deg: expect.closeTo(elastic.thick.rest.creased.opening * degrees, 9),
    newOpening_deg: expect.closeTo(elastic.thick.rest.newCover.opening * degrees, 9),
    closingForce_N: elastic.thick.rest.creased.force,
    newClosingForce_N: elastic.thick.rest.newCover.force,
  });
  expect(strip.section_mm).toHaveLength(elastic.thick.closed.section.length / 2);
  expect(strip.section_mm[3]).toEqual([...elastic.thick.closed.section.subarray(6, 8)]);
  expect(strip.seats.foreEdge).toEqual({
    status: 'converged',
    closedForm_mm: defined(elastic.thick.seats.foreEdge).closed.needed,
    strip_mm: defined(elastic.thick.seats.foreEdge).needed,
    press_N_per_mm: defined(elastic.thick.seats.foreEdge).press,
  });
  expect(defined(settled.fit.thin.strip).releasedOpening_deg).toBe(elastic.thin.rest.creased.opening * degrees);
});

describe('a wrap that is short', () => {
  const pattern = (by: number) => ({ pattern: { outsideWidth_mm: quick.pattern.outside.width_mm - by } });

  const messageOf = (by: number, takes: boolean) => {
    const short = coverDesign(job(pattern(by)));
    const thick = {
      ...elastic.thick,
      stretch: {
        short: mm(3),
        pull: 40,
        most: mm(1.2),
        takes,
        strain: 0.01,
        foldStrain: 0.4,
        limitedBy: 'pull' as const,
      },
    };
    return row(withStrip(designReport(short), short, { ...elastic, thick }), 'closes').message;
  };

  test('says what a firm pull takes up of it', () => {
    expect(messageOf(4, true)).toMatch(/ A pull of 40 N would stretch it home, and it would creep back\.$/);
    expect(messageOf(4, false)).toMatch(/ A firm pull takes up no more than 1\.2 mm of it\.$/);
  });

  test('says nothing of a pull where it closes, or where the boards do not go in', () => {
    for (const by of [0, 60]) expect(messageOf(by, true)).not.toMatch(/pull/);
  });
});
