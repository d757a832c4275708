import { wouldReach } from '../../doubt/measureNext.ts';
import { type Answer, type CheckContext, chanceWords, judgedByChance } from '../check.ts';

/** Whether all conditions hold at once: it closes, lies open, goes in at head and tail, and no edge is looser than wished. */
export function together({ design, doubt }: CheckContext): Answer {
  const { chances, share } = doubt;
  const fits = chances.fits();
  const verdict = judgedByChance(chances, share);
  const { sized, reaches } = design.pieces.ease;
  const message = `It closes, lies open, goes in at head and tail and is nowhere too loose in ${chanceWords(fits)}; ${chanceWords(share)} are wished. This holds if the doubts assumed are right.`;
  if (verdict === 'fits') return { verdict, value: fits, limit: share, bound: 'atLeast', message };
  const isGiven = design.job.pattern.outsideWidth_mm !== null || design.job.pattern.outsideHeight_mm !== null;
  const isHopeless = sized.length === 3 && !reaches && !isGiven;
  const helps = isHopeless
    ? doubt.next().filter((each) => wouldReach(design.job, design.needs, design.pieces.pocketDepth, each))
    : [];
  const remedy = isHopeless
    ? `No size reaches ${chanceWords(share)}.${helps.length > 0 ? ` This would: ${helps.map(({ words }) => words).join('; or ')}.` : ' Allow looser gaps, or choose leather of a narrower weight range.'}`
    : '';
  return { verdict, value: fits, limit: share, bound: 'atLeast', message, remedy };
}
