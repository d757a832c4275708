import { RANGE_POINTS } from '../../leather/leatherModel.ts';
import type { Printer } from '../../units/printer.ts';
import type { Answer } from '../check.ts';
import type { StripContext } from '../stripContext.ts';

/** Opening of a creased cover, radians (30 degrees), over which the row advises more creasing. An assumption. */
const WELCOME_OPENING = Math.PI / 6;

/**
 * How far the cover stands open when it is let go, new and creased. It has no limit: every new cover springs open,
 * until weights or wear flatten it.
 */
export function springsOpen({ elastic, design, say }: StripContext): Answer {
  const results = RANGE_POINTS.map((point) => elastic[point]);
  if (results.some(({ newCover, creased }) => newCover.status !== 'converged' || creased.status !== 'converged'))
    return {
      verdict: 'unknown',
      message: 'The springy model found no answer for this cover.',
    };
  const worst = (angles: readonly number[]): number => Math.max(...angles);
  const fresh = worst(results.map(({ newCover }) => newCover.opening));
  const creased = worst(results.map(({ creased: each }) => each.opening));
  const force = worst(results.map(({ creased: each }) => each.closingForce));
  const stiffness = design.job.leather.outside.modulus_MPa;
  return {
    verdict: 'none',
    message:
      `Let go, a new cover ${stands(fresh, say)}; creased damp it ${stands(creased, say)}` +
      `${force > 0 ? `, and ${say.force(force)} at the fore-edge hold it shut` : ''} (leather taken as ${stiffness} MPa stiff).`,
    remedy:
      creased > WELCOME_OPENING
        ? 'Case the leather, fold it round the book and leave it under weights to dry; or skive the folds.'
        : '',
  };
}

const stands = (opening: number, say: Printer): string =>
  opening === 0 ? 'stays shut' : opening > 0.99 * Math.PI ? 'springs right open' : `stands open ${say.angle(opening)}`;
