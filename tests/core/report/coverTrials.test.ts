import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { coverFit, type Fit } from '../../../src/core/fold/coverFit.ts';
import { DOUBT_PATHS } from '../../../src/core/job/doubtSchema.ts';
import { normalDistribution, normalQuantile } from '../../../src/core/math/normal.ts';
import { coverTrials, goesOn, isLoose, trialFits, withTrials } from '../../../src/core/report/coverTrials.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import type { ReportTrials } from '../../../src/core/report/doubtSchema.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';
import { fitted, shortBy } from './madeUp.ts';

const BOOK = { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5 };

/** A cover of which nothing is in doubt but what is named. */
const sureBut = (doubts: object, { book, ...rest }: { book?: object; [part: string]: object | undefined } = {}) =>
  coverDesign(
    soundJob({
      format: 'coverwright-job',
      version: 2,
      book: { ...BOOK, measured: { error_mm: 0 }, ...book },
      leather: { outside: { min_mm: 1.75, max_mm: 1.75 } },
      seam: { method: 'lacing' },
      ease: { foreEdge_mm: 1, head_mm: 2, tail_mm: 2 },
      doubts: { ...Object.fromEntries(DOUBT_PATHS.map((path) => [path, { u: 0 }])), ...doubts },
      ...rest,
    }),
  );
type Rest = Parameters<typeof sureBut>[1];

/** The cover with so much spare wrap closed, and its width off by u as cut. */
function cutWithin(u: number, spare: number, rest: Rest = {}, distribution: 'normal' | 'even' = 'normal') {
  const { width } = sureBut({}, rest).pieces.outside;
  const sized = (outsideWidth_mm: number) => ({ ...rest, pattern: { outsideWidth_mm } });
  const { mean } = sureBut({}, sized(width)).fitDoubt.spare.closed;
  return sureBut({ 'pattern.outsideWidth_mm': { u, distribution } }, sized(width + spare - mean));
}

const trialsOf = (design: ReturnType<typeof sureBut>, draws?: number): ReportTrials =>
  coverTrials(design, designReport(design).doubt, draws === undefined ? {} : { draws });

describe('a trial', () => {
  test('of a cover without any doubt is its fit, whatever its leather does and however it is made', () => {
    for (const rest of [
      {},
      { making: { state: 'cased', changeAcross: -0.02, changeAlong: -0.01 } },
      { making: { state: 'dyed', changeAcross: 0.01, changeAlong: -0.02 }, pockets: { construction: 'turned' } },
      { seating: 'front', leather: { outside: { min_mm: 1.75, max_mm: 1.75 }, pocket: { min_mm: 1, max_mm: 1 } } },
    ]) {
      const design = sureBut({}, rest as never);
      const { nominal } = design.fits;
      const [fit, ...others] = trialFits(design, { draws: 3 });
      expect(others).toEqual([fit, fit]);
      const { pocket, foreEdge, ...flat } = defined(fit);
      for (const [key, value] of Object.entries({ ...flat, ...pocket, ...foreEdge })) {
        const right = { ...nominal, ...nominal.pocket, ...nominal.foreEdge }[key as 'head'];
        expect(value, `${key} of ${JSON.stringify(rest)}`).toEqual(
          typeof right === 'number' ? expect.closeTo(right, 6) : right,
        );
      }
    }
  });

  test('moves with what is cut: width and height, each by its own', () => {
    const design = sureBut({ 'pattern.outsideWidth_mm': { u: 0.5 }, 'pattern.outsideHeight_mm': { u: 0.3 } });
    const { nominal } = design.fits;
    const fits = trialFits(design, { draws: 100 });
    expect(fits).toHaveLength(100);
    // One draw lies in each hundredth of the chance.
    const scores = (read: (fit: Fit) => number): number[] => fits.map(read).toSorted((a, b) => a - b);
    scores(({ closedSlack }) => closedSlack).forEach((slack, k) => {
      const place = 100 * normalDistribution((slack - nominal.closedSlack) / 0.5);
      expect([Math.floor(place + 1e-6), Math.ceil(place - 1e-6)]).toEqual([k, k + 1]);
    });
    scores(({ head, tail }) => head + tail).forEach((height, k) => {
      const place = 100 * normalDistribution((height - nominal.head - nominal.tail) / 0.3);
      expect([Math.floor(place + 1e-6), Math.ceil(place - 1e-6)]).toEqual([k, k + 1]);
    });
  });

  test('takes an error of cutting off where it goes with the measure: with r = 1 two equal ones leave none', () => {
    const design = sureBut(
      {
        'pattern.outsideWidth_mm': { u: 0.5 },
        'book.width_mm': { u: 0.25 },
        'pattern.outsideHeight_mm': { u: 0.3 },
        'book.height_mm': { u: 0.3 },
      },
      {
        correlations: [
          { a: 'pattern.outsideWidth_mm', b: 'book.width_mm', r: 1 },
          { a: 'pattern.outsideHeight_mm', b: 'book.height_mm', r: 1 },
        ],
      },
    );
    const { nominal } = design.fits;
    // Both widths of the book are off by a quarter of a millimetre where the outside is by half.
    for (const { closedSlack, head } of trialFits(design, { draws: 20 })) {
      expect(closedSlack).toBeCloseTo(nominal.closedSlack, 6);
      expect(head).toBeCloseTo(nominal.head, 6);
    }
  });

  test('moves the pocket with the leather that it is marked on', () => {
    const design = sureBut({ 'making.changeAcross': { u: 0.01 } }, { seating: 'spine' as never });
    const { depth } = design.fits.nominal.pocket;
    const width = design.pieces.outside.width;
    for (const { pocket, closedSlack } of trialFits(design, { draws: 20 })) {
      const change = (closedSlack - design.fits.nominal.closedSlack) / width;
      expect(pocket.depth).toBeCloseTo(depth * (1 + change), 9);
    }
  });

  test('is drawn 2,000 times unless asked otherwise, by its seed', () => {
    const design = cutWithin(0.5, 1);
    const first = ({ closedSlack }: Fit): number => closedSlack;
    expect(trialFits(design)).toHaveLength(2000);
    const of = (seed?: number): number[] => trialFits(design, { draws: 20, ...(seed && { seed }) }).map(first);
    expect(of(1)).toEqual(of());
    expect(of(2)).not.toEqual(of());
  });

  test('of a book with a strip round it follows the strip', () => {
    const reading = { 'book.width_mm': { u: 0.5 }, 'book.measured.closedWrap_mm': { u: 0.1 } };
    const measured = { error_mm: 0, closedWrap_mm: 2 * BOOK.width_mm + BOOK.thickness_mm + 1 };
    const [by, without] = [sureBut(reading, { book: { measured } }), sureBut(reading)];
    const spares = trialFits(by, { draws: 1000 }).map(({ closedSlack }) => closedSlack);
    const mean = spares.reduce((sum, spare) => sum + spare, 0) / 1000;
    // Two independent readings of the wrap, 1 mm apart: by ruler to 2 x 0.5 mm, by strip to 0.1.
    const variance = 1 / (1 + 1 / 0.1 ** 2);
    const shift = 1 / (1 + 0.1 ** 2);
    expect(Math.abs(mean - (without.fits.nominal.closedSlack - shift))).toBeLessThan(4 * Math.sqrt(variance / 1000));
    const spread = spares.reduce((sum, spare) => sum + (spare - mean) ** 2, 0) / 999;
    expect(Math.abs(spread / variance - 1)).toBeLessThan(4 * Math.sqrt(2 / 1000));
  });
});

describe('a cover of one fit', () => {
  const fit = fitted(sureBut({})).fits.nominal;
  const with_ = (change: Partial<Fit>): Fit => ({ ...fit, ...change });

  test('goes on where it has room at every edge, closed and flat', () => {
    expect(goesOn(fit)).toBe(true);
    const noise = mm(-1e-10);
    expect(goesOn(with_({ flatSlack: noise, head: noise, tail: noise }))).toBe(true);
    for (const change of [shortBy(1), { flatSlack: mm(-0.1) }, { head: mm(-0.1) }, { tail: mm(-0.1) }])
      expect(goesOn(with_(change)), JSON.stringify(change)).toBe(false);
  });

  test('is loose where one edge is over its loosest gap, at the fore-edge half the spare wrap', () => {
    const job = { loosest: { foreEdge_mm: mm(2), head_mm: mm(1.6), tail_mm: mm(1.7) } };
    expect(isLoose(fit, job)).toBe(false);
    expect(isLoose(with_({ closedSlack: mm(4), head: mm(1.6), tail: mm(1.7) }), job)).toBe(false);
    for (const change of [{ closedSlack: mm(4.1) }, { head: mm(1.61) }, { tail: mm(1.71) }])
      expect(isLoose(with_(change), job), JSON.stringify(change)).toBe(true);
  });
});

describe('trials', () => {
  test('of a normal length have its chance, its doubt and its interval', () => {
    const design = cutWithin(0.5, 0.7);
    const trials = trialsOf(design);
    const { head, tail, flatSlack, pocket } = design.fits.nominal;
    expect(trials.draws).toBe(2000);
    // Draws in strata of equal chance: each share is right within one stratum.
    expect(Math.abs(trials.chance.closes - normalDistribution(0.7 / 0.5))).toBeLessThanOrEqual(1 / 2000);
    for (const [name, mean, u] of [
      ['foreEdge', 0.7, 0.5],
      ['head', head, 0],
      ['tail', tail, 0],
      ['flat', flatSlack, 0.5],
    ] as const) {
      const edge = defined(trials.edges[name]);
      expect(edge.mean_mm, name).toBeCloseTo(mean, 3);
      expect(edge.u_mm, name).toBeCloseTo(u, 2);
      expect(edge.low_mm - edge.mean_mm, name).toBeCloseTo(-1.96 * u, 2);
      expect(edge.high_mm - edge.mean_mm, name).toBeCloseTo(1.96 * u, 2);
    }
    // Boards in the middle lose half of the spare wrap; what the book lacks covers no board more.
    const held = defined(trials.edges.held);
    expect(held.low_mm - pocket.held).toBeCloseTo((-1.96 * 0.5) / 2, 2);
    expect(held.high_mm - pocket.held).toBeCloseTo(0.7 / 2, 2);
    expect(trials.nonLinear).toEqual([]);
  });

  test('count a cover that is too loose as one that does not fit', () => {
    // Over 0 and under 2 x 1.5 mm of spare wrap.
    const loosest = { foreEdge_mm: 1.5 };
    const { chance, differs } = trialsOf(cutWithin(1, 2, { loosest }));
    expect(Math.abs(chance.closes - normalDistribution(2))).toBeLessThanOrEqual(1 / 2000);
    expect(Math.abs(chance.fits - (normalDistribution(1) - normalDistribution(-2)))).toBeLessThanOrEqual(1 / 1000);
    expect(differs).toBe('');
    // Too loose in 69 of 100: the word is the same as by first order.
    expect(trialsOf(cutWithin(1, 3.5, { loosest }))).toMatchObject({ differs: '' });
  });

  test('give the openings at the ends of the interval in degrees', () => {
    const design = cutWithin(0.2, 0.1);
    const { staysOpen_deg: stays, loading_deg: loading } = trialsOf(design);
    const at = (z: number): Fit => {
      const { outside } = design.pieces;
      const made = { ...design.pieces, outside: { ...outside, width: mm(outside.width + z) } };
      return coverFit(design.job, made, design.needs.nominal);
    };
    const [short, long] = [at(0.2 * normalQuantile(0.025)), at(0.2 * normalQuantile(0.975))];
    const degrees = (angle: number): number => (angle * 180) / Math.PI;
    expect(stays[0]).toBe(0);
    expect(stays[1]).toBeGreaterThan(5);
    // A hundredth of a deviation is some tenths of a degree.
    expect(stays[1]).toBeCloseTo(degrees(defined(short.staysOpen)), 0);
    expect(loading[0]).toBeCloseTo(degrees(long.pocket.loadingAngle), 1);
    expect(loading[1]).toBeCloseTo(degrees(short.pocket.loadingAngle), 1);
    expect(trialsOf(cutWithin(0, -300), 2).staysOpen_deg).toEqual([180, 180]);
  });

  test('say where their word is another one, and that both lie close to the threshold where they do', () => {
    const even = (spare: number) => trialsOf(cutWithin(1, spare, {}, 'even')).differs;
    // Even between -sqrt 3 and sqrt 3: (1.62 / sqrt 3 + 1) / 2 = 0.9677 close, where a normal one has Phi(1.62) = 0.9474.
    expect(even(1.62)).toBe(
      'By trials the word would be "fits": it fits in 96 of 100. By the quick reckoning, which the verdict goes by, it fits in 94 of 100.',
    );
    // (1.58 / sqrt 3 + 1) / 2 = 0.9561 and Phi(1.58) = 0.9429.
    expect(even(1.58)).toBe(
      'By trials the word would be "fits": it fits in 95 of 100. By the quick reckoning, which the verdict goes by, it fits in 94 of 100. The two lie close together on either side of a threshold.',
    );
    // 0.9475 and 0.9394; 0.9821 and 0.9525.
    expect([1.55, 1.67].map(even)).toEqual(['', '']);
  });

  test('name a length that the first order misses, and give it their doubt', () => {
    // The dip of a joint is not under 0: half of its draws lie there.
    const design = sureBut(
      { 'book.jointDip_mm': { u: 3 } },
      { book: { jointDip_mm: 0.01, measured: { error_mm: 0 } } },
    );
    const report = designReport(design);
    const { doubt, ...rest } = withTrials(report, design, { draws: 500 });
    const trials = defined(doubt.trials);
    expect(trials.nonLinear).toEqual(['flat']);
    expect(doubt.flat.u_mm).toBe(trials.edges.flat?.u_mm);
    expect(doubt.flat.u_mm / report.doubt.flat.u_mm).toBeGreaterThan(1.1);
    expect(doubt.edges).toEqual(report.doubt.edges);
    expect({ ...rest, doubt: { ...doubt, flat: report.doubt.flat, trials: undefined } }).toEqual({
      ...report,
      doubt: { ...report.doubt, trials: undefined },
    });
    expect(nth(doubt.flat.budget, 0)).toEqual(nth(report.doubt.flat.budget, 0));
  });

  test('do so at each edge by itself', () => {
    // Neither is a rise under 0.
    const spine = { shape: 'rounded', rise_mm: 0.01 };
    const design = sureBut(
      { 'book.spine.rise_mm': { u: 6 }, 'pattern.outsideHeight_mm': { u: 0.5 } },
      { book: { spine, measured: { error_mm: 0 } } },
    );
    const report = designReport(design);
    const { edges, trials } = withTrials(report, design, { draws: 500 }).doubt;
    expect(defined(trials).nonLinear).toEqual(['foreEdge', 'flat']);
    expect(edges.foreEdge).toEqual({ ...report.doubt.edges.foreEdge, u_mm: defined(trials).edges.foreEdge?.u_mm });
    expect([edges.head, edges.tail]).toEqual([report.doubt.edges.head, report.doubt.edges.tail]);
  });
});
