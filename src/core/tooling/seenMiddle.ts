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
 * to the fore-edge: the cut edge, or the fold of a turned end. Between them the leather is straight along the board, so the
 * middle of that view is found on it from the board tip. Taut, at the middle thickness of the leathers.
 */
export function seenMiddle(design: CoverDesign, face: 'front' | 'back'): number {
  const made = madeDesign(design);
  const standing = standingAt(made, 'nominal', 0);
  const other = face === 'front' ? 'back' : 'front';
  const half = standing[face];
  const [tip] = placeSection(half, [half.toTip], CLOSED);
  const along = heading(tip!.theta);
  const own = outerFace(half).map((point) => dot(point, along));
  // The section of each half is laid out below the plane of the spine's middle.
  const beyond = outerFace(standing[other]).map(([x, y]) => dot([x, -y], along));
  const seen = (Math.min(...own, ...beyond) + Math.max(...own)) / 2;
  const fromMiddle = half.toTip - (dot(tip!.neutral, along) - seen);
  return face === 'front' ? standing.back.length + fromMiddle : half.length - fromMiddle;
}

/** Points of the grain side along half a section. */
function outerFace(half: HalfSection): Vec2[] {
  return placeSection(
    half,
    [...sectionStops(half)].sort((a, b) => a - b),
    CLOSED,
  ).map(({ inner, theta, lining, outside }) => addScaled(inner, leftOf(heading(theta)), -(lining + outside)));
}
