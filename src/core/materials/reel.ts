import { roundUp } from '../allowance/roundUp.ts';
import { type Mm, mm } from '../units/mm.ts';
import type { LengthUnit } from '../units/parseLength.ts';
import { REEL_STEP } from '../units/printer.ts';
import type { LaceNeed } from './lace.ts';
import type { ThreadNeed } from './thread.ts';

/** A length as measured off a reel: rounded up to the next centimetre or inch. */
export const offReel = (length: number, units: LengthUnit): Mm => roundUp(length, REEL_STEP[units]);

/** A thread need with every part as measured off the reel, so that the printed parts add up to the total. */
export function threadOffReel(need: ThreadNeed, units: LengthUnit): ThreadNeed {
  const [stitches, backStitches, tails] = [need.stitches, need.backStitches, need.tails].map((part) =>
    offReel(part, units),
  ) as [Mm, Mm, Mm];
  return { ...need, stitches, backStitches, tails, total: mm(stitches + backStitches + tails) };
}

/** As `threadOffReel`, for lace. Tails and splices are one part. */
export function laceOffReel(need: LaceNeed, units: LengthUnit): LaceNeed {
  const [turns, corners, ends] = [need.turns, need.corners, need.tails + need.splices].map((part) =>
    offReel(part, units),
  ) as [Mm, Mm, Mm];
  return { ...need, turns, corners, tails: mm(ends - need.splices), total: mm(turns + corners + ends) };
}
