import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { foldedCover } from '../../src/core/fold/mesh/foldedCover.ts';
import type { FoldedCover } from '../../src/core/fold/mesh/meshData.ts';
import type { Pose } from '../../src/core/fold/mesh/pose.ts';
import { validateClearance, validateSolid } from '../../src/core/fold/mesh/validateClearance.ts';
import { parseJob } from '../../src/core/job/parseJob.ts';
import { fullRangeDocument } from '../fullRangeJob.ts';
import { seeded, soundJob } from '../jobArbitrary.ts';
import { constructedJob } from './constructionArbitrary.ts';

const seed = Number(process.env.SEED ?? Date.now() % 2 ** 31);
console.log(`mesh.property seed ${seed} (repeat with SEED=${seed})`);

const pose: fc.Arbitrary<Pose> = fc.oneof(
  fc.record({ kind: fc.constant('sequence' as const), at: fc.double({ min: 0, max: 1, noNaN: true }) }),
  fc.record({ kind: fc.constant('opening' as const), angle: fc.double({ min: 0, max: Math.PI, noNaN: true }) }),
);
const point = fc.constantFrom('thin' as const, 'nominal' as const, 'thick' as const);

/** Every number of a scene but those of the solids. */
const loose = ({ seam, marks, benchTurn, opening }: FoldedCover): number[] => [
  benchTurn,
  opening,
  ...seam.flatMap(({ at, along, out, edgeward, pitch, stack }) => [...at, ...along, ...out, ...edgeward, pitch, stack]),
  ...marks.flatMap(({ value, from, to, standOff, hatch }) => [value, ...from, ...to, ...standOff, ...hatch.flat()]),
];

describe('the folded cover of a random job', () => {
  test('is made of closed solids that do not reach into one another', () => {
    fc.assert(
      fc.property(constructedJob, pose, point, (document, at, end) => {
        const { parts } = foldedCover(coverDesign(soundJob(document)), at, end);
        expect(parts.flatMap(validateSolid)).toEqual([]);
        expect(validateClearance(parts)).toEqual([]);
      }),
      seeded(seed, 40),
    );
  });

  test('has only finite numbers, over the whole range of every field', () => {
    fc.assert(
      fc.property(fullRangeDocument, pose, point, (document, at, end) => {
        const parsed = parseJob(document);
        fc.pre(parsed.ok);
        if (!parsed.ok) return;
        const cover = foldedCover(coverDesign(parsed.job), at, end);
        for (const { positions, normals, uvs } of cover.parts)
          for (const values of [positions, normals, uvs]) expect(values.every(Number.isFinite)).toBe(true);
        expect(loose(cover).every(Number.isFinite)).toBe(true);
      }),
      seeded(seed, 120),
    );
  });
});
