import { type CoverDesign, madeDesign } from '../fold/coverDesign.ts';
import { type HalfSection, placeSection, sectionStops } from '../fold/section/halfSection.ts';
import { addScaled, dot, heading, leftOf, type Vec2 } from '../math/vec2.ts';
import { standingAt } from '../solid/standing.ts';

/** Closed, its turned ends folded in. */
const CLOSED = { wrapped: 1, turnedFolds: [Math.PI / 2, Math.PI / 2] } as const;

/**
 * The middle of what is seen of the closed cover from over one board, mm on the finished outside as it is drawn.
 *
 * Seen square to the board, the cover reaches from where the leather stands out farthest over the spine, on whichever half,
 * to the fore-edge: the cut edge, or the fold of a turned end. The middle of that view is found on the section. Taut, at the
 * middle thickness of the leathers.
 */
export function seenMiddle(design: CoverDesign, face: 'front' | 'back'): number {
  const made = madeDesign(design);
  const standing = standingAt(made, 'nominal', 0);
  const other = face === 'front' ? 'back' : 'front';
  const half = standing[face];
  const [tip] = placeSection(half, [half.toTip], CLOSED);
  const along = heading(tip!.theta);
  const stops = stopsOf(half);
  const own = outerFace(half, stops).map((point) => dot(point, along));
  // The section of each half is laid out below the plane of the spine's middle.
  const beyond = outerFace(standing[other], stopsOf(standing[other])).map(([x, y]) => dot([x, -y], along));
  const seen = (Math.min(...own, ...beyond) + Math.max(...own)) / 2;
  const fromMiddle = placeAt(stops, own, seen);
  return face === 'front' ? standing.back.length + fromMiddle : half.length - fromMiddle;
}

/** Where a section last reaches so far on its way out to the fore-edge; the leather leans where the lining under it ends. */
function placeAt(stops: readonly number[], reaches: readonly number[], wanted: number): number {
  const i = reaches.findLastIndex((reach, k) => reach <= wanted && (reaches[k + 1] ?? -Infinity) > wanted);
  const [from, to] = [reaches[i]!, reaches[i + 1]!];
  return stops[i]! + ((wanted - from) / (to - from)) * (stops[i + 1]! - stops[i]!);
}

const stopsOf = (half: HalfSection): number[] => sectionStops(half).sort((a, b) => a - b);

/** Points of the grain side at places along half a section. */
const outerFace = (half: HalfSection, stops: readonly number[]): Vec2[] =>
  placeSection(half, stops, CLOSED).map(({ inner, theta, lining, outside }) =>
    addScaled(inner, leftOf(heading(theta)), -(lining + outside)),
  );
