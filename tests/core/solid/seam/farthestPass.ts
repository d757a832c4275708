import { type CoverDesign, madeDesign } from '../../../../src/core/fold/coverDesign.ts';
import { seamHoles } from '../../../../src/core/pattern/seamHoles.ts';
import { foldedCover } from '../../../../src/core/solid/foldedCover.ts';
import type { Pose } from '../../../../src/core/solid/pose.ts';
import { seamStrands } from '../../../../src/core/solid/seam/seamStrands.ts';
import { defined } from '../../../defined.ts';
import { nth } from '../../../nth.ts';
import { crossings, onGrain } from './seamReading.ts';

/** The greatest distance of a strand from the axis of a hole that it goes through, over each `step`th hole. */
export function farthestPass(design: CoverDesign, pose: Pose, step: number) {
  const holes = seamHoles(madeDesign(design)).rows.flatMap((row) => row.holes);
  const cover = foldedCover(design, pose, 'nominal');
  const outside = defined(cover.parts.find(({ part }) => part === 'outside'));
  const strands = seamStrands(design, 'nominal', cover.seam);
  const found = { holes: 0, missed: 0, farthest: 0 };
  for (let k = 0; k < holes.length; k += step) {
    const { at } = onGrain(outside, ...nth(holes, k).at);
    const { out, stack } = nth(cover.seam, k);
    const through = [0.25, 0.75].flatMap((depth) => crossings(strands, at, out, depth * stack));
    found.holes++;
    if (through.length === 0) found.missed++;
    found.farthest = Math.max(found.farthest, ...through);
  }
  return found;
}
