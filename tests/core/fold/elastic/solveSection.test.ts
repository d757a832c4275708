import { describe, expect, it } from 'vitest';
import type { SectionInput } from '../../../../src/core/fold/elastic/sectionInput.ts';
import { type StripSection, solveSection } from '../../../../src/core/fold/elastic/solveSection.ts';
import { createStripSolver } from '../../../../src/core/strip/solveStrip.ts';
import reference from '../../../external/reference-values.json' with { type: 'json' };
import { nth } from '../../../nth.ts';
import { CHOIR, LEDGER, outlineOf, sectionOf } from './sampleSections.ts';

const solver = createStripSolver();

function solved(input: SectionInput): StripSection {
  const section = solveSection(input, solver);
  expect(section.status, section.message).toBe('converged');
  return section;
}

function pathLength(path: Float64Array): number {
  let sum = 0;
  for (let i = 2; i < path.length; i += 2)
    sum += Math.hypot(nth(path, i) - nth(path, i - 2), nth(path, i + 1) - nth(path, i - 1));
  return sum;
}

describe('the section of a cover', () => {
  it.each(reference.blockWrap.rows)(
    'bows as the elastica does: clamps %f behind the spine, slack %f',
    (a, slack, bow) => {
      // Leather thin enough to be next to inextensible; outline and thickness together are one thickness D.
      const [d, t] = [100, 0.1];
      const half = (d - t) / 2;
      const section = solved({
        outline: [2 * d, half, t / 2, half, t / 2, -half, 2 * d, -half],
        offset: 0,
        thickness: t,
        neutral: 0.5,
        length: 2 * 2 * d + d + slack * d,
        held: { front: 2 * d - a * d, back: 2 * d - a * d },
        gap: { front: 0, back: 0 },
        scale: d,
        height: 1,
        modulus: 60,
      });
      // Corners rounded to half the leather add (4 - pi) t/2 of slack, 0.0004 D, which the sharp reference has not.
      expect(Math.abs(section.spineBow / d / bow - 1)).toBeLessThan(5e-3);
    },
  );

  it('is as long as the leather on its neutral line: mid-surface + (K - 1/2) t turning', () => {
    for (const [book, slack] of [
      [LEDGER, 10],
      [CHOIR, 24],
    ] as const) {
      const input = sectionOf(book, 0, slack);
      const section = solved(input);
      expect(section.seatForce.front + section.seatForce.back).toBe(0);
      const { angles } = section;
      const turning = angles.slice(1).reduce((sum, angle, i) => sum + Math.abs(angle - nth(angles, i)), 0);
      const neutral = pathLength(section.section) + (input.neutral - 0.5) * input.thickness * turning;
      // Chords cut their arcs by (turn at a node)^2/24 each, some 0.01 mm in all; the leather is not pulled, so not stretched.
      expect(Math.abs(neutral - input.length)).toBeLessThan(0.02);
    }
  });

  it('bows more and pulls less on its seats the more slack it has', () => {
    const sections = [-1, 0, 2, 4, 8].map((slack) => solved(sectionOf(LEDGER, 0, slack)));
    sections.slice(1).forEach((section, i) => {
      expect(section.spineBow).toBeGreaterThan(nth(sections, i).spineBow);
      expect(section.seatForce.front).toBeLessThanOrEqual(nth(sections, i).seatForce.front);
    });
    expect(nth(sections, 0).slack).toBeLessThan(0);
    expect(nth(sections, 0).seatForce.front).toBeGreaterThan(0);
  });

  it('comes to its seats when it is short, and leaves room at the fore-edges when it lies flat', () => {
    expect(solved(sectionOf(LEDGER, 0, 1)).foreEdgeGap.front).toBeLessThan(1e-3);
    const flat = solved(sectionOf(LEDGER, Math.PI, 1));
    // Flat, the turning is gone: slack 1 and pi K t = 2 t of leather are left over for the two fore-edges.
    expect(flat.foreEdgeGap.front + flat.foreEdgeGap.back).toBeCloseTo(1 + 2 * 1.8, 2);
    expect(flat.spineBow).toBeLessThan(1e-2);
    expect(flat.insideRadius).toBeNull();
  });

  it('keeps a gap that is given', () => {
    const input = sectionOf(LEDGER, 0, 6);
    const kept = solved({ ...input, gap: { front: 2, back: 1 } });
    expect(kept.foreEdgeGap).toEqual({ front: 2, back: 1 });
    expect(kept.spineBow).toBeLessThan(solved(input).spineBow);
    expect(kept.section[0]).toBeCloseTo(LEDGER.width + 2, 9);
    expect(kept.section.at(-2)).toBeCloseTo(LEDGER.width + 1, 9);
  });

  it('does not change shape with the modulus, and its forces are in proportion', () => {
    const input = sectionOf(CHOIR, 0.4, 0);
    const [soft, stiff] = [solved(input), solved({ ...input, modulus: 2 * input.modulus })];
    expect(stiff.section).toEqual(soft.section);
    expect(stiff.energy / soft.energy).toBeCloseTo(2, 12);
    expect(stiff.seatForce.front / soft.seatForce.front).toBeCloseTo(2, 12);
  });

  it('depends on its input alone, not on what was solved before', () => {
    const input = sectionOf(CHOIR, 0.4, 3);
    const first = solved(input);
    solved(sectionOf(LEDGER, 2, 12));
    expect(solved(input)).toEqual(first);
  });

  it('grows with everything else: twice the size is twice the shape', () => {
    const input = sectionOf(LEDGER, 0.3, 4);
    const double = solved({
      ...input,
      outline: Array.from(input.outline, (v) => 2 * v),
      thickness: 2 * input.thickness,
      length: 2 * input.length,
      held: { front: 2 * input.held.front, back: 2 * input.held.back },
      scale: 2 * input.scale,
    });
    const once = solved(input);
    expect(double.spineBow / once.spineBow).toBeCloseTo(2, 9);
    expect(double.outerStrain).toBeCloseTo(once.outerStrain, 9);
  });

  it('changes hands when front and back change places', () => {
    const input = { ...sectionOf(LEDGER, 0.2, 5), held: { front: 100, back: 60 }, gap: { front: 1, back: 2 } };
    const there = solved(input);
    const back = solved({ ...input, held: { front: 60, back: 100 }, gap: { front: 2, back: 1 } });
    const mirrored = back.section.map((_, i, all) =>
      i % 2 === 0 ? nth(all, all.length - 2 - i) : -all[all.length - i]!,
    );
    there.section.forEach((v, i) => {
      expect(Math.abs(v - nth(mirrored, i))).toBeLessThan(1e-3);
    });
  });

  it('lies closer once its crease is set, and not at all tense if the crease is whole and the leather slack', () => {
    const input = sectionOf(LEDGER, 0, 8);
    const fresh = solved(input);
    const energies = [0.3, 0.6, 1].map((set) => solved({ ...input, crease: { angles: fresh.angles, set } }).energy);
    expect(energies[0]).toBeLessThan(fresh.energy);
    expect(energies[1]).toBeLessThan(nth(energies, 0));
    expect(energies[2]).toBeLessThan(1e-4 * fresh.energy);
  });

  it('is the same shape at four times the resolution, to a hundredth of a millimetre', () => {
    const fine = createStripSolver({ ...solver.settings, segments: 800 });
    for (const book of [LEDGER, CHOIR]) {
      const input = sectionOf(book, 0, 1);
      expect(Math.abs(solveSection(input, fine).spineBow - solved(input).spineBow)).toBeLessThan(0.01);
      expect(Math.abs(solveSection(input, fine).faceBulge - solved(input).faceBulge)).toBeLessThan(0.01);
    }
  });

  it('converges at every opening, thickness and slack a cover is likely to meet', () => {
    for (const book of [LEDGER, CHOIR]) {
      for (const opening of [0, 0.3, 1, 2, 2.8, Math.PI, 3.6]) {
        for (const slack of [-1, 0, 3, 10])
          for (const thickness of [1, 2, 3.5]) solved(sectionOf(book, opening, slack, thickness));
      }
    }
  });
});

describe('a cover that no maker would cut', () => {
  it.each([0.2, 1, 3])('two metres too long stands off as a balloon, in leather of %f mm', (thickness) => {
    const { spineBow, faceBulge, contactGap } = solved(sectionOf(LEDGER, 0, 2000, thickness));
    // Both sides of a balloon, and no part of it in the book.
    expect(spineBow).toBeGreaterThan(500);
    expect(faceBulge).toBeGreaterThan(0);
    expect(contactGap).toBeLessThan(1e-4);
  });

  it.each([
    [0.1, 0],
    [0.1, -0.5],
    [0.05, 0],
  ])(
    'in leather of %f mm, drawn taut with %f mm to spare, touches the book to a ten-thousandth',
    (thickness, slack) => {
      const { contactGap } = solved(sectionOf(CHOIR, 0, slack, thickness));
      expect(contactGap).toBeLessThan(1e-4);
    },
  );

  it('lies flat on a thin book that lies nearly flat open, its spare length drawn out to both fore-edges', () => {
    const { foreEdgeGap, slack } = solved({
      outline: [-0.191, 30.4994, 0, 0.5, 0, -0.5, -0.191, -30.4994],
      offset: 0,
      thickness: 0.42,
      neutral: 0.8,
      length: 102.82,
      held: { front: 4, back: 4 },
      scale: 1,
      height: 1500,
      modulus: 200,
    });
    // An arc that turns by 2 x 0.0064 rad is as long as its two tangents to a hundred-thousandth.
    expect(slack).toBeGreaterThan(40);
    expect(foreEdgeGap.front).toBeCloseTo(slack / 2, 2);
    expect(foreEdgeGap.back).toBeCloseTo(slack / 2, 2);
  });

  it('of thin leather, all but its taut length pushed home, touches a thin book to a ten-thousandth', () => {
    const { contactGap, slack } = solved({
      outline: [176.4831, 4.591, 0, 0.5, 0, -0.5, 176.4831, -4.591],
      offset: 8,
      thickness: 0.2,
      neutral: 0.4,
      length: 3978.7156,
      held: { front: 5, back: 5 },
      gap: { front: 1799.8225, back: 1799.8225 },
      scale: 1,
      height: 1390,
      modulus: 20,
    });
    expect(slack).toBeLessThan(0.1);
    expect(contactGap).toBeLessThan(1e-4);
  });
});

describe('a section that cannot be solved', () => {
  const good = sectionOf(LEDGER, 0, 4);
  it.each([
    ['outline', { outline: [0, 0, 1, 1] }],
    ['outline', { outline: [...outlineOf(LEDGER, 0).slice(1), Number.NaN] }],
    ['thickness', { thickness: 0 }],
    ['length', { length: Number.POSITIVE_INFINITY }],
    ['length', { length: 30 }],
    ['offset', { offset: -1 }],
    ['neutral', { neutral: 1.5 }],
    ['held.front', { held: { front: 0, back: 10 } }],
    ['held.back', { held: { front: 10, back: 165 } }],
    ['gap.front', { gap: { front: -1, back: 0 } }],
    ['crease.set', { crease: { angles: [0, 1], set: 2 } }],
    ['restAngle', { crease: { angles: [Number.NaN, 1], set: 0.5 } }],
    ['spine', { spine: { first: 0, last: 2 } }],
    ['scale', { scale: 0 }],
    ['height', { height: -1 }],
    ['modulus', { modulus: Number.NaN }],
  ] as const)('names the faulty %s', (place, fault) => {
    const section = solveSection({ ...good, ...fault } as SectionInput, solver);
    expect(section.status).toBe('badInput');
    expect(section.message.startsWith(place), section.message).toBe(true);
    expect(section.section.length).toBe(0);
  });
});
