import { type Allowance, isRestPart, ROUNDING_PART } from '../allowance/allowances.ts';
import { roundUp } from '../allowance/roundUp.ts';
import type { Job } from '../job/jobSchema.ts';
import { cutStep } from '../job/workSchema.ts';
import { changeOf, changeWords } from '../leather/changeOf.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import type { CutPart, CutSum } from './drawing.ts';
import type { PatternSource } from './seam.ts';

/** A computed length. */
export const part = (name: string, each: number, times: 1 | 2 = 1): CutPart => ({ name, times, each });

/** A measure or setting of the job. */
export const given = (name: string, each: number, times: 1 | 2 = 1): CutPart => ({ name, times, each, isGiven: true });

/**
 * A dimension and the parts that it is the sum of. Parts of no length are left out; the difference between the total and
 * the parts becomes a last part named `rest`, so that the sum always adds up to what is cut.
 */
export function cutSum(
  dimension: CutSum['dimension'],
  total: number,
  parts: readonly CutPart[],
  rest: string = ROUNDING_PART,
): CutSum {
  const sum = parts.reduce((all, { each, times }) => all + each * times, 0);
  return {
    dimension,
    total,
    parts: [...parts, { ...part(rest, total - sum), isRest: true }].filter(
      ({ each }) => Math.abs(each) > TOLERANCE.length,
    ),
  };
}

/** A length that is the sum of its parts, rounded up to the cut step. */
export function lengthSum(job: Job, parts: readonly CutPart[]): CutSum {
  const bare = parts.reduce((sum, { each, times }) => sum + each * times, 0);
  return cutSum('length', roundUp(bare, cutStep(job)), parts);
}

/**
 * Parts of a made length, and what its change of size in making adds to the cut.
 * @param change share by which the cut leather grows; that of a width unless it is given
 */
export function asCut(job: Job, parts: readonly CutPart[], change = changeOf(job).width): CutPart[] {
  const made = parts.reduce((sum, { each, times }) => sum + each * times, 0);
  return [...parts, part(changeWords(job, change), made / (1 + change) - made)];
}

const allowed = ({ parts }: Allowance, edge: string, times: 1 | 2): CutPart[] =>
  parts.map(({ name, length, isGiven }) =>
    isRestPart(name)
      ? { ...part(name, length, times), isRest: true }
      : { ...part(`${edge}${name}`, length, times), isGiven },
  );

const OWN_SIZE = 'size given by the maker';

export function outsideSums(source: PatternSource): CutSum[] {
  const { pieces, needs } = source;
  const { book } = needs.thick;
  const parts = [
    given('board width', book.width, 2),
    part('over the spine', book.spinePath),
    ...allowed(pieces.allowances.foreEdge, '', 2),
  ];
  return [cutSum('width', pieces.outside.width, parts, OWN_SIZE), heightSum(source)];
}

export function heightSum({ pieces, needs }: PatternSource): CutSum {
  const { outside } = pieces;
  const { head, tail } = pieces.allowances;
  // Head and tail can differ in their ease alone.
  const isAlike = head.total === tail.total;
  const parts = [
    given('board height', needs.thick.book.height),
    ...(isAlike ? allowed(head, 'head and tail: ', 2) : [...allowed(head, 'head: ', 1), ...allowed(tail, 'tail: ', 1)]),
  ];
  return cutSum('height', outside.height, parts, OWN_SIZE);
}

export function pocketSums(source: PatternSource): CutSum[] {
  const { pieces, needs } = source;
  const { foreEdge, foreEdgeSeat } = needs.thick;
  const parts = [
    given('edge margin', foreEdge.margin),
    part('seam to stop', foreEdgeSeat?.curve.length ?? 0),
    part('pocket depth, beyond the stop', pieces.pocketDepth - foreEdge.seat),
  ];
  return [cutSum('width', pieces.pocket.width, asCut(source.job, parts)), heightSum(source)];
}
