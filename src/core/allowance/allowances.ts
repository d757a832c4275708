import type { Job } from '../job/jobSchema.ts';
import { cutStep } from '../job/workSchema.ts';
import { changeOf, changeWords } from '../leather/changeOf.ts';
import { handOf } from '../leather/handOf.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { type Mm, mm } from '../units/mm.ts';
import type { Ease } from './ease.ts';
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

/** Name of the part that makes up for how the maker's own hand cuts and punches. */
const HAND_PART = 'your hand';

/** Name of the part that brings a sum up to a size that can be cut. */
export const ROUNDING_PART = 'rounded up';

/** Name of the part that brings a size to whole strides of the iron. */
const STRIDE_PART = 'to whole strides';

/** Whether a part of an allowance is the rest up to a size that can be cut or punched. */
export const isRestPart = (name: string): boolean => name === ROUNDING_PART || name === STRIDE_PART;

/** Cut sizes of the outside that whole strides lead to, mm; a dimension that is left out is rounded. */
export interface StrideSizes {
  readonly width?: number;
  readonly height?: number;
}

/** Adds the rounding that brings `size` up to the cut size, shared between the edges that make it up. */
function rounding(size: number, step: number, edges: number): AllowancePart {
  return part(ROUNDING_PART, (roundUp(size, step) - size) / edges);
}

/**
 * Sizes every allowance for the thick end of the leather, ease and rounding included.
 *
 * The outside serves the larger of the closed and the flat wrap: where flat needs more, half the difference is the part
 * "opening flat". The bare book is 2 W + P by H.
 * @param job gives edge margin, change of size in making, rounding
 * @param needs what the book asks over the weight range
 * @param pocketDepth depth of the pockets, mm; part of the outside only where its ends are turned
 * @param ease of every edge, typed or sized by the doubt
 * @param strides sizes that take the place of rounded ones
 */
export function allowances(
  job: Job,
  needs: NeedsOverRange,
  pocketDepth: Mm,
  ease: Ease,
  strides: StrideSizes = {},
): Allowances {
  const { book, leathers, closed, flat, foreEdge } = needs.thick;
  const headTail = largestHeadTail(needs);
  const margin = job.seam.edgeMargin_mm;
  const turned = job.pockets.construction === 'turned';
  const step = cutStep(job);
  const hand = handOf(job);
  const bare = 2 * book.width + book.spinePath;
  const easePart = (at: keyof Allowances): AllowancePart =>
    ease.sized.includes(at) ? part('ease', ease[`${at}_mm`]) : given('ease', ease[`${at}_mm`]);

  const ends = turned
    ? [given('turned end', pocketDepth), part('turn round the board edge', foreEdge.turn)]
    : [given('edge margin', margin), part('seam to stop', foreEdge.seat)];
  const side = allowance([
    ...ends,
    part('folds at the spine', (closed.path.turning * leathers.outside.neutralDepth) / 2),
    part('lining under the folds', (closed.path.turning * (leathers.lining?.foldThickness ?? 0)) / 2),
    part('rounded edges of the spine', (closed.path.length - bare) / 2),
    part('opening flat', Math.max(0, flat.length - closed.length) / 2),
    easePart('foreEdge'),
    given(HAND_PART, mm(-hand.width / 2)),
  ]);
  const edge = (at: 'head' | 'tail'): Allowance =>
    allowance([
      given('edge margin', margin),
      part('seam to stop', headTail.seat),
      part('drawn into the curve', headTail.excess),
      easePart(at),
      given(HAND_PART, mm(-hand.height / 2)),
    ]);
  const head = edge('head');
  const tail = edge('tail');

  const change = changeOf(job);
  const cutTo = (made: number, by: number, whole: number | undefined): AllowancePart[] => {
    const cut = made / (1 + by);
    return [
      part(changeWords(job, by), (cut - made) / 2),
      whole === undefined ? rounding(cut, step, 2) : part(STRIDE_PART, (whole - cut) / 2),
    ];
  };
  const wide = cutTo(bare + 2 * side.total, change.width, strides.width);
  const high = cutTo(book.height + head.total + tail.total, change.height, strides.height);
  return {
    foreEdge: allowance([...side.parts, ...wide]),
    head: allowance([...head.parts, ...high]),
    tail: allowance([...tail.parts, ...high]),
  };
}
