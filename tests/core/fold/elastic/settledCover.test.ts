import { describe, expect, test } from 'vitest';
import { CLOSED } from '../../../../src/core/book/bookOutline.ts';
import { coverDesign } from '../../../../src/core/fold/coverDesign.ts';
import { sectionInputAt } from '../../../../src/core/fold/elastic/sectionInputAt.ts';
import { settledCover } from '../../../../src/core/fold/elastic/settledCover.ts';
import { solveSection } from '../../../../src/core/fold/elastic/solveSection.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import { foldedCover } from '../../../../src/core/solid/foldedCover.ts';
import type { Pose } from '../../../../src/core/solid/staging.ts';
import { validateClearance } from '../../../../src/core/solid/validateClearance.ts';
import { createStripSolver } from '../../../../src/core/strip/solveStrip.ts';
import { soundJob } from '../../../jobArbitrary.ts';
import { nth } from '../../../nth.ts';
import { sampledPoses } from '../../solid/sampledPoses.ts';

const designs = EXAMPLE_JOBS.map(({ id, document }, variant) => ({
  id,
  variant,
  design: coverDesign(soundJob(document)),
}));
const POSES: readonly Pose[] = [
  ...[0.7, 0.85, 1].map((at): Pose => ({ kind: 'sequence', at })),
  ...[0, 0.8, 1.7, 2.6, Math.PI].map((angle): Pose => ({ kind: 'opening', angle })),
];

describe('the settled cover', () => {
  test.each(designs)('never passes through the book or its pockets: $id', ({ design, variant }) => {
    for (const { pose, point } of sampledPoses(POSES, variant)) {
      const settle = settledCover(design, point, createStripSolver());
      expect(settle(pose.kind === 'opening' ? pose.angle : 0)).not.toBeNull();
      expect(validateClearance(foldedCover(design, pose, point, settle).parts)).toEqual([]);
    }
  });

  test.each(designs)(
    'closed has its spare length over spine and boards, and at most a tenth of it left at the fore-edges: $id',
    ({ design }) => {
      const settle = settledCover(design, 'nominal', createStripSolver());
      const closed: Pose = { kind: 'opening', angle: 0 };
      const mark = (edge: string, cover: ReturnType<typeof foldedCover>) =>
        cover.marks.find((each) => each.edge === edge)?.value ?? 0;
      const settled = foldedCover(design, closed, 'nominal', settle);
      const taut = foldedCover(design, closed, 'nominal');
      const spare = design.fits.nominal.closedSlack;
      // A lining that is thinned out under the pockets slants the outside there, which the closed form leaves out.
      expect(Math.abs(2 * mark('frontForeEdge', taut) - spare)).toBeLessThan(0.1);
      expect(mark('spine', taut)).toBe(0);
      expect(2 * mark('frontForeEdge', settled)).toBeLessThan(spare / 10);
      // Within what the leather gives under its own pull on the seats.
      expect(Math.abs(mark('spine', settled) - spare)).toBeLessThan(0.5);
    },
  );

  test('falls back on the taut cover where the strip finds no shape', () => {
    const { design } = nth(designs, 0);
    const pose: Pose = { kind: 'opening', angle: 1 };
    expect(foldedCover(design, pose, 'nominal', () => null)).toEqual(foldedCover(design, pose, 'nominal'));
  });
});

describe('boards posed each on its own', () => {
  test('give mirror images when front and back change places, and a shape between when one alone is open', () => {
    const { design } = nth(designs, 0);
    const solve = (front: number, back: number) =>
      solveSection(sectionInputAt(design, 'nominal', { front, back }), createStripSolver());
    const [frontOpen, backOpen] = [solve(0.9, 0), solve(0, 0.9)];
    expect(frontOpen.status).toBe('converged');
    expect(frontOpen.spineBow).toBeCloseTo(backOpen.spineBow, 4);
    expect(frontOpen.energy).toBeCloseTo(backOpen.energy, 3);
    const shut = solve(CLOSED.front, CLOSED.back);
    expect(frontOpen.energy).toBeLessThan(shut.energy);
    expect(frontOpen.energy).toBeGreaterThan(solve(0.9, 0.9).energy);
  });
});
