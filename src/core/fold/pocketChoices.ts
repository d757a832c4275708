import type { Needs } from '../allowance/needs.ts';
import type { Job } from '../job/jobSchema.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { madePieces, type Pieces } from '../pattern/pieces.ts';
import { depthAt, pocketDepths, shareCovered } from '../pattern/pocketDepth.ts';
import { sizedPieces } from '../pattern/sizedPieces.ts';
import { type Mm, mm } from '../units/mm.ts';
import { type Radians, radians } from '../units/radians.ts';
import type { CoverDesign } from './coverDesign.ts';
import { coverFit, type Fit } from './coverFit.ts';

/** Shares of the board that the trade names. Common practice, no source. */
const TRADE_SHARES = [1 / 2, 2 / 3, 3 / 4] as const;

/** Shares closer than this are one choice. */
const SAME = 0.01;

/** Pockets of one depth, and what comes of it over the weight range of the leather. */
export interface PocketChoice {
  /** Board covered over board width, with the board at its stop in the thickest leather. */
  readonly share: number;
  readonly depth: Mm;
  /** The largest angle past flat to which the boards must bend back for the second one to go in. */
  readonly loadingAngle: Radians;
  readonly loads: boolean;
  /** The least length of board that stays in its pocket. */
  readonly held: Mm;
  /** Whether that is as much as the job asks for. */
  readonly holds: boolean;
  readonly isCurrent: boolean;
}

/** The pockets of a design beside those that the trade would choose for it. */
export interface PocketChoices {
  /** From the shallowest to the deepest. */
  readonly choices: readonly PocketChoice[];
  /** What kept the tool from the share that the job asks for; null where nothing did, or where the job gives a depth. */
  readonly keptBy: 'hold' | 'loading' | null;
}

/**
 * Compares pockets that cover half, two thirds and three quarters of the board, and those of the design, by the rules of
 * `coverFit`. A share of the trade is taken as it is, even where the boards would not go in or would not be held.
 */
export function pocketChoices(design: CoverDesign): PocketChoices {
  const { job, needs, pieces, doubt, fits } = design;
  const share = shareCovered(pieces.pocketDepth, needs.thick);
  const current = { ...depthOutcome(job, pieces, Object.values(fits)), share, isCurrent: true };
  const others = TRADE_SHARES.filter((other) => Math.abs(other - share) >= SAME).map((other): PocketChoice => {
    const deep = { ...job, pockets: { ...job.pockets, depth_mm: depthAt(job, needs.thick, other) } };
    const cut = sizedPieces(deep, needs, doubt);
    const made = madePieces(deep, cut);
    const fitsThen = Object.values(needs).map((each: Needs) => coverFit(deep, made, each));
    return { ...depthOutcome(deep, cut, fitsThen), share: other, isCurrent: false };
  });
  const { least, most } = pocketDepths(job, needs.thick, pieces.ease);
  const isShort = job.pockets.share < shareCovered(least, needs.thick);
  const isLong = job.pockets.share > shareCovered(most, needs.thick);
  return {
    choices: [current, ...others].sort((a, b) => a.share - b.share),
    keptBy: job.pockets.depth_mm !== null ? null : isShort ? 'hold' : isLong ? 'loading' : null,
  };
}

function depthOutcome(
  job: Job,
  { pocketDepth }: Pieces,
  fits: readonly Fit[],
): Omit<PocketChoice, 'share' | 'isCurrent'> {
  const held = Math.min(...fits.map(({ pocket }) => pocket.held));
  return {
    depth: pocketDepth,
    loadingAngle: radians(Math.max(...fits.map(({ pocket }) => pocket.loadingAngle))),
    loads: fits.every(({ pocket }) => pocket.loads),
    held: mm(held),
    holds: held >= job.pockets.hold_mm - TOLERANCE.length,
  };
}
