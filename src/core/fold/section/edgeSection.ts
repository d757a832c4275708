import type { Needs } from '../../allowance/needs.ts';
import type { ReverseCurve } from '../../allowance/reverseCurve.ts';
import { pathLength } from '../../book/tautPath.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import type { Vec2 } from '../../math/vec2.ts';
import { pieceCorner, seamCorner } from '../../pattern/pieceCorner.ts';
import { holeShape } from '../../pattern/seam.ts';
import type { CoverDesign } from '../coverDesign.ts';
import { type Edge, gapAt, isForeEdge } from '../edges.ts';
import { ARC_STEPS, curvePoints, movedLeft, thicken } from './layerLine.ts';

/** What is at a place along an edge: a pocket, a pocket near a corner where two seams meet, or no pocket. */
type EdgePlace = 'pocket' | 'corner' | 'noPocket';

/**
 * Section across one edge of a board, as closed outlines in mm: u = 0 at the board's edge and positive outward, v = 0 on the
 * board's outer face and positive outward.
 */
export interface EdgeSection {
  readonly place: EdgePlace;
  readonly board: readonly Vec2[];
  readonly outside: readonly Vec2[];
  /** Null where it does not come to this edge. */
  readonly lining: readonly Vec2[] | null;
  /** Null where there is none; a turned end is part of the outside. */
  readonly pocket: readonly Vec2[] | null;
  /** Room between the layers, from the stop to the seam, which is too low for the board's edge. */
  readonly seat: readonly Vec2[] | null;
  /** u of the stop, where the board's edge comes to rest, mm: the gap of `Fit`, negative for an overrun. Null without a pocket. */
  readonly gap: number | null;
  /** The seam through all layers: its u, how far its hole reaches across the seam line, and the faces it goes through, mm. */
  readonly seam: { readonly at: number; readonly hole: number; readonly faces: readonly [number, number] } | null;
  /** u of the outermost leather, mm. */
  readonly reach: number;
}

/**
 * Cuts a closed cover across an edge of a board, the spare wrap pushed home to the edges.
 *
 * From the board's edge to the stop is the gap of `coverFit`, from the stop to the seam the run of the seat (`foreEdgeSeat`,
 * `balancedSeat`), from the seam to the cut edge the margin. A turned end has two bends about the stop, of b + pi K t. Near a
 * corner the section is that of the edge by itself: how the seams of both edges act there together is not computed.
 * @param along 0 to 1: along a fore-edge from tail to head, along head and tail from the spine to the fore-edge
 */
export function edgeSection(design: CoverDesign, edge: Edge, point: RangePoint, along: number): EdgeSection {
  const { job, made } = design;
  const needs = design.needs[point];
  const { book, leathers, foreEdge } = needs;
  const place = edgePlace(design, edge, point, along);
  const gap = gapAt(design.fits[point], edge);
  const inner = isForeEdge(edge) ? -book.width : -book.height / 2;
  const board = rectangle(inner, 0, -book.board, 0);
  const lining = isLined(design, edge, point, along) ? leathers.lining!.thickness : 0;
  const top = lining + leathers.outside.thickness;
  const mouth = isForeEdge(edge) ? -(made.pocketDepth - foreEdge.seat - gap) : inner;

  if (isForeEdge(edge) && needs.foreEdgeSeat === null) {
    return {
      place,
      board,
      outside: turnedEnd({ inner, mouth: Math.min(mouth, gap), stop: gap, low: lining, top, under: -book.board }),
      lining: lining > 0 ? rectangle(inner, gap, 0, lining) : null,
      pocket: null,
      seat: null,
      gap,
      seam: null,
      reach: gap + leathers.outside.thickness,
    };
  }

  const seat = seatAt(needs, edge, place);
  const seam = gap + seat.run;
  const reach = seam + job.seam.edgeMargin_mm;
  /** The middle of a layer: level on the board, over its curve, and level again to the cut edge. */
  const layer = ([from, v]: Vec2, curve: ReverseCurve | null, radius: number, way: 1 | -1): Vec2[] => {
    const bend: Vec2[] = curve === null ? [] : curvePoints(curve, radius);
    const curved = bend.map(([u, rise]): Vec2 => [seam - curve!.run + u, v + way * rise]);
    return [[from, v], ...curved, [reach, curved.at(-1)?.[1] ?? v]];
  };
  const over = (low: number, high: number): Vec2[] =>
    layer([inner, (low + high) / 2], seat.outside, leathers.outside.seatRadius, -1);
  const thickness = leathers.pocket.thickness;
  const pocket = seat.pocket && layer([mouth, -book.board - thickness / 2], seat.pocket, leathers.pocket.seatRadius, 1);
  const sunk = seat.outside === null ? 0 : needs.headTail.outsideOffset;
  const lowest = lining > 0 ? lining : top;
  const isInSeat = ([u]: Vec2): boolean => u > gap && u < seam;
  return {
    place,
    board,
    outside: thicken(over(lining, top), top - lining),
    lining: lining > 0 ? thicken(over(0, lining), lining) : null,
    pocket: pocket && thicken(pocket, thickness),
    seat: pocket && [
      [gap, 0],
      ...movedLeft(over(0, lowest), -lowest / 2).filter(isInSeat),
      [seam, -sunk],
      ...movedLeft(pocket, thickness / 2)
        .filter(isInSeat)
        .reverse(),
      [gap, -book.board],
    ],
    gap: pocket && gap,
    seam: { at: seam, hole: holeAcross(design), faces: [-sunk - (pocket ? thickness : 0), top - sunk] },
    reach,
  };
}

/** Run from stop to seam, and the curves of the layers over it; without a pocket the leather lies level over its whole length. */
function seatAt(needs: Needs, edge: Edge, place: EdgePlace) {
  const { foreEdgeSeat, headTail } = needs;
  if (isForeEdge(edge)) return { run: needs.foreEdge.seat, outside: null, pocket: foreEdgeSeat?.curve ?? null };
  if (place === 'noPocket') return { run: headTail.needed, outside: null, pocket: null };
  return { run: headTail.seat, outside: headTail.outside, pocket: headTail.pocket };
}

/**
 * What is at a place along an edge. A corner reaches as far along the board's edge as the other edge's seat runs outside of it
 * (assumption), or as far as a rounded or clipped corner brings the seam nearer, if that is more.
 */
function edgePlace(design: CoverDesign, edge: Edge, point: RangePoint, along: number): EdgePlace {
  const { made, job } = design;
  const { book, foreEdge, headTail } = design.needs[point];
  const fit = design.fits[point];
  const corner = seamCorner(pieceCorner(job, made).corner, job.seam.edgeMargin_mm).size;
  const cornerReach = (seat: number, gap: number): number => Math.max(seat, corner - seat - gap);
  if (isForeEdge(edge)) {
    const isNear = (share: number, gap: number): boolean => share * book.height < cornerReach(headTail.seat, gap);
    return isNear(along, fit.tail) || isNear(1 - along, fit.head) ? 'corner' : 'pocket';
  }
  const fromForeEdge = (1 - along) * book.width;
  const { front } = fit.foreEdge;
  if (fromForeEdge > made.pocketDepth - foreEdge.seat - front) return 'noPocket';
  return fromForeEdge < cornerReach(foreEdge.seat, front) ? 'corner' : 'pocket';
}

/** Whether the lining comes to a place along an edge: how far it reaches beyond the board's fore-edge, mm, decides. */
function isLined({ made, needs }: CoverDesign, edge: Edge, point: RangePoint, along: number): boolean {
  const { leathers, closed, book } = needs[point];
  if (leathers.lining === null || made.lining === null) return false;
  const beyond = (made.lining.width - pathLength(closed.path.pieces, leathers.lining.thickness / 2)) / 2;
  return beyond >= (isForeEdge(edge) ? 0 : -(1 - along) * book.width);
}

/** How far a hole reaches across the seam line, mm: its diameter, or the slant of a lacing slit; 0 for a slit along it. */
function holeAcross({ job }: CoverDesign): number {
  const { size, slant } = holeShape(job);
  return slant === null ? size : size * Math.sin(slant);
}

interface TurnedEnd {
  readonly inner: number;
  readonly mouth: number;
  readonly stop: number;
  /** Faces of the outside over the board. */
  readonly low: number;
  readonly top: number;
  /** Inner face of the board. */
  readonly under: number;
}

/** The outside turned round the board: both bends have no radius on the inside. */
function turnedEnd({ inner, mouth, stop, low, top, under }: TurnedEnd): Vec2[] {
  const thickness = top - low;
  const bend = (v: number, from: number): Vec2[] =>
    Array.from({ length: ARC_STEPS + 1 }, (_, i): Vec2 => {
      const angle = from - ((Math.PI / 2) * i) / ARC_STEPS;
      return [stop + thickness * Math.cos(angle), v + thickness * Math.sin(angle)];
    });
  return [
    [inner, top],
    ...bend(low, Math.PI / 2),
    ...bend(under, 0),
    [mouth, under - thickness],
    [mouth, under],
    [stop, under],
    [stop, low],
    [inner, low],
  ];
}

const rectangle = (from: number, to: number, low: number, high: number): Vec2[] => [
  [from, low],
  [to, low],
  [to, high],
  [from, high],
];
