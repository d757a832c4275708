import { circularSegment } from '../math/circularSegment.ts';

/** A rounded edge between a board and the back: the arc of a circle that touches both from inside. */
export interface RoundedEdge {
  /** Turn of the arc, radians: that of the sharp edge, and on a rounded back what it takes of the back's own turn. */
  readonly turn: number;
  /** Angle that it takes of the arc of the back, radians; 0 on a flat back. */
  readonly onBack: number;
  /** Length that it takes of the board, from the sharp edge to where the arc begins, mm. */
  readonly onBoard: number;
  /** Length that it saves against the sharp edge: both stretches taken, less the arc, mm. */
  readonly saving: number;
}

/**
 * Rounds the edge where a board meets the back.
 *
 * With A the turn of the sharp edge, R the radius of the back and B the turn of the arc, the distances of its centre from
 * board and back give cos B = (R cos A - r) / (R - r), or sin(B/2) = sin(A/2) / sqrt(1 - r/R). It saves
 * (R - r) (B - sin B) - R (A - sin A); over a flat back B = A, and it saves 2 r tan(A/2) - r A.
 * @param radius r, mm, 0 up to `largestEdgeRadius`
 * @param back R, mm, at least r; infinite for a flat back
 * @param turn A, radians, under pi. At 0 or less the edge is not convex and saves nothing; the other results are then
 *   negative and say where board and back, both shrunk by r, cross
 */
export function roundedEdge(radius: number, back: number, turn: number): RoundedEdge {
  if (turn === 0) return { turn: 0, onBack: 0, onBoard: 0, saving: 0 };
  if (back === Number.POSITIVE_INFINITY) {
    const onBoard = radius * Math.tan(turn / 2);
    return { turn, onBack: 0, onBoard, saving: turn > 0 ? 2 * onBoard - radius * turn : 0 };
  }
  const sine = Math.sin(turn / 2) / Math.sqrt(1 - radius / back);
  const arc = 2 * Math.asin(Math.max(-1, Math.min(1, sine)));
  return {
    turn: arc,
    onBack: arc - turn,
    onBoard: back * Math.sin(turn) - (back - radius) * Math.sin(arc),
    saving: turn > 0 ? (back - radius) * (arc - Math.sin(arc)) - back * (turn - Math.sin(turn)) : 0,
  };
}

/**
 * Largest radius of the two edges of a closed book, mm: the one at which they meet in the middle of the back,
 * (T/2 cos w - e sin w) / (1 - sin w), or take the whole board, W (sin A - W / 2 R) / (1 - cos A), with A and R as for
 * `roundedEdge`. With parallel boards wider than half the thickness it is T/2.
 * @param width W, mm
 * @param thickness T, mm
 * @param rise e, mm, 0 for a flat back
 * @param wedge w, tilt of each board, radians, positive where the fore-edge is thicker
 */
export function largestEdgeRadius(width: number, thickness: number, rise: number, wedge: number): number {
  const meeting = ((thickness / 2) * Math.cos(wedge) - rise * Math.sin(wedge)) / (1 - Math.sin(wedge));
  const { radius, halfAngle } = circularSegment(thickness, rise);
  const turn = Math.PI / 2 - halfAngle - wedge;
  // An edge never takes more of the board than R sin A.
  if (width >= radius * Math.sin(turn)) return meeting;
  return Math.min(meeting, (width * (Math.sin(turn) - width / 2 / radius)) / (1 - Math.cos(turn)));
}
