import { RANGE_POINTS } from '../../leather/leatherModel.ts';
import type { Printer } from '../../units/printer.ts';
import { degreesFromRadians, radians } from '../../units/radians.ts';
import type { Check, CheckContext } from '../check.ts';

/** Opening of a creased cover, degrees, over which the check advises more creasing. An assumption. */
const WELCOME_OPENING = 30;

/**
 * How far the cover stands open when it is let go, new and creased. It judges nothing: every new cover springs, and
 * weights or wear cure it.
 */
export function springsOpen({ elastic, design, say }: CheckContext): Check | null {
  if (elastic === undefined) return null;
  const results = RANGE_POINTS.map((point) => elastic[point]);
  const failed = results.find(
    ({ newCover, creased }) => newCover.status !== 'converged' || creased.status !== 'converged',
  );
  const base = {
    id: 'springsOpen',
    title: 'Springs open',
    verdict: 'fits',
    unit: 'deg',
  } as const;
  if (failed !== undefined) {
    const message = 'The elastic strip did not settle for this cover, so how far it springs open is not known.';
    return { ...base, value: 0, limit: 0, bound: null, message, remedy: '', change: [] };
  }
  const worst = (angles: readonly number[]): number => Math.max(...angles);
  const fresh = worst(results.map(({ newCover }) => newCover.opening));
  const creased = worst(results.map(({ creased: each }) => each.opening));
  const force = worst(results.map(({ creased: each }) => each.closingForce));
  const stiffness = design.job.leather.outside.modulus_MPa;
  const value = degreesFromRadians(radians(creased));
  return {
    ...base,
    value,
    limit: WELCOME_OPENING,
    bound: 'atMost',
    message:
      `A new cover, let go, ${stands(fresh, say)}; creased damp it ${stands(creased, say)}` +
      `${force > 0 ? `, and ${say.force(force)} at the fore-edge hold it shut` : ''} (leather taken as ${stiffness} MPa stiff).`,
    remedy:
      value > WELCOME_OPENING
        ? 'Case the leather, fold it round the book and leave it under weights to dry; or skive the folds.'
        : '',
    change: [],
  };
}

const stands = (opening: number, say: Printer): string =>
  opening === 0 ? 'stays shut' : opening > 0.99 * Math.PI ? 'springs right open' : `stands open ${say.angle(opening)}`;
