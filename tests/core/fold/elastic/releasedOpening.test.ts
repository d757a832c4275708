import { describe, expect, it } from 'vitest';
import { releasedOpening } from '../../../../src/core/fold/elastic/releasedOpening.ts';
import { solveSection } from '../../../../src/core/fold/elastic/solveSection.ts';
import { growOutline } from '../../../../src/core/strip/obstacle.ts';
import { createStripSolver, solveStrip } from '../../../../src/core/strip/solveStrip.ts';
import { stripSettings } from '../../../../src/core/strip/stripSettings.ts';
import { nth } from '../../../nth.ts';
import { LEDGER, sectionOf } from './sampleSections.ts';

const solver = createStripSolver();
const SLACK = 2;
const closed = solveSection(sectionOf(LEDGER, 0, SLACK), solver);

const release = (set: number, weight: number, slack = SLACK) =>
  releasedOpening(
    {
      sectionAt: (opening) => ({
        ...sectionOf(LEDGER, opening, slack),
        crease: { angles: closed.angles, set },
      }),
      closingMoment: (opening) => (weight * LEDGER.width * Math.cos(opening / 2)) / 2,
      most: Math.PI,
      lever: LEDGER.width,
    },
    solver,
  );

describe('boards let go', () => {
  it('spring open less the more the crease is set', () => {
    const openings = [0, 0.4, 0.7, 0.9].map((set) => release(set, 2));
    for (const { status } of openings) expect(status).toBe('converged');
    openings.slice(1).forEach(({ opening, closedMoment }, i) => {
      expect(opening).toBeLessThan(nth(openings, i).opening);
      expect(closedMoment).toBeLessThan(nth(openings, i).closedMoment);
    });
  });

  it('rest where leather and weight are in balance', () => {
    const { opening } = release(0.7, 2);
    const energyAt = (angle: number) =>
      solveSection({ ...sectionOf(LEDGER, angle, SLACK), crease: { angles: closed.angles, set: 0.7 } }, solver).energy;
    const leather = (energyAt(opening - 0.01) - energyAt(opening + 0.01)) / 0.02;
    const weight = LEDGER.width * Math.cos(opening / 2);
    expect(Math.abs(leather / weight - 1)).toBeLessThan(0.02);
  });

  it('stay shut under a weight the leather cannot lift, and need no force', () => {
    const { opening, closingForce, closedMoment } = release(0.9, 60);
    expect(opening).toBe(0);
    expect(closingForce).toBe(0);
    expect(closedMoment).toBeGreaterThan(0);
  });

  it('take at the fore-edge what weight leaves over to be held shut', () => {
    const { closedMoment, closingForce } = release(0.4, 2);
    expect(closingForce).toBeCloseTo(closedMoment / LEDGER.width - 1, 9);
  });

  it('report the fault of a section that cannot be solved', () => {
    const result = releasedOpening(
      { sectionAt: () => ({ ...sectionOf(LEDGER, 0, 0), thickness: -1 }), closingMoment: () => 0, most: 1, lever: 1 },
      solver,
    );
    expect(result.status).toBe('badInput');
    expect(result.message).toContain('thickness');
    expect(result.opening).toBe(0);
  });
});

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
