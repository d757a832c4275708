import { describe, expect, test } from 'vitest';
import { type CoverDesign, coverDesign } from '../../../../src/core/fold/coverDesign.ts';
import { createElasticSolvers } from '../../../../src/core/fold/elastic/elasticFit.ts';
import { pressedCrease } from '../../../../src/core/fold/elastic/pressedCrease.ts';
import { sectionInputAt } from '../../../../src/core/fold/elastic/sectionInputAt.ts';
import { solveSection } from '../../../../src/core/fold/elastic/solveSection.ts';
import { spareAsItLies } from '../../../../src/core/fold/elastic/spareAsItLies.ts';
import { spareWrap } from '../../../../src/core/fold/spareWrap.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import { soundJob } from '../../../jobArbitrary.ts';

const { section: solver } = createElasticSolvers();
const designs = EXAMPLE_JOBS.map(({ id, document }) => ({ id, design: coverDesign(soundJob(document)) }));

function lies(design: CoverDesign, set: number, friction: number) {
  const crease = { angles: pressedCrease(design, 'nominal', 0), set };
  const input = sectionInputAt(design, 'nominal', 0, crease);
  const free = solveSection(input, solver);
  const posed = (gap: { front: number; back: number }) => solveSection({ ...input, gap }, solver);
  return { ...spareAsItLies(design, 'nominal', free, crease, solver, friction), free, posed };
}

describe('spare wrap that was pushed home', () => {
  test.each(designs)('goes behind the spine without friction: all of it in new leather: $id', ({ design }) => {
    const { status, least, held } = lies(design, 0, 0);
    expect(status).toBe('converged');
    expect(Math.max(least.front, least.back, held.front, held.back)).toBeLessThan(0.02);
  });

  test.each(designs)('without friction stays only where the strip rests with ends that slide: $id', ({ design }) => {
    const { held, free, posed } = lies(design, 0.8, 0);
    const there = posed(held);
    expect(there.status).toBe('converged');
    // A balance of the same energy, less than a hundredth of what it takes to push it home.
    const home = posed(spareWrap(design, 'nominal').pushedHome);
    expect(there.energy - free.energy).toBeLessThan(0.01 * (home.energy - free.energy));
  });

  test.each(designs)('is held the more the rougher the book, and never beyond home: $id', ({ design }) => {
    const { pushedHome } = spareWrap(design, 'nominal');
    const gaps = [0, 0.25, 0.55, 1.5].map((friction) => lies(design, 0.8, friction).held.front);
    gaps.slice(1).forEach((gap, i) => {
      expect(gap).toBeGreaterThanOrEqual(gaps[i] ?? 0);
    });
    expect(gaps[0]).toBeLessThan(pushedHome.front);
    expect(gaps[3]).toBe(pushedHome.front);
  });

  test('rests where what pulls on an end is what friction holds: mu times the forces normal to the leather', () => {
    for (const { design } of designs) {
      const friction = 0.3;
      const { held, posed } = lies(design, 0.8, friction);
      const share = held.front / spareWrap(design, 'nominal').pushedHome.front;
      expect(share).toBeLessThan(1);
      const stays = posed(held);
      expect(stays.seatForce.front).toBeLessThanOrEqual(friction * (stays.press / 2 + stays.heldForce.front) + 0.02);
      const farther = posed({ front: held.front * (1 + 0.04 / share), back: held.back * (1 + 0.04 / share) });
      expect(farther.seatForce.front).toBeGreaterThan(friction * (farther.press / 2 + farther.heldForce.front));
    }
  });

  test('is nothing in a cover that is short, and not told of a strip that did not settle', () => {
    const { document } = EXAMPLE_JOBS[0];
    const short = coverDesign(soundJob({ ...document, pattern: { outsideWidth_mm: 370 } }));
    const crease = { angles: pressedCrease(short, 'nominal', 0), set: 0.8 };
    const free = solveSection(sectionInputAt(short, 'nominal', short.fits.nominal.staysOpen ?? 0, crease), solver);
    expect(spareAsItLies(short, 'nominal', free, crease, solver).held).toEqual(free.foreEdgeGap);
    const failed = { ...free, status: 'stalled' as const };
    expect(spareAsItLies(short, 'nominal', failed, crease, solver).status).toBe('stalled');
  });
});
