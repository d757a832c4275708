import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { parseJob } from '../../src/core/job/parseJob.ts';
import { foldedCover } from '../../src/core/solid/foldedCover.ts';
import type { FoldedCover } from '../../src/core/solid/meshData.ts';
import type { Pose } from '../../src/core/solid/pose.ts';
import { validateClearance } from '../../src/core/solid/validateClearance.ts';
import { validateSolid } from '../../src/core/solid/validateSolid.ts';
import { fullRangeDocument } from '../fullRangeJob.ts';
import { soundJob } from '../jobArbitrary.ts';
import { checkLaw, LAW_SEED, lawCases, mostOf } from '../laws.ts';
import { constructedJob } from './constructionArbitrary.ts';

const pose: fc.Arbitrary<Pose> = fc.oneof(
  fc.record({ kind: fc.constant('sequence' as const), at: fc.double({ min: 0, max: 1, noNaN: true }) }),
  fc.record({ kind: fc.constant('opening' as const), angle: fc.double({ min: 0, max: Math.PI, noNaN: true }) }),
);
const point = fc.constantFrom('thin' as const, 'nominal' as const, 'thick' as const);

const DRAWS = lawCases(8);

/** Every number of a scene but those of the solids. */
const loose = ({ seam, marks, benchTurn, opening }: FoldedCover): number[] => [
  benchTurn,
  opening,
  ...seam.flatMap(({ at, along, out, edgeward, pitch, stack }) => [...at, ...along, ...out, ...edgeward, pitch, stack]),
  ...marks.flatMap(({ value, from, to, out, band }) => [
    value,
    ...from,
    ...to,
    ...out,
    ...(band?.across ?? []),
    ...(band?.rungs.flat(2) ?? []),
  ]),
];

describe('the folded cover of a random job', () => {
  test('is made of closed solids', () => {
    checkLaw(
      fc.property(constructedJob, pose, point, (document, at, end) => {
        const { parts } = foldedCover(coverDesign(soundJob(document)), at, end);
        expect(parts.flatMap(validateSolid)).toEqual([]);
      }),
      { cost: 3 },
    );
  });

  // A known limit, printed and not hidden: a few of these draws, out of any bindery's range, have parts that
  // reach into one another. `npm run proof -- mesh-draws` draws 2,000 of them and prints each with its parts and depth. The demo books and everything like them are held to none at all in foldedCover.test.ts.
  test('does not reach into itself, but for a few draws out of all range', () => {
    const draws = fc.sample(fc.tuple(constructedJob, pose, point), { seed: LAW_SEED, numRuns: DRAWS });
    const deepest = draws.map(([document, at, end]) => {
      const found = validateClearance(foldedCover(coverDesign(soundJob(document)), at, end).parts);
      return Math.max(0, ...found.map(({ depth }) => depth));
    });
    const reaching = deepest.filter((depth) => depth > 0);
    console.log(`${reaching.length} of ${DRAWS} reach in, mm: ${reaching.map((depth) => depth.toFixed(2)).join(' ')}`);
    expect(reaching.length).toBeLessThanOrEqual(mostOf(0.01, DRAWS));
  });

  test('has only finite numbers, over the whole range of every field', () => {
    checkLaw(
      fc.property(fullRangeDocument, pose, point, (document, at, end) => {
        const parsed = parseJob(document);
        fc.pre(parsed.ok);
        if (!parsed.ok) return;
        const cover = foldedCover(coverDesign(parsed.job), at, end);
        for (const { positions, normals, uvs } of cover.parts)
          for (const values of [positions, normals, uvs]) expect(values.every(Number.isFinite)).toBe(true);
        expect(loose(cover).every(Number.isFinite)).toBe(true);
      }),
    );
  });
});
