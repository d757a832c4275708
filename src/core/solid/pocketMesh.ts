import type { CoverDesign } from '../fold/coverDesign.ts';
import type { SeatCurve } from '../fold/section/seatCurve.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { SQUARE } from '../math/corner.ts';
import { repeated } from '../math/remembered.ts';
import { pieceCorner } from '../pattern/pieceCorner.ts';
import type { EndField } from './endField.ts';
import { columnPlaces, displaced, gridNormals, gridOf, gridSolid } from './gridSolid.ts';
import type { MeshData } from './meshData.ts';
import { mouthScoop, scoopedAt } from './mouthScoop.ts';
import { bendStops, onBend, type PocketBend } from './pocketBend.ts';
import { type ColumnSeat, columnRows, type RowPlan, withRows } from './rowPlan.ts';
import { cornerStops, trimCorners } from './trimCorners.ts';
import { trimMouth } from './trimMouth.ts';

/** Where the back half's fore-edge seam lies in the section: u inward, h toward the book. */
export interface SeamFrame {
  readonly origin: readonly [number, number];
  readonly inward: readonly [number, number];
  readonly up: readonly [number, number];
}

/** How far a pocket is from its place: away from the spine and up from the outside's inner face, mm. */
export interface PocketPlace {
  readonly out: number;
  readonly above: number;
}

/** Largest turn of one facet, radians (6 degrees). */
const MAX_TURN = (6 * Math.PI) / 180;

/** Places along the pocket at which it has columns, from the seam, mm on its mid-surface. */
function pocketStops(
  curve: SeatCurve,
  field: EndField,
  bend: PocketBend | null,
  margin: number,
  width: number,
  corners: readonly number[],
) {
  const { lead } = field;
  const stops = [-margin, 0, width - margin];
  const arc = (from: number, turn: number): void => {
    const count = Math.max(1, Math.ceil(turn / MAX_TURN));
    for (let i = 0; i <= count; i++) stops.push(lead + from + (turn * curve.radius * i) / count);
  };
  const rise = curve.up * curve.radius + (curve.down > 0 ? curve.straight : 0);
  const flat = rise + curve.down * curve.radius;
  arc(0, curve.up);
  arc(rise, curve.down);
  // On the board, where the head and tail seam's level still changes with u.
  const bent = bendStops(bend, field.leafAt(width - margin)[0]);
  for (const u of [...field.stops, ...bent]) if (u > lead + curve.run) stops.push(flat + u - curve.run);
  for (const fromEdge of corners) stops.push(fromEdge - margin);
  stops.push((lead + flat + width - margin) / 2, lead / 2);
  return columnPlaces(stops, -margin, width - margin);
}

/**
 * One pocket at the back: edge margin on the outside's, S up over the board edge, leaf on the board.
 *
 * The flesh side is laid first, as a height over the outside's inner face, and nowhere below it; the grain side stands off
 * it by the thickness. The mirror image is the front pocket.
 */
export function pocketMesh(
  design: CoverDesign,
  point: RangePoint,
  field: EndField,
  frame: SeamFrame,
  bend: PocketBend | null,
  { out, above }: PocketPlace,
  plan: RowPlan,
): MeshData {
  const { job, pieces, needs } = design;
  const curve = field.foreEdge!;
  const { thickness } = needs[point].leathers.pocket;
  const { width } = pieces.pocket;
  const { margin } = plan;
  const corner = width > margin ? pieceCorner(job, pieces).corner : SQUARE;
  const scoop = mouthScoop(design);
  const stops = pocketStops(curve, field, bend, margin, width, cornerStops(corner, plan.near));
  // Between two rows the cut is straight; where it would so cut across a bend it has a row at every column.
  const crossed = stops.filter((at) => at > field.lead).map((at) => width - margin - at);
  const rows = withRows(plan, scoopedAt(design, crossed));
  const flesh = gridOf(stops.length, rows.count);
  const uvs = new Float64Array(2 * stops.length * rows.count);
  // On the board a column lies as the one before it.
  const rowsOf = repeated((seat: ColumnSeat) => columnRows(rows, seat));
  stops.forEach((at, i) => {
    const [u, level] = field.leafAt(at);
    const { v, level: heights, z } = rowsOf(field.pocketSeat(u, level));
    for (let j = 0; j < rows.count; j++) {
      const [reach, b] = onBend(bend, u, heights[j]! + above);
      const a = reach - out;
      const k = i * rows.count + j;
      flesh.points[3 * k] = frame.origin[0] + a * frame.inward[0] + b * frame.up[0];
      flesh.points[3 * k + 1] = frame.origin[1] + a * frame.inward[1] + b * frame.up[1];
      flesh.points[3 * k + 2] = z[j]!;
      uvs[2 * k] = at + margin;
      uvs[2 * k + 1] = v[j]!;
    }
  });
  const normals = gridNormals(flesh);
  const sheet = { grid: flesh, normals, uvs };
  if (scoop) trimMouth(sheet, (v) => width - scoop(v));
  trimCorners(sheet, rows.height, corner, (i) => stops[i]! + margin);
  return gridSolid({
    part: 'backPocket',
    outer: displaced(flesh, normals, () => thickness),
    inner: flesh,
    normals,
    uvs,
    faces: { outer: 'grain', inner: 'flesh', edge: 'cutEdge' },
  });
}
