import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverDesign } from '../../../../src/core/fold/coverDesign.ts';
import { pressedCrease } from '../../../../src/core/fold/elastic/pressedCrease.ts';
import { type ReleasedLeather, releasedOpening } from '../../../../src/core/fold/elastic/releasedOpening.ts';
import type { SectionInput } from '../../../../src/core/fold/elastic/sectionInput.ts';
import { sectionInputAt } from '../../../../src/core/fold/elastic/sectionInputAt.ts';
import { solveSection } from '../../../../src/core/fold/elastic/solveSection.ts';
import { growOutline } from '../../../../src/core/strip/obstacle.ts';
import { createStripSolver, solveStrip } from '../../../../src/core/strip/solveStrip.ts';
import { stripSettings } from '../../../../src/core/strip/stripSettings.ts';
import { jobDocument, soundJob } from '../../../jobArbitrary.ts';
import { checkLaw, lawCases } from '../../../laws.ts';
import { nth } from '../../../nth.ts';
import { LEDGER, sectionOf } from './sampleSections.ts';

const solver = createStripSolver();
const SLACK = 2;
const closed = solveSection(sectionOf(LEDGER, 0, SLACK), solver);

/** The ledger let go, creased to the closed shape of new leather; `weight` N lies on it. */
const release = (set: number, weight: number, leathers: readonly ReleasedLeather[] = [OWN]) =>
  releasedOpening(
    {
      sectionAt: (opening) => ({ ...sectionOf(LEDGER, opening, SLACK), crease: { angles: closed.angles, set } }),
      closingMoment: (opening) => (weight * LEDGER.width * Math.cos(opening / 2)) / 2,
      most: Math.PI,
      lever: LEDGER.width,
      slip: 0.5,
    },
    leathers,
    solver,
  );
const OWN: ReleasedLeather = { stiffness: 1, friction: 0 };
const restOf = (set: number, weight: number, leather = OWN) => nth(release(set, weight, [leather]).rests, 0);

describe('boards let go', () => {
  it('spring open less the more the crease is set', () => {
    const found = [0, 0.4, 0.7, 0.9].map((set) => release(set, 2));
    for (const { status } of found) expect(status).toBe('converged');
    found.slice(1).forEach(({ rests, closedMoment }, i) => {
      expect(nth(rests, 0).opening).toBeLessThan(nth(nth(found, i).rests, 0).opening);
      expect(closedMoment).toBeLessThan(nth(found, i).closedMoment);
    });
  });

  it('rest where leather and weight are in balance, by the energy of leather whose middle keeps its length', () => {
    const sectionAt = (opening: number) => ({
      ...sectionOf(LEDGER, opening, SLACK),
      neutral: 0.5,
      crease: { angles: closed.angles, set: 0.7 },
    });
    const closingMoment = (opening: number) => LEDGER.width * Math.cos(opening / 2);
    const input = { sectionAt, closingMoment, most: Math.PI, lever: 1, slip: 0 };
    const { opening } = nth(releasedOpening(input, [OWN], solver).rests, 0);
    const energyAt = (angle: number) => solveSection(sectionAt(angle), solver).energy;
    const leather = (energyAt(opening - 0.01) - energyAt(opening + 0.01)) / 0.02;
    expect(Math.abs(leather / closingMoment(opening) - 1)).toBeLessThan(0.005);
  });

  it('stay shut under a weight the leather cannot lift, and need no force', () => {
    expect(restOf(0.9, 60)).toEqual({ opening: 0, force: 0, isFound: true });
    expect(release(0.9, 60).closedMoment).toBeGreaterThan(0);
  });

  it('take at the fore-edge what weight leaves over to be held shut', () => {
    const { closedMoment, rests } = release(0.4, 2);
    expect(nth(rests, 0).force).toBeCloseTo(closedMoment / LEDGER.width - 1, 9);
  });

  it('rest as if solved for a stiffness of their own, and open less the softer the leather and the rougher the book', () => {
    const asked = [0.3, 1, 3].map((stiffness) => ({ stiffness, friction: 0 }));
    const { rests } = release(0.7, 2, asked);
    rests.forEach(({ opening, force }, i) => {
      // Leather three times as stiff under a weight is leather of one stiffness under a third of it.
      const { stiffness } = nth(asked, i);
      const alone = restOf(0.7, 2 / stiffness);
      expect(Math.abs(opening - alone.opening)).toBeLessThan(5e-3);
      expect(force).toBeCloseTo(stiffness * alone.force, 9);
    });
    expect(nth(rests, 0).opening).toBeLessThan(nth(rests, 1).opening);
    expect(nth(rests, 1).opening).toBeLessThan(nth(rests, 2).opening);
    expect(restOf(0, 3, { stiffness: 0.3, friction: 0.6 }).opening).toBeLessThan(
      restOf(0, 3, { stiffness: 0.3, friction: 0 }).opening,
    );
  });

  it('report the fault of a section that cannot be solved', () => {
    const result = releasedOpening(
      {
        sectionAt: () => ({ ...sectionOf(LEDGER, 0, 0), thickness: -1 }),
        closingMoment: () => 0,
        most: 1,
        lever: 1,
        slip: 0,
      },
      [OWN],
      solver,
    );
    expect(result.status).toBe('badInput');
    expect(result.message).toContain('thickness');
    expect(result.rests).toEqual([]);
  });

  it('keep what was found where sections farther open have no shape, and say from where on the others rest', () => {
    const lost = 0.5;
    const found = releasedOpening(
      {
        sectionAt: (opening) => ({
          ...sectionOf(LEDGER, opening, SLACK),
          crease: { angles: closed.angles, set: 0.7 },
          thickness: opening < lost ? 1.8 : -1,
        }),
        closingMoment: () => 5 * LEDGER.width,
        most: Math.PI,
        lever: LEDGER.width,
        slip: 0,
      },
      [
        { stiffness: 1e-3, friction: 0 },
        { stiffness: 1e6, friction: 0 },
      ],
      solver,
    );
    expect(found.status).toBe('badInput');
    expect(found.rests.map(({ isFound }) => isFound)).toEqual([true, false]);
    expect(nth(found.rests, 0).opening).toBe(0);
    expect(nth(found.rests, 1).opening).toBeGreaterThan(0);
    expect(nth(found.rests, 1).opening).toBeLessThan(lost);
  });
});

describe('the first resting place', () => {
  /** Where it is by 200 even steps over the way. */
  function byBruteForce(
    sectionAt: (opening: number) => SectionInput,
    closing: (opening: number) => number,
    most: number,
  ) {
    for (let k = 0; k <= 200; k++) {
      const opening = (most * k) / 200;
      const section = solveSection(sectionAt(opening), solver);
      if (section.status !== 'converged') return null;
      if (section.moment <= closing(opening)) return opening;
    }
    return most;
  }

  it('is found where what is left over touches nothing for a few degrees only', () => {
    // A bump of weight makes a dip of 0.1 rad in what is left over, deep enough to rest in by a hundredth.
    const sectionAt = (opening: number) => sectionOf(LEDGER, opening, SLACK);
    const bump = 0.45;
    const momentAt = (opening: number) => solveSection(sectionAt(opening), solver).moment;
    const lift = 1.01 * momentAt(bump) - 100;
    const closingMoment = (opening: number) => 100 + lift * Math.max(0, 1 - ((opening - bump) / 0.3) ** 2);
    const found = releasedOpening({ sectionAt, closingMoment, most: Math.PI, lever: 1, slip: 0 }, [OWN], solver);
    const brute = byBruteForce(sectionAt, closingMoment, Math.PI);
    expect(brute).toBeLessThan(0.6);
    expect(Math.abs(nth(found.rests, 0).opening - (brute ?? 0))).toBeLessThan(0.04);
  });

  it('is that of even steps of a degree and a half, for random covers', () => {
    let compared = 0;
    checkLaw(
      fc.property(
        fc.noShrink(jobDocument),
        fc.constantFrom(0, 0.5, 0.8),
        fc.constantFrom(0.1, 0.3, 1),
        (document, set, share) => {
          const design = coverDesign(soundJob(document));
          const least = design.fits.nominal.staysOpen ?? Math.PI;
          const most = Math.max(0.05, (design.fits.nominal.opensTo ?? Math.PI) - least);
          const angles = pressedCrease(design, 'nominal', least);
          const sectionAt = (opening: number) => sectionInputAt(design, 'nominal', least + opening, { angles, set });
          const weight = share * solveSection(sectionAt(0), solver).moment;
          const closingMoment = (opening: number) => weight * Math.max(0, Math.cos(opening));
          const { status, rests } = releasedOpening(
            { sectionAt, closingMoment, most, lever: 1, slip: 0 },
            [OWN],
            solver,
          );
          const brute = byBruteForce(sectionAt, closingMoment, most);
          if (status !== 'converged' || brute === null) return;
          compared++;
          expect(Math.abs(nth(rests, 0).opening - brute)).toBeLessThan(most / 200 + 0.01);
        },
      ),
      { cases: COVERS },
    );
    expect(compared).toBeGreaterThanOrEqual(0.9 * COVERS);
  });
});
const COVERS = lawCases(20);

describe('the moment that the energy gives', () => {
  it('is the moment about the hinge of all forces on the board', () => {
    const hinge = [0, 0.5] as const;
    const at = (opening: number) => {
      const [c, s] = [Math.cos(opening), Math.sin(opening)];
      const place = [0.5 * c, hinge[1] + 0.5 * s] as const;
      return solveStrip(
        solver,
        {
          length: 2.25,
          stretchStiffness: 3000,
          start: { kind: 'clamp', x: place[0], y: place[1], angle: Math.PI + opening },
          end: { kind: 'clamp', x: 0.5, y: -0.5, angle: 0 },
          obstacle: growOutline([2 * c, 0.5 + 2 * s, 0, 0.5, 0, -0.5, 2, -0.5], false, 0, stripSettings.facetTurn),
        },
        [...place, -0.05, 0.55, -0.25, 0.2, -0.25, -0.2, -0.05, -0.55, 0.5, -0.5],
      );
    };
    const opening = 0.1;
    const [here, before, beyond] = [at(opening), at(opening - 1e-3), at(opening + 1e-3)];
    for (const { status } of [here, before, beyond]) expect(status).toBe('converged');
    const x = 0.5 * Math.cos(opening);
    const y = 0.5 * Math.sin(opening);
    let moment = -(here.start.moment + x * here.start.fy - y * here.start.fx);
    for (const c of here.contacts) {
      if (c.kind === 'edge' && c.index === 0) moment -= (c.x - hinge[0]) * c.fy - (c.y - hinge[1]) * c.fx;
    }
    expect(moment).toBeGreaterThan(0);
    expect((before.energy - beyond.energy) / 2e-3 / moment).toBeCloseTo(1, 3);
  });
});
