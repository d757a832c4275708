import type { Job } from '../job/jobSchema.ts';
import { cutStep } from '../job/workSchema.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { type Mm, mm } from '../units/mm.ts';
import { largestHeadTail, type NeedsOverRange } from './needs.ts';
import { roundUp } from './roundUp.ts';

interface AllowancePart {
  readonly name: string;
  readonly length: Mm;
  /** A measure or setting of the job, not a computed length. */
  readonly isGiven?: boolean;
}

/** What is added beyond the bare book at one edge, and the sum it comes from. */
export interface Allowance {
  readonly total: Mm;
  readonly parts: readonly AllowancePart[];
}

/** Allowances of all edges. Fore-edge: per side, beyond W + P/2. Head and tail: beyond the board. */
export interface Allowances {
  readonly foreEdge: Allowance;
  readonly head: Allowance;
  readonly tail: Allowance;
}

const part = (name: string, length: number): AllowancePart => ({ name, length: mm(length) });
const given = (name: string, length: Mm): AllowancePart => ({ name, length, isGiven: true });

/** Leaves out parts that are nothing, so that a sum shows only what counts. */
function allowance(parts: readonly AllowancePart[]): Allowance {
  const shown = parts.filter(({ length }) => Math.abs(length) > TOLERANCE.length);
  return { total: mm(shown.reduce((sum, { length }) => sum + length, 0)), parts: shown };
}

/** Name of the part that brings a sum up to a size that can be cut. */
export const ROUNDING_PART = 'rounded up';

/** Adds the rounding that brings `size` up to the cut size, shared between the edges that make it up. */
function rounding(size: number, step: number, edges: number): AllowancePart {
  return part(ROUNDING_PART, (roundUp(size, step) - size) / edges);
}

/**
 * Sizes every allowance for the thick end of the leather, ease and rounding included.
 *
 * The outside serves the larger of the closed and the flat wrap: where flat needs more, half the difference is the part
 * "opening flat". The bare book is 2 W + P by H.
 * @param job gives ease, edge margin, rounding
 * @param needs what the book asks over the weight range
 * @param pocketDepth depth of the pockets, mm; part of the outside only where its ends are turned
 */
export function allowances(job: Job, needs: NeedsOverRange, pocketDepth: Mm): Allowances {
  const { book, leathers, closed, flat, foreEdge } = needs.thick;
  const headTail = largestHeadTail(needs);
  const margin = job.seam.edgeMargin_mm;
  const turned = job.pockets.construction === 'turned';
  const step = cutStep(job);
  const bare = 2 * book.width + book.spinePath;

  const ends = turned
    ? [given('turned end', pocketDepth), part('turn round the board edge', foreEdge.turn)]
    : [given('edge margin', margin), part('seat at the seam', foreEdge.seat)];
  const side = allowance([
    ...ends,
    part('folds at the spine', (closed.path.turning * leathers.outside.neutralDepth) / 2),
    part('lining under the folds', (closed.path.turning * (leathers.lining?.foldThickness ?? 0)) / 2),
    part('rounded edges of the back', (closed.path.length - bare) / 2),
    part('opening flat', Math.max(0, flat.length - closed.length) / 2),
    given('ease', job.ease.foreEdge_mm),
  ]);
  const edge = (ease: Mm): Allowance =>
    allowance([
      given('edge margin', margin),
      part('seat at the seam', headTail.seat),
      part('drawn into the curve', headTail.excess),
      given('ease', ease),
    ]);
  const head = edge(job.ease.head_mm);
  const tail = edge(job.ease.tail_mm);

  const widthRounding = rounding(bare + 2 * side.total, step, 2);
  const heightRounding = rounding(book.height + head.total + tail.total, step, 2);
  return {
    foreEdge: allowance([...side.parts, widthRounding]),
    head: allowance([...head.parts, heightRounding]),
    tail: allowance([...tail.parts, heightRounding]),
  };
}
