import { describe, expect, test } from 'vitest';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { briefReport, designReport, tableReport } from '../../../src/core/report/designReport.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { radians } from '../../../src/core/units/radians.ts';
import { designOf, fitted, shortBy } from './madeUp.ts';

const design = designOf({ leather: { outside: { min_mm: 1.5, max_mm: 2 }, lining: { min_mm: 0.8, max_mm: 0.8 } } });

describe('the report document', () => {
  const thick = { ...shortBy(2), foreEdge: { front: mm(-0.5), back: mm(-1.5) }, head: mm(0.7), tail: mm(0.9) };
  const written = () => designReport(fitted(design, { thick }));

  test('writes up the fit at each weight, lengths in mm and angles in degrees', () => {
    const report = written();
    expect(report.fit.thick).toEqual({
      thickness_mm: 2,
      foreEdge: { front_mm: -0.5, back_mm: -1.5 },
      spare: { pushedHome: { front_mm: 0, back_mm: 0 }, toOneSide_mm: 0 },
      head_mm: 0.7,
      tail_mm: 0.9,
      closed: {
        closes: false,
        slack_mm: -2,
        staysOpen_deg: expect.closeTo(90 / Math.PI, 9),
        gape_mm: 12,
        goesIn: true,
      },
      flat: { slack_mm: 5, boardTravel_mm: 0.5, opensTo_deg: expect.closeTo(180, 9) },
      pockets: { depth_mm: 60, held_mm: 50, loadingAngle_deg: expect.closeTo(180 / Math.PI, 9), loads: true },
    });
    expect([report.fit.thin.thickness_mm, report.fit.nominal.thickness_mm]).toEqual([1.5, 1.75]);
    expect(report.fit.thin.closed.closes).toBe(true);
  });

  test('writes a cover that even the flat book does not go into as open by 180 degrees', () => {
    const none = designReport(fitted(design, { thick: { ...shortBy(9), staysOpen: null, opensTo: null } }));
    expect(none.fit.thick.closed.staysOpen_deg).toBeCloseTo(180, 9);
    expect(none.fit.thick.flat.opensTo_deg).toBeNull();
    const part = designReport(fitted(design, { thick: { opensTo: radians(Math.PI / 2) } }));
    expect(part.fit.thick.flat.opensTo_deg).toBeCloseTo(90, 9);
  });

  test('writes up the pieces and the parts of each allowance, which add up to its total', () => {
    const { pieces, needs } = design;
    const { outside, pocket, lining } = pieces;
    const report = written();
    expect(report.pattern).toEqual({
      outside: { width_mm: outside.width, height_mm: outside.height },
      pocket: { width_mm: pocket.width, height_mm: pocket.height, count: 2 },
      lining: { width_mm: lining!.width, height_mm: lining!.height },
    });
    expect(designReport(designOf()).pattern.lining).toBeNull();
    expect(report.wrap).toEqual({ closed_mm: needs.nominal.closed.length, flat_mm: needs.nominal.flat.length });
    for (const edge of ['foreEdge', 'head', 'tail'] as const) {
      const { total_mm, parts } = report.allowances[edge];
      expect(parts.map(({ name }) => name)).toEqual(pieces.allowances[edge].parts.map(({ name }) => name));
      expect(total_mm).toBe(pieces.allowances[edge].total);
      expect(parts.reduce((sum, { length_mm }) => sum + length_mm, 0)).toBeCloseTo(total_mm, 9);
    }
  });

  test('in brief is the same but for its budgets', () => {
    const { doubt, ...rest } = written();
    const brief = briefReport(fitted(design, { thick }));
    expect(brief).toEqual({ ...rest, doubt: { share: doubt.share, chance: doubt.chance } });
  });

  test('for a table is the same but for the sentences of its checks, in both units', () => {
    for (const units of ['mm', 'in'] as const) {
      for (const width of [null, 300, 420]) {
        const of = designOf({ work: { units }, pattern: { outsideWidth_mm: width } });
        const unsaid = ({ id, verdict }: { id: string; verdict: string }) => ({ id, verdict });
        const [brief, table] = [briefReport(of), tableReport(of)];
        expect({ ...table, checks: table.checks.map(unsaid) }).toEqual({ ...brief, checks: brief.checks.map(unsaid) });
      }
    }
  });

  test('has the worst verdict of its rows, in the words of the first row that fails', () => {
    const { width, height } = designOf().pieces.outside;
    const cut = (wider: number, higher = 0, rest: Partial<JobInput> = {}) =>
      designReport(
        designOf({ pattern: { outsideWidth_mm: width + wider, outsideHeight_mm: height + higher }, ...rest }),
      );
    expect(cut(-8)).toMatchObject({ verdict: 'fails', state: 'too small' });
    expect(cut(0, 0, { pockets: { depth_mm: 20 } })).toMatchObject({ verdict: 'fails', state: 'too shallow' });
    expect(cut(-1.5)).toMatchObject({ verdict: 'tight', state: 'close fit' });
    expect(cut(0, 12)).toMatchObject({ verdict: 'loose', state: 'too loose' });
    expect(cut(0)).toMatchObject({ verdict: 'fits', state: 'fits' });
  });
});
