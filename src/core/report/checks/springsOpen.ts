import type { CoverAtRest } from '../../fold/elastic/coverAtRest.ts';
import { RANGE_POINTS } from '../../leather/leatherModel.ts';
import { casingCost } from '../casingCost.ts';
import type { Answer } from '../check.ts';
import { standsOpen } from '../standsOpen.ts';
import type { StripContext } from '../stripContext.ts';
import { stripTrouble } from './stripTrouble.ts';

/** Opening of a creased cover, radians (30 degrees), over which the row advises more creasing. An assumption. */
const WELCOME_OPENING = Math.PI / 6;

/**
 * How far the cover stands open when it is let go: new, creased, and pressed for a day. Each is the range over stiffness,
 * crease set and friction of untested leather, over the weights of the job. It has no limit: every new cover springs open,
 * until weights or wear flatten it.
 */
export function springsOpen(context: StripContext): Answer {
  const { elastic, design, say } = context;
  const states = RANGE_POINTS.map((point) => elastic[point].rest);
  const over = (state: 'newCover' | 'creased' | 'pressedDay') => {
    const found = states.map((each) => each[state]);
    return {
      isFound: found.every(({ status }) => status === 'converged'),
      opening: Math.max(...found.map(({ opening }) => opening)),
      stands: standsOpen(
        Math.min(...found.map(({ least }) => least.opening)),
        // Beyond what the model could follow, a cover may spring right open.
        Math.max(...found.map(({ most }) => (most.isFound ? most.opening : Math.PI))),
        say.angle,
      ),
      force: forceOf(found),
      isForceFound: found.every(({ most }) => most.isFound),
    };
  };
  const [fresh, creased, pressed] = [over('newCover'), over('creased'), over('pressedDay')];
  if (![fresh, creased, pressed].every(({ isFound }) => isFound))
    return { verdict: 'unknown', message: `The springy model found no answer for this cover: ${troubleIn(context)}.` };
  const hold =
    creased.force > 0
      ? `, and ${creased.isForceFound ? 'up to' : 'at least'} ${say.force(creased.force)} at the fore-edge hold it shut`
      : '';
  return {
    verdict: 'none',
    message:
      `Let go, a new cover ${fresh.stands}; creased it ${creased.stands}${hold}; ` +
      `pressed for a day it ${pressed.stands}. A wide range, until stiffness and creases of this leather are tested.`,
    remedy:
      creased.opening > WELCOME_OPENING
        ? `Case the leather, fold it round the book and leave it under weights to dry; or skive the folds.${casingCost(design, say)}`
        : '',
  };
}

/** Why the first state that was not solved was not. */
function troubleIn(context: StripContext): string {
  for (const point of RANGE_POINTS)
    for (const state of Object.values(context.elastic[point].rest))
      if (state.status !== 'converged') return stripTrouble(context, point, state);
  return '';
}

const forceOf = (found: readonly CoverAtRest[]): number => Math.max(...found.map(({ most }) => most.force));
