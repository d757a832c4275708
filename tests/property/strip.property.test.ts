import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bookOutline, symmetricOpening } from '../../src/core/book/bookOutline.ts';
import { pathLength, tautPath } from '../../src/core/book/tautPath.ts';
import { type CoverDesign, coverDesign } from '../../src/core/fold/coverDesign.ts';
import { createElasticSolvers, elasticFit } from '../../src/core/fold/elastic/elasticFit.ts';
import { createSeatSolver, seatStrip } from '../../src/core/fold/elastic/seatStrip.ts';
import type { SectionInput } from '../../src/core/fold/elastic/sectionInput.ts';
import { sectionInputAt } from '../../src/core/fold/elastic/sectionInputAt.ts';
import { type StripSection, solveSection } from '../../src/core/fold/elastic/solveSection.ts';
import { stretchTake } from '../../src/core/fold/stretch.ts';
import type { JobInput } from '../../src/core/job/jobSchema.ts';
import { parseJob } from '../../src/core/job/parseJob.ts';
import { RANGE_POINTS, type RangePoint } from '../../src/core/leather/leatherModel.ts';
import { stripScale } from '../../src/core/strip/stripScale.ts';
import { fullRangeDocument } from '../fullRangeJob.ts';
import { jobDocument, soundJob } from '../jobArbitrary.ts';
import { checkLaw, lawCases, mostOf } from '../laws.ts';
import { nth } from '../nth.ts';

/** Releasing a cover takes some fifty solves, so fewer are released. */
const JOBS = lawCases();
const RELEASED = lawCases(20);
const FUZZED = lawCases(8);

const solvers = createElasticSolvers();
const solver = solvers.section;
const STATUSES = ['converged', 'stalled', 'iterationCap', 'contactOpen', 'looped', 'notFinite', 'badInput'];

/** A job whose outside is cut wider or narrower than the tool would, in leather at one end of its range, at one opening. */
const posedDraw = fc.record({
  document: jobDocument,
  point: fc.constantFrom(...RANGE_POINTS),
  /** Hundredths of a millimetre. */
  wider: fc.integer({ min: -300, max: 1200 }),
  more: fc.integer({ min: 1, max: 300 }),
  /** Per mille of the way from the least opening that the wrap allows to the largest; two in five at the least. */
  way: fc.integer({ min: -667, max: 1000 }),
});

interface PosedCover {
  readonly design: CoverDesign;
  readonly point: RangePoint;
  readonly opening: number;
}

function posedCover({ document, point, wider, way }: JobDraw): PosedCover {
  const design = wideDesign(document, wider / 100);
  const { staysOpen, opensTo } = design.fits[point];
  const least = staysOpen ?? Math.PI;
  return { design, point, opening: least + (Math.max(0, way) / 1000) * Math.max(0, (opensTo ?? Math.PI) - least) };
}

type JobDraw = typeof posedDraw extends fc.Arbitrary<infer T> ? T : never;

function wideDesign(document: JobInput, wider: number): CoverDesign {
  const width = coverDesign(soundJob(document)).pieces.outside.width + wider;
  return coverDesign(soundJob({ ...document, pattern: { outsideWidth_mm: width, rounding_mm: 0 } }));
}

/** Largest distance between a section and its mirror image in the book's middle plane, mm. */
function asymmetry({ section }: StripSection): number {
  let worst = 0;
  for (let i = 0; i < section.length; i += 2) {
    const [x, y] = [nth(section, section.length - 2 - i), nth(section, section.length - 1 - i)];
    worst = Math.max(worst, Math.abs(nth(section, i) - x), Math.abs(nth(section, i + 1) + y));
  }
  return worst;
}

/**
 * Energy of the closed form's own shape as a strip of 200 segments, N mm: the taut path, stretched where it is short, and
 * what is left over lying flat on the boards. A sharp corner would take infinite energy; turned over one edge h of the
 * strip it takes EI A^2 / 2h. Null where the path bridges: there the closed form leaves boards that the strip is held to.
 */
function closedFormEnergy({ design, point, opening }: PosedCover, input: SectionInput): number | null {
  const { book } = design.needs[point];
  const { pieces } = tautPath(bookOutline(book, symmetricOpening(opening)));
  if (pieces.some(({ zone }) => zone === 'bridge')) return null;
  const { thickness: t, modulus, height } = input;
  const flesh = input.offset - book.edgeRadius;
  const spare = input.length - pathLength(pieces, flesh + input.neutral * t);
  const free = pathLength(pieces, flesh + t / 2) - input.held.front - input.held.back + Math.max(0, spare);
  const edge = free / solver.settings.segments;
  const bending = pieces.reduce((sum, piece) => {
    if (piece.kind === 'line') return sum;
    return sum + piece.angle ** 2 / (2 * Math.max(edge, piece.angle * (piece.radius + flesh + t / 2)));
  }, 0);
  return modulus * height * ((bending * t ** 3) / 12 + (t * Math.min(0, spare) ** 2) / (2 * free));
}

describe('the section of any cover, posed', () => {
  const tally: Record<string, number> = {};
  let asymmetric = 0;
  let compared = 0;

  test('stays out of the book, in balance, symmetric, at less energy than the closed form; more leather, more slack', () => {
    checkLaw(
      fc.property(fc.noShrink(posedDraw), (draw) => {
        const cover = posedCover(draw);
        const input = sectionInputAt(cover.design, cover.point, cover.opening);
        const section = solveSection(input, solver);
        tally[section.status] = (tally[section.status] ?? 0) + 1;
        if (section.status !== 'converged') return;

        expect(section.contactGap).toBeLessThanOrEqual(1e-3);
        const unit = stripScale(input.scale, input.thickness, input.height, input.modulus);
        expect(section.residual).toBeLessThanOrEqual(1.001 * solver.settings.residual * unit.force);

        const closed = closedFormEnergy(cover, input);
        if (closed !== null) {
          compared++;
          expect(section.energy).toBeLessThanOrEqual(closed * (1 + 1e-6) + 1e-9);
        }

        // Leather with room at a fore-edge slides without friction; where that lowers its energy it does so to one side.
        if (asymmetry(section) > 0.01) {
          asymmetric++;
          const { front, back } = section.foreEdgeGap;
          expect(front + back).toBeGreaterThan(0);
          const centred = solveSection(
            { ...input, gap: { front: (front + back) / 2, back: (front + back) / 2 } },
            solver,
          );
          if (centred.status === 'converged')
            expect(section.energy).toBeLessThanOrEqual(centred.energy * (1 + 1e-3) + 1e-9);
        }

        const longer = solveSection({ ...input, length: input.length + draw.more / 100 }, solver);
        if (longer.status === 'converged') expect(longer.slack).toBeGreaterThanOrEqual(section.slack - 1e-9);
      }),
      { cases: JOBS },
    );
  });

  test('is found for at least 99 jobs in 100, and is symmetric for at least 95', () => {
    console.info(
      `posed sections: ${JSON.stringify(tally)}, ${asymmetric} slid to one side, ${compared} compared with the closed form`,
    );
    expect(tally.converged).toBeGreaterThanOrEqual(0.99 * JOBS);
    expect(asymmetric).toBeLessThanOrEqual(0.05 * JOBS);
    expect(compared).toBeGreaterThanOrEqual(JOBS / 2);
  });
});

describe('a cover let go', () => {
  test('never stands farther open creased than new', () => {
    let released = 0;
    checkLaw(
      fc.property(fc.noShrink(posedDraw), (draw) => {
        const { design, point } = posedCover(draw);
        const { newCover, creased, pressedDay } = elasticFit(design, point, solvers).rest;
        if (newCover.status !== 'converged' || creased.status !== 'converged') return;
        released++;
        for (const { least, opening, most } of [newCover, creased, pressedDay]) {
          expect(least.opening).toBeLessThanOrEqual(opening);
          expect(opening).toBeLessThanOrEqual(most.opening);
        }
        if (pressedDay.status === 'converged') expect(pressedDay.opening).toBeLessThanOrEqual(creased.opening + 2e-3);
        expect(creased.opening).toBeLessThanOrEqual(newCover.opening + 2e-3);
        expect(creased.closedMoment).toBeLessThanOrEqual(newCover.closedMoment * (1 + 1e-6) + 1e-6);
      }),
      { cases: RELEASED },
    );
    console.info(`released: ${released} of ${RELEASED} found`);
    expect(released).toBeGreaterThanOrEqual(0.8 * RELEASED);
  });
});

/** Paths of all numbers in a result that are not finite. */
function notFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} ${value}`];
  if (ArrayBuffer.isView(value) || Array.isArray(value)) {
    return Array.from(value as ArrayLike<unknown>).flatMap((v, i) => notFinite(v, `${path}[${i}]`));
  }
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, v]) => notFinite(v, `${path}.${key}`));
}

describe('a job at the ends of its ranges', () => {
  test('ends every solve with a status and finite numbers', () => {
    const seats = createSeatSolver();
    const tally: Record<string, number> = {};
    let accepted = 0;
    const ends = (result: { status: string }, name: string): void => {
      expect(STATUSES).toContain(result.status);
      expect(notFinite(result, name)).toEqual([]);
      tally[`${name} ${result.status}`] = (tally[`${name} ${result.status}`] ?? 0) + 1;
    };
    checkLaw(
      fc.property(
        fc.noShrink(fullRangeDocument),
        fc.constantFrom(...RANGE_POINTS),
        fc.integer({ min: 0, max: 1000 }),
        fc.integer({ min: 0, max: 19 }),
        (document, point, opening, dice) => {
          const parsed = parseJob(JSON.parse(JSON.stringify(document)));
          if (!parsed.ok) return;
          accepted++;
          const design = coverDesign(parsed.job);
          const needs = design.needs[point];
          const section = solveSection(sectionInputAt(design, point, (opening / 1000) * 1.9 * Math.PI), solver);
          ends(section, 'section');
          expect(notFinite(stretchTake(design, point))).toEqual([]);
          if (dice === 0) {
            const { closed, rest } = elasticFit(design, point, solvers);
            ends(closed, 'closed');
            ends(rest.newCover, 'new');
            ends(rest.creased, 'creased');
            ends(rest.pressedDay, 'pressed');
          }
          if (dice <= 5) {
            for (const edge of ['headTail', 'foreEdge'] as const) {
              const seat = seatStrip(parsed.job, needs, edge, { press: 1 + opening, creased: dice % 2 === 1 }, seats);
              if (seat) ends(seat, edge);
            }
          }
        },
      ),
      { cases: FUZZED },
    );
    console.info(`full ranges: ${accepted} of ${FUZZED} jobs accepted; ${JSON.stringify(tally)}`);
    expect(accepted).toBeGreaterThanOrEqual(FUZZED - mostOf(0.3, FUZZED));
  });
});
