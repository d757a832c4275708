import {
  type Arc,
  distance,
  type PieceDrawing,
  type Segment,
  segmentEnd,
  segmentStart,
  type Vec2,
} from '../../core/index.ts';

/** How a corner of a piece is taken off, and how far along both its edges, mm. */
export interface TakenCorner {
  readonly name: CornerName;
  readonly style: 'rounded' | 'cut off';
  readonly size: number;
}

type CornerName = 'A' | 'B' | 'C' | 'D';

/** An upright edge that is scooped inward, and how deep in its middle, mm. */
interface ScoopedEdge {
  readonly from: CornerName;
  readonly to: CornerName;
  readonly middle: Vec2;
  readonly depth: number;
}

/** The outline of a piece as a rectangle, A lower left and on counterclockwise, with what is taken off it. */
export interface BoxShape {
  readonly corners: readonly { readonly name: CornerName; readonly at: Vec2 }[];
  readonly taken: readonly TakenCorner[];
  readonly scooped: readonly ScoopedEdge[];
}

/** Within this two places are one, mm. */
const NEAR = 1e-6;

const isNear = (a: number, b: number): boolean => Math.abs(a - b) < NEAR;

/** Depth of an arc under its chord: R (1 - cos(sweep / 2)). */
export const sagitta = ({ radius, sweep }: Arc): number => radius * (1 - Math.cos(sweep / 2));

/** Reads the outline of a piece, whose corners are right angles, rounded or cut off, and whose upright edges may be scooped. */
export function boxShape({ outline, width, height }: Pick<PieceDrawing, 'outline' | 'width' | 'height'>): BoxShape {
  const corners = [
    { name: 'A', at: [0, 0] },
    { name: 'B', at: [width, 0] },
    { name: 'C', at: [width, height] },
    { name: 'D', at: [0, height] },
  ] as const;
  const taken = corners.flatMap(({ name, at }): TakenCorner[] => {
    if (outline.some((segment) => distance(segmentStart(segment), at) < NEAR)) return [];
    // The one segment from the upright edge of the corner to its level edge.
    for (const segment of outline) {
      const ends = [segmentStart(segment), segmentEnd(segment)];
      const [level, upright] = [ends.find(([, y]) => isNear(y, at[1])), ends.find(([x]) => isNear(x, at[0]))];
      if (level !== undefined && upright !== undefined && level !== upright)
        return [{ name, style: segment.kind === 'arc' ? 'rounded' : 'cut off', size: Math.abs(level[0] - at[0]) }];
    }
    return [];
  });
  const edges = [
    { from: 'B', to: 'C', x: width, inward: -1 },
    { from: 'D', to: 'A', x: 0, inward: 1 },
  ] as const;
  const scooped = edges.flatMap(({ from, to, x, inward }): ScoopedEdge[] => {
    const arc = outline.find((segment): segment is Arc => segment.kind === 'arc' && isAlong(segment, x));
    if (arc === undefined) return [];
    const depth = sagitta(arc);
    return [{ from, to, depth, middle: [x + inward * depth, height / 2] }];
  });
  return { corners, taken, scooped };
}

const isAlong = (segment: Segment, x: number): boolean =>
  isNear(segmentStart(segment)[0], x) && isNear(segmentEnd(segment)[0], x);
