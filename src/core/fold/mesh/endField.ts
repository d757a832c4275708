import { reverseCurve } from '../../allowance/reverseCurve.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import type { CoverDesign } from '../coverDesign.ts';
import type { HalfSection } from '../section/halfSection.ts';
import { gentleRise, radiusForRun, type SeatCurve, seatCurve } from '../section/seatCurve.ts';
import type { ColumnSeat } from './rowPlan.ts';

/**
 * How one end of the cover closes on its board: levels above the face on which the board lies, by the distance u from the
 * fore-edge seam inward.
 */
export interface EndField {
  /** Fore-edge curve of the pocket; null where the end is turned. */
  readonly foreEdge: SeatCurve | null;
  /** u of the columns at which the outside's level at head and tail bends. */
  readonly stops: readonly number[];
  /** Level of the head and tail seam. */
  seamLevel(u: number): number;
  /** Seat of the outside along the column at u. */
  outsideSeat(u: number): ColumnSeat;
  /** Seat of the pocket along a column at u where it stands at `level` over the board. */
  pocketSeat(u: number, level: number): ColumnSeat;
}

/** Longest run over which the outside comes back to flat beyond the pocket mouth, mm. Free choice. */
const FALL = 25;
/** Columns over each bend of the seam level. */
const STEPS = 8;

/**
 * Derives the closing of one end.
 *
 * At the head and tail seam the outside has come in by h_o and the pocket back by b - h_o. Toward the fore-edge the seam
 * level goes down to 0 in an S of its own, below the pocket's fore-edge curve everywhere, so the layers cannot cross;
 * beyond the mouth it goes down again before the fold over the spine.
 * @param growth 0 head and tail still open, 1 closed to the seam
 */
export function endField(design: CoverDesign, point: RangePoint, half: HalfSection, growth: number): EndField {
  const needs = design.needs[point];
  const fit = design.fits[point];
  const { book, headTail, leathers } = needs;
  const { outside, pocket } = leathers;
  const turned = needs.foreEdgeSeat === null;
  const board = book.board;
  const room = Math.max(0.05, needs.foreEdge.seat + half.gap);
  const foreEdge = turned ? null : seatCurve(board, pocket.seatRadius, pocket.thickness, room);

  const top = headTail.outsideOffset;
  const gentlest = Math.max(1.15 * outside.thickness, 0.75 * top);
  const rising = Math.max(gentlest, foreEdge?.seamRadius ?? 0, radiusForRun(top, room));
  const toFold = half.toSeam - half.toFoldEnd;
  const mouth = design.pieces.pocketDepth;
  const least = 2 * Math.sqrt(top * gentlest);
  const falling = Math.max(gentlest, radiusForRun(top, Math.max(least, Math.min(FALL, toFold - mouth))));
  const fallRun = reverseCurve(top, falling).run;
  const fallStart = Math.min(mouth, toFold - fallRun);
  const riseRun = turned ? 0 : reverseCurve(top, rising).run;

  const seamLevel = (u: number): number => {
    const up = turned ? top : gentleRise(top, rising, u);
    return growth * Math.max(0, Math.min(up, top - gentleRise(top, falling, u - fallStart)));
  };
  const headEdge = book.height / 2;
  const seams = (u: number) => {
    const curve = seatCurve(seamLevel(u), outside.seatRadius, outside.thickness, Number.POSITIVE_INFINITY);
    const drawn = curve.length - curve.run;
    return {
      curve,
      headSeam: headEdge + fit.head + headTail.needed - drawn,
      tailSeam: -(headEdge + fit.tail + headTail.needed - drawn),
    };
  };
  const spread = (from: number, length: number): number[] =>
    length > 0 ? Array.from({ length: STEPS + 1 }, (_, i) => from + (length * i) / STEPS) : [];
  return {
    foreEdge,
    stops: [...spread(0, riseRun), mouth, ...spread(fallStart, fallRun)],
    seamLevel,
    outsideSeat(u) {
      const { curve, headSeam, tailSeam } = seams(u);
      return { seamLevel: curve.rise, way: -1, head: curve, tail: curve, headSeam, tailSeam };
    },
    pocketSeat(u, level) {
      const { headSeam, tailSeam } = seams(u);
      const rise = Math.max(0, growth * level - seamLevel(u));
      const at = (space: number): SeatCurve => seatCurve(rise, pocket.seatRadius, pocket.thickness, space);
      return {
        seamLevel: level - rise,
        way: 1,
        head: at(headSeam - headEdge),
        tail: at(-tailSeam - headEdge),
        headSeam,
        tailSeam,
      };
    },
  };
}
