import { type CoverDesign, madeDesign } from '../../../../src/core/fold/coverDesign.ts';
import { seamHoles } from '../../../../src/core/pattern/seamHoles.ts';
import { foldedCover } from '../../../../src/core/solid/foldedCover.ts';
import type { Pose } from '../../../../src/core/solid/pose.ts';
import { seamStrands } from '../../../../src/core/solid/seam/seamStrands.ts';
import { defined } from '../../../defined.ts';
import { nth } from '../../../nth.ts';
import { onGrain, passages, timesThrough } from './seamReading.ts';

/**
 * The greatest distance of a strand from the axis of a hole that it goes through, over each `step`th hole, and how many holes
 * have fewer passes than strands; the ends of an open row are half way through.
 */
export function farthestPass(design: CoverDesign, pose: Pose, step: number) {
  const { rows, isClosed } = seamHoles(madeDesign(design));
  const holes = rows.flatMap((row) => row.holes);
  const ends = isClosed ? [] : rows.flatMap((row) => [row.holes[0], row.holes.at(-1)]);
  const least = design.job.seam.method === 'lacing' ? 1 : 2;
  const cover = foldedCover(design, pose, 'nominal');
  const outside = defined(cover.parts.find(({ part }) => part === 'outside'));
  const strands = seamStrands(design, 'nominal', cover.seam);
  const found = { holes: 0, missed: 0, farthest: 0 };
  for (let k = 0; k < holes.length; k += step) {
    const { at } = onGrain(outside, ...nth(holes, k).at);
    const { out, stack } = nth(cover.seam, k);
    const through = passages(strands, at, out, stack);
    // Beyond those on the axis: round a sharp fold the neighbouring stitch runs along this hole, a pitch away.
    const wanted = ends.includes(nth(holes, k)) ? least / 2 : least;
    const own: typeof through = [];
    for (const one of through.toSorted((a, b) => a.off - b.off)) if (timesThrough(own) < wanted) own.push(one);
    found.holes++;
    if (timesThrough(own) < wanted) found.missed++;
    found.farthest = Math.max(found.farthest, ...own.map(({ off }) => off));
  }
  return found;
}
