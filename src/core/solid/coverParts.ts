import { ramp } from '../film/ramp.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import { type HalfSection, placeSection, type SectionPosture } from '../fold/section/halfSection.ts';
import { curveOnFace, linedRadius, type SeatCurve, seatCurve } from '../fold/section/seatCurve.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { type CoverGrid, type CoverHalf, coverGrid } from './coverGrid.ts';
import { type EndField, endField } from './endField.ts';
import { type Grid, gridSolid, mirrored, moved } from './gridSolid.ts';
import type { MeshData } from './meshData.ts';
import { mouthRows } from './mouthScoop.ts';
import { pocketBend } from './pocketBend.ts';
import { pocketMesh, type SeamFrame } from './pocketMesh.ts';
import { type RowPlan, rowPlan } from './rowPlan.ts';
import type { Staging } from './staging.ts';
import type { Sides } from './standing.ts';

/** The leather parts of one pose, and what seam and marks are found on: the outside's grid, and how both ends close. */
export function coverParts(
  design: CoverDesign,
  point: RangePoint,
  { movements, standing, pockets }: Staging,
): { readonly parts: MeshData[]; readonly grid: CoverGrid; readonly fields: Sides<EndField> } {
  const rows = coverRows(design, point);
  const closed = ramp(movements.joined, CLOSES, 1);
  const endOf = (side: keyof Sides<unknown>): CoverHalf => {
    const half = standing[side];
    const field = endField(design, point, half, pockets[side], closed);
    const { book, leathers } = design.needs[point];
    const { pocket, pocketDepth } = design.pieces;
    const leaf = field.foreEdge
      ? { thickness: leathers.pocket.thickness, reach: field.leafAt(pocket.width - design.job.seam.edgeMargin_mm)[0] }
      : { thickness: leathers.outside.thickness, reach: pocketDepth };
    const isHome = pockets[side].lead === 0 && pockets[side].rise === book.board;
    return { half, field, bend: isHome ? pocketBend(book, half, standing.swings[side], leaf) : null };
  };
  const back = endOf('back');
  const isAlike = standing.front === standing.back && pockets.front === pockets.back;
  const front = isAlike ? back : endOf('front');
  const { lined, joined } = movements;
  // Layers lie level on the bench until the lining is in; then each lies on the next.
  const folded = (Math.PI / 2) * ramp(joined, 0, CLOSES);
  const posture: SectionPosture = { wrapped: lined, turnedFolds: [folded, folded] };
  const grid = coverGrid(design, point, front, back, posture, rows.cover);
  const parts = [outsideMesh(grid)];
  const pocketOf = (end: CoverHalf): MeshData | null => {
    if (!end.field.foreEdge) return null;
    const { lateral, up } = laidAway(joined);
    const { outside } = design.needs[point].leathers;
    const place = {
      out: lateral * (design.pieces.pocket.width + POCKET_BESIDE),
      above: up * POCKET_LIFT - lateral * (outside.thickness + end.half.pieces.at(-1)!.lining[0]),
    };
    return pocketMesh(design, point, end.field, seamFrame(end.half, posture), end.bend, place, rows.pocket);
  };
  const backPocket = pocketOf(back);
  const frontPocket = isAlike ? backPocket : pocketOf(front);
  if (frontPocket && backPocket) parts.push(mirrored(frontPocket, 'frontPocket'), backPocket);
  if (grid.lined) {
    const { lateral, up } = laidAway(lined);
    const { thickness } = design.needs[point].leathers.outside;
    const away = -lateral * (design.pieces.outside.height + BESIDE);
    parts.push(moved(liningMesh(grid, grid.lined), up * LIFT - lateral * thickness, 0, away));
  }
  return { parts, grid, fields: { front: front.field, back: back.field } };
}

/** A piece on its way from the bench: sideways distance left (1 to 0) and height, 1 at the top of the way. */
function laidAway(laid: number): { readonly lateral: number; readonly up: number } {
  return { lateral: 1 - ramp(laid, 0.2, 0.8), up: ramp(laid, 0, 0.3) * (1 - ramp(laid, 0.7, 1)) };
}

/** Share of the joining at which the folds of a turned end are done and its head and tail begin to close. Free choice. */
const CLOSES = 0.7;
/** Distance between a pocket and the outside on the bench, more than a pen loop is wide, and how high it is lifted, mm. Free choice. */
const POCKET_BESIDE = 30;
const POCKET_LIFT = 60;

/** Distance between outside and lining on the bench, and how high the lining is lifted on the way, mm. Free choice. */
const BESIDE = 20;
const LIFT = 45;

/** Rows of outside and lining, and of the pockets, each by the fullest curve that it makes at head and tail. */
function coverRows(design: CoverDesign, point: RangePoint): { cover: RowPlan; pocket: RowPlan } {
  const { needs, pieces, job } = design;
  const { headTail, leathers, book } = needs[point];
  const { outside, pocket, lining } = leathers;
  const plan = (fullest: SeatCurve, usual: SeatCurve, inside?: readonly number[]): RowPlan =>
    rowPlan(pieces.outside.height, job.seam.edgeMargin_mm, fullest, usual, inside);
  const widest = linedRadius(outside.seatRadius, outside.thickness, lining?.thickness ?? 0);
  const free = Number.POSITIVE_INFINITY;
  const pocketCurve = (offset: number): SeatCurve => seatCurve(offset, pocket.seatRadius, pocket.thickness, free);
  const coverCurve = curveOnFace(headTail.outsideOffset, widest, outside.thickness / 2);
  // At the corners the pocket may have to come down by the whole board, and so may a turned end.
  const leafCurve = pocketCurve(book.board);
  const isTurned = needs[point].foreEdgeSeat === null;
  return {
    cover: plan(isTurned && leafCurve.length > coverCurve.length ? leafCurve : coverCurve, coverCurve),
    pocket: plan(leafCurve, pocketCurve(book.board - headTail.outsideOffset), mouthRows(design)),
  };
}

const outsideMesh = ({ grain, flesh, normals, uvs }: CoverGrid): MeshData =>
  gridSolid({
    part: 'outside',
    outer: grain,
    inner: flesh,
    normals,
    uvs,
    faces: { outer: 'grain', inner: 'flesh', edge: 'cutEdge' },
  });

/** The lining between inner face and outside, grain side toward the book. */
function liningMesh({ columns, flesh, inner, normals, uvs }: CoverGrid, [first, last]: readonly [number, number]) {
  const { rows } = inner;
  const part = (grid: Grid): Grid => ({
    columns: last - first + 1,
    rows,
    points: grid.points.subarray(3 * first * rows, 3 * (last + 1) * rows),
  });
  // The lining's own pattern runs from its front edge.
  const middle = columns.findIndex(({ d }) => d === 0);
  const across = columns.map(({ liningD }, i) => (i < middle ? -liningD : liningD));
  const own = uvs.slice(2 * first * rows, 2 * (last + 1) * rows);
  for (let k = 0; k < own.length; k += 2) own[k] = across[first + Math.floor(k / 2 / rows)]! - across[first]!;
  return gridSolid({
    part: 'lining',
    outer: part(flesh),
    inner: part(inner),
    normals: normals.subarray(3 * first * rows, 3 * (last + 1) * rows),
    uvs: own,
    faces: { outer: 'flesh', inner: 'grain', edge: 'cutEdge' },
  });
}

/** The fore-edge seam of half a section, and the directions in from it and up from it. */
function seamFrame(half: HalfSection, posture: SectionPosture): SeamFrame {
  const { inner, theta } = placeSection(half, [half.toSeam], posture)[0]!;
  return { origin: inner, inward: [-Math.cos(theta), -Math.sin(theta)], up: [-Math.sin(theta), Math.cos(theta)] };
}
