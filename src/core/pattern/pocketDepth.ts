import type { Ease } from '../allowance/ease.ts';
import type { Needs } from '../allowance/needs.ts';
import { roundDown, roundUp } from '../allowance/roundUp.ts';
import type { Job } from '../job/jobSchema.ts';
import { cutStep } from '../job/workSchema.ts';
import { type Mm, mm } from '../units/mm.ts';

/** Steps of the depths that the tool chooses, mm; the second where the first finds no place between two holes. */
export const depthSteps = (job: Job): readonly [number, ...number[]] =>
  job.work.units === 'in' ? [cutStep(job)] : [0.5, 0.1];

/** How deep pockets may be where the maker leaves it open, mm. */
export interface PocketDepths {
  readonly least: number;
  readonly usual: Mm;
  readonly most: number;
}

/**
 * Least depth: seat + ease + half a cut step + board travel + holding depth, so that the board stays held once it has
 * travelled. Most: seat + the length of board that the second board can still be loaded past, W (1 - cos(fold-back)), and
 * never more than the board. Usual: seat + the share of the board that the job asks for, kept between the two and off the
 * board's rounded edge at the spine; where they cross, holding counts.
 */
export function pocketDepths(job: Job, needs: Needs, ease: Ease): PocketDepths {
  const { book, foreEdge, closed, flat } = needs;
  const travel = Math.max(0, (closed.length - flat.length) / 2);
  const least = foreEdge.seat + ease.foreEdge_mm + cutStep(job) / 2 + travel + job.pockets.hold_mm;
  const loading = foreEdge.seat + book.width * (1 - Math.cos(book.foldBack));
  const asked = foreEdge.seat + job.pockets.share * book.width;
  const flatBoard = foreEdge.seat + book.width - book.edgeRadius;
  const usual = onStep(job, needs, Math.max(least, Math.min(asked, loading, flatBoard)));
  return { least, usual, most: Math.min(foreEdge.seat + book.width, loading) };
}

/** Share of the board's width that a pocket of this depth, mm, covers with the board at its stop. */
export const shareCovered = (depth: number, { book, foreEdge }: Needs): number => (depth - foreEdge.seat) / book.width;

/** Depth of a pocket that covers this share of the board, whether or not that holds and loads. */
export const depthAt = (job: Job, needs: Needs, share: number): Mm =>
  onStep(job, needs, needs.foreEdge.seat + share * needs.book.width);

/** A depth rounded up to its step, or down where it would pass the end of the board. */
function onStep(job: Job, { book, foreEdge }: Needs, depth: number): Mm {
  const [step] = depthSteps(job);
  return mm(Math.min(roundDown(foreEdge.seat + book.width, step), roundUp(depth, step)));
}
