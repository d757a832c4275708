import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { foldedCover } from '../../src/core/solid/foldedCover.ts';
import type { Pose } from '../../src/core/solid/pose.ts';
import { type Penetration, validateClearance } from '../../src/core/solid/validateClearance.ts';
import { FITTINGS } from '../fittingParts.ts';
import { soundJob } from '../jobArbitrary.ts';
import { LAW_SEED } from '../laws.ts';
import { nth } from '../nth.ts';
import { constructedJob } from '../property/constructionArbitrary.ts';
import { proofSize } from './proofSize.ts';

/** Depth over which one part reaches into another, mm. */
const DEPTH = 0.05;
/** Parts in which a long edge is probed: the other part's edges meet it as well. */
const PROBES = 8;
const DRAWS = proofSize(2000, 20);
const POINTS = ['thin', 'nominal', 'thick'] as const;

/** Every second draw closed and the others at an opening of their own, and two places on either half of the film, by turns. */
const posesOf = (draw: number): readonly Pose[] => [
  { kind: 'opening', angle: draw % 2 === 0 ? 0 : (Math.PI * ((draw % 13) + 1)) / 13 },
  { kind: 'sequence', at: 0.5 * ((draw * 0.618034) % 1) },
  { kind: 'sequence', at: 0.5 + 0.5 * ((draw * 0.75487) % 1) },
];

/** Which parts meet, whichever reaches in and on whichever side. */
const pairOf = ({ a, b }: Penetration): string =>
  [a, b]
    .map((part) => part.replace(/^(front|back)/, ''))
    .sort()
    .join(' and ');

const ofFittings = ({ a, b }: Penetration): boolean => FITTINGS.has(a) || FITTINGS.has(b);

/** Share of all draws below which those that reach in stay. */
const MOST = 0.002;

test('random jobs at poses by turns reach into themselves in fewer than two of a thousand, each of them printed', () => {
  const documents = fc.sample(constructedJob, { seed: LAW_SEED, numRuns: DRAWS });
  const reaching: Penetration[][] = [];
  documents.forEach((document, draw) => {
    const design = coverDesign(soundJob(document));
    const point = nth(POINTS, draw % POINTS.length);
    const found = posesOf(draw).flatMap((pose) => {
      const here = validateClearance(foldedCover(design, pose, point).parts, DEPTH, PROBES);
      if (here.length > 0)
        console.log(
          `seed ${LAW_SEED}, draw ${draw}, ${point}, ${JSON.stringify(pose)}: ${here
            .map(({ a, b, depth }) => `${a} in ${b} ${depth.toFixed(2)} mm`)
            .join(', ')}`,
        );
      return here;
    });
    if (found.length > 0) reaching.push(found);
  });
  const pairs = new Map<string, number>();
  for (const found of reaching)
    for (const pair of new Set(found.map(pairOf))) pairs.set(pair, (pairs.get(pair) ?? 0) + 1);
  const covers = reaching.filter((found) => !found.every(ofFittings)).length;
  console.log(`${reaching.length} of ${DRAWS} draws reach in, ${covers} of them in cover and book`);
  for (const [pair, count] of [...pairs].sort((p, q) => q[1] - p[1])) console.log(`  ${pair}: ${count}`);
  expect(reaching.length).toBeLessThan(Math.max(1, MOST * DRAWS));
});
