import { describe, expect, test } from 'vitest';
import type { ElasticFit } from '../../../src/core/fold/elastic/elasticFit.ts';
import type { ReleasedOpening } from '../../../src/core/fold/elastic/releasedOpening.ts';
import type { SeatEdge, SeatStrip } from '../../../src/core/fold/elastic/seatStrip.ts';
import { RANGE_POINTS, type RangePoint } from '../../../src/core/leather/leatherModel.ts';
import { seats } from '../../../src/core/report/checks/seats.ts';
import { springsOpen } from '../../../src/core/report/checks/springsOpen.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import type { StripContext } from '../../../src/core/report/stripContext.ts';
import { withStrip } from '../../../src/core/report/withStrip.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { contextOf, designOf, fitted, shortBy } from './madeUp.ts';

const released: ReleasedOpening = {
  status: 'converged',
  message: '',
  opening: 0.5,
  closedMoment: 0,
  closingForce: 3,
  solves: 1,
};

/** A board edge that rests `needed` mm from the seam, where the pattern counts on 2 mm. */
const seat = (edge: SeatEdge, needed = 2.3): SeatStrip => ({
  edge,
  status: 'converged',
  message: '',
  iterations: 1,
  residual: 0,
  press: 0.2,
  seat: mm(2),
  needed: mm(needed),
  pocketLength: mm(3),
  spread: mm(0),
  closed: { seat: mm(1.5), needed: mm(2), pocketLength: mm(3) },
  outside: new Float64Array(),
  pocket: new Float64Array(),
});

const solved: ElasticFit = {
  closed: {
    status: 'converged',
    message: '',
    iterations: 7,
    residual: 1e-9,
    contactGap: 0.001,
    section: new Float64Array([1, 2, 3, 4, 5, 6]),
    angles: new Float64Array(),
    spineBow: 0.4,
    faceBulge: 0.3,
    foreEdgeGap: { front: 2, back: 2 },
    seatForce: { front: 0, back: 0 },
    slack: 4,
    insideRadius: 1.2,
    outerStrain: 0.4,
    energy: 5,
  },
  newCover: { ...released, opening: 1, closingForce: 6 },
  creased: released,
  seats: { foreEdge: seat('foreEdge'), headTail: seat('headTail') },
  stretch: null,
};

const elasticOf = (fits: Partial<Record<RangePoint, Partial<ElasticFit>>>): StripContext['elastic'] => {
  const [thin, nominal, thick] = RANGE_POINTS.map((point) => ({ ...solved, ...fits[point] }));
  return { thin: thin!, nominal: nominal!, thick: thick! };
};

const design = fitted(designOf({ leather: { outside: { min_mm: 1.5, max_mm: 2, modulus_MPa: 30 } } }));
const context = (fits: Partial<Record<RangePoint, Partial<ElasticFit>>> = {}, made = design): StripContext => ({
  ...contextOf(made),
  elastic: elasticOf(fits),
});
const failed = { status: 'stalled' } as const;

describe('how a cover springs open', () => {
  test('is told by the weight that springs most, new and creased, with the force that holds it shut', () => {
    const more = { creased: { ...released, opening: 0.7, closingForce: 4.26 } };
    expect(springsOpen(context({ nominal: more }))).toEqual({
      verdict: 'none',
      message:
        'Let go, a new cover stands open 58 degrees; creased damp it stands open 41 degrees, and 4.3 N at the fore-edge hold it shut (leather taken as 30 MPa stiff).',
      remedy: 'Case the leather, fold it round the book and leave it under weights to dry; or skive the folds.',
    });
  });

  test('names no force for one that stays shut, and gives no advice up to 30 degrees', () => {
    const shut = { newCover: { ...released, opening: Math.PI }, creased: { ...released, opening: 0, closingForce: 0 } };
    expect(springsOpen(context({ thin: shut, nominal: shut, thick: shut }))).toMatchObject({
      message: 'Let go, a new cover springs right open; creased damp it stays shut (leather taken as 30 MPa stiff).',
      remedy: '',
    });
    const at = (opening: number) => springsOpen(context({ thick: { creased: { ...released, opening } } })).remedy;
    expect(at(Math.PI / 6)).toBe('');
    expect(at(Math.PI / 6 + 1e-6)).not.toBe('');
    const almost = (opening: number) => springsOpen(context({ thick: { creased: { ...released, opening } } })).message;
    expect(almost(0.99 * Math.PI)).toContain('creased damp it stands open 179 degrees');
    expect(almost(0.991 * Math.PI)).toContain('creased damp it springs right open');
  });

  test('is not known where any of it was not solved', () => {
    const unknown = { verdict: 'unknown', message: 'The springy model found no answer for this cover.' };
    expect(springsOpen(context({ thick: { newCover: { ...released, ...failed } } }))).toEqual(unknown);
    expect(springsOpen(context({ thin: { creased: { ...released, ...failed } } }))).toEqual(unknown);
  });
});

describe('where the board edges come to rest', () => {
  test('is told at the edge where most is lacking, with the gap that is there', () => {
    // Gaps: 4 / 2 mm at the fore-edge, the smaller of head and tail at these.
    expect(seats(context())).toEqual({
      verdict: 'none',
      message:
        'Creased and pressed by hand, this leather needs 2.3 mm from seam to board at the head and tail, 0.3 mm more than the pattern allows; 1.5 mm of gap is there.',
      remedy: '',
    });
    const far = { seats: { foreEdge: seat('foreEdge', 3), headTail: seat('headTail') } };
    expect(seats(context({ nominal: far })).message).toContain(
      'needs 3.0 mm from seam to board at the fore-edge, 1.0 mm more',
    );
    const tall = fitted(design, { thin: { head: mm(3), tail: mm(-0.4) } });
    expect(seats(context({}, tall)).message).toMatch(
      / 0\.3 mm more than the pattern allows; 0\.4 mm of overrun is there\.$/,
    );
    const bare = fitted(design, { thin: { head: mm(0), tail: mm(3) } });
    expect(seats(context({}, bare)).message).toMatch(/; 0\.0 mm of gap is there\.$/);
  });

  test('asks for more ease only where the gap does not take what the leather needs', () => {
    const remedy = 'Case the leather and press the folds along the seam, or allow more ease there.';
    const headTail = (needed: number) =>
      seats(context({ thick: { seats: { foreEdge: null, headTail: seat('headTail', needed) } } }));
    expect(headTail(3.5)).toMatchObject({ remedy: '' });
    expect(headTail(3.6)).toMatchObject({ remedy });
    const less = { seats: { foreEdge: null, headTail: seat('headTail', 1.5) } };
    expect(seats(context({ thin: less, nominal: less, thick: less })).message).toContain(
      ', 0.5 mm less than the pattern',
    );
    const even = { seats: { foreEdge: null, headTail: seat('headTail', 2) } };
    expect(seats(context({ thin: even, nominal: even, thick: even })).message).toContain(
      ', 0.0 mm more than the pattern',
    );
  });

  test('is not known where any seam was not solved, or none is there', () => {
    const unknown = {
      verdict: 'unknown',
      message: 'The springy model found no answer at every seam; the quick model stands alone there.',
    };
    const one = { seats: { foreEdge: { ...seat('foreEdge'), ...failed }, headTail: seat('headTail') } };
    expect(seats(context({ thick: one }))).toEqual(unknown);
    const none = { seats: { foreEdge: null, headTail: null } };
    expect(seats(context({ thin: none, nominal: none, thick: none }))).toEqual(unknown);
  });
});

describe('a report with the strip', () => {
  const report = (fits: Partial<Record<RangePoint, Partial<ElasticFit>>>, made = design) =>
    withStrip(designReport(made), made, elasticOf(fits));

  test('writes up every figure, angles in degrees, and keeps the rows that were there', () => {
    const found = report({ thick: { stretch: { ...stretch, takes: true } } });
    expect(found.fit.thick.strip).toEqual({
      status: 'converged',
      iterations: 7,
      residual: 1e-9,
      contactGap_mm: 0.001,
      spineBow_mm: 0.4,
      faceBulge_mm: 0.3,
      releasedOpening_deg: expect.closeTo(90 / Math.PI, 9),
      newOpening_deg: expect.closeTo(180 / Math.PI, 9),
      closingForce_N: 3,
      newClosingForce_N: 6,
      insideRadius_mm: 1.2,
      seats: {
        foreEdge: { status: 'converged', closedForm_mm: 2, strip_mm: 2.3, press_N_per_mm: 0.2 },
        headTail: { status: 'converged', closedForm_mm: 2, strip_mm: 2.3, press_N_per_mm: 0.2 },
      },
      stretch: { short_mm: 3, pull_N: 40, most_mm: 1.2, takes: true },
      section_mm: [
        [1, 2],
        [3, 4],
        [5, 6],
      ],
    });
    expect(found.fit.thin.strip!.stretch).toBeNull();
    expect(found.fit.nominal.strip).toEqual(found.fit.thin.strip);
    const quick = designReport(design);
    expect(found.checks.slice(0, quick.checks.length)).toEqual(quick.checks);
    expect(found.checks.slice(quick.checks.length).map(({ id, title }) => [id, title])).toEqual([
      ['seats', 'Board edges at the seam'],
      ['springsOpen', 'Staying shut'],
    ]);
  });

  test('leaves out what was not solved, and a fore-edge that is turned', () => {
    const unsolved = { ...released, ...failed };
    const fit = { newCover: unsolved, creased: unsolved, seats: { foreEdge: null, headTail: null } };
    expect(report({ thick: fit }).fit.thick.strip).toMatchObject({
      releasedOpening_deg: null,
      newOpening_deg: null,
      closingForce_N: null,
      newClosingForce_N: null,
      seats: { foreEdge: null, headTail: null },
    });
  });

  test('adds what a firm pull does to the closing row of a cover that is short, and to no other', () => {
    const closing = (takes: boolean, made = fitted(design, { thick: shortBy(2) }), of = stretch) => {
      const { checks } = report({ thick: { stretch: { ...of, takes } } }, made);
      expect(checks.filter(({ message }) => message.includes('pull')).map(({ id }) => id)).toEqual(
        made.fits.thick.closes || made.fits.thick.staysOpen === null ? [] : ['closes'],
      );
      return checks.find(({ id }) => id === 'closes')!.message;
    };
    expect(closing(true)).toMatch(/ apart\. A pull of 40 N would stretch it home, and it would creep back\.$/);
    expect(closing(false)).toMatch(/ apart\. A firm pull takes up no more than 1\.2 mm of it\.$/);
    closing(true, design);
    closing(true, fitted(design, { thick: { ...shortBy(9), staysOpen: null } }));
    const short = fitted(design, { thick: shortBy(2) });
    expect(report({}, short).checks.find(({ id }) => id === 'closes')!.message).toMatch(/ apart\.$/);
  });
});

const stretch = {
  short: mm(3),
  pull: 40,
  most: mm(1.2),
  takes: true,
  strain: 0.01,
  foldStrain: 0.4,
  limitedBy: 'pull',
} as const;
