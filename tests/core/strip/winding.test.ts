import { describe, expect, it } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { sectionInputAt } from '../../../src/core/fold/elastic/elasticFit.ts';
import { solveSection } from '../../../src/core/fold/elastic/solveSection.ts';
import { createStripSolver } from '../../../src/core/strip/solveStrip.ts';
import { hasLooped, turningAlong } from '../../../src/core/strip/winding.ts';
import { soundJob } from '../../jobArbitrary.ts';

const circle = (turns: number): number[] =>
  Array.from({ length: 202 }, (_, i) => {
    const angle = (turns * 2 * Math.PI * Math.floor(i / 2)) / 100;
    return i % 2 === 0 ? Math.cos(angle) : Math.sin(angle);
  });

describe('the turning of a path', () => {
  it('is the sum of its signed turns, whatever its first direction', () => {
    expect(turningAlong([0, 0, -1, 0, -1, -1, 0, -1])).toBeCloseTo(Math.PI, 12);
    expect(turningAlong([0, 0, 1, 0, 1, 1, 2, 1])).toBeCloseTo(0, 12);
    // One turn fewer than there are points: 99 hundredths of each circle.
    expect(turningAlong(circle(1))).toBeCloseTo(0.99 * 2 * Math.PI, 9);
    expect(turningAlong(circle(-2))).toBeCloseTo(-0.99 * 4 * Math.PI, 9);
  });

  it('passes over points that repeat', () => {
    expect(turningAlong([0, 0, 0, 0, -1, 0, -1, 0, -1, -1])).toBeCloseTo(Math.PI / 2, 12);
  });

  it('tells a loop from a bend', () => {
    expect(hasLooped(Math.PI, Math.PI - 2 * Math.PI)).toBe(true);
    expect(hasLooped(Math.PI, Math.PI + 1)).toBe(false);
  });
});

describe('thick leather round a nearly flat back', () => {
  it('throws no loop at any length: energy falls as it grows longer', () => {
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
      expect(energy).toBeLessThan(energies[i]!);
    });
  });
});
