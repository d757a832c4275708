import { reverseCurve } from '../allowance/reverseCurve.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import { type HalfSection, inFromSeam } from '../fold/section/halfSection.ts';
import {
  curveOnFace,
  gentleRise,
  linedRadius,
  offsetForRun,
  pressedRadius,
  radiusForRun,
  type SeatCurve,
  seatCurve,
  seatPoint,
} from '../fold/section/seatCurve.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { repeated } from '../math/remembered.ts';
import type { PocketStand } from './loadingStanding.ts';
import type { ColumnSeat } from './rowPlan.ts';

/**
 * How one end of the cover closes on its board: levels above the face on which the board lies, by the distance u from the
 * fore-edge seam inward.
 */
export interface EndField {
  /** Fore-edge curve of the pocket, from where the board's tip stands; null where the end is turned. */
  readonly foreEdge: SeatCurve | null;
  /** How far the pocket lies flat on the outside before it rises, mm from the seam. */
  readonly lead: number;
  /** Place on the flesh side of the pocket at a length from the seam on its middle, as `seatPoint` has it. */
  leafAt(length: number): [u: number, h: number, angle: number];
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
const STEPS = 7;
/** Steepest slope of the seam level, radians (35 degrees): a layer that bends across a steeper one folds into itself. */
const STEEPEST = (35 * Math.PI) / 180;
/** Least share of the board taken by the outside, mm: below it there is nothing to see. */
const LEAST_OFFSET = 1e-6;

/** An S in the seam level along u. */
interface Ramp {
  readonly rise: number;
  readonly radius: number;
  readonly from: number;
}

/** A ramp that is done at `to`, or earlier at `latest`. */
const ramp = (rise: number, radius: number, to: number, latest = Number.POSITIVE_INFINITY): Ramp => ({
  rise,
  radius,
  from: Math.min(to, latest) - reverseCurve(rise, radius).run,
});

const rampAt = ({ rise, radius, from }: Ramp, u: number): number => gentleRise(rise, radius, u - from);

/** Even steps of the bend's angle, up and down again; none where there is no rise. */
function rampStops({ rise, radius, from }: Ramp): number[] {
  if (rise < LEAST_OFFSET) return [];
  const { angle, run } = reverseCurve(rise, radius);
  const up = Array.from({ length: STEPS + 1 }, (_, i) => radius * Math.sin((angle * i) / STEPS));
  return [...up, ...up.map((u) => run - u)].map((u) => from + u);
}

/**
 * Derives the closing of one end.
 *
 * At the head and tail seam the outside has come in by h_o and the pocket back by b - h_o. Toward the fore-edge the seam
 * level goes down to 0 in an S of its own, below the pocket's fore-edge curve everywhere, so the layers cannot cross;
 * beyond the mouth it goes down again before the fold over the spine. Where the board is not home, or not in, all that is
 * the board's doing begins at its tip, and is as high as the leaf is lifted; a turned end keeps its folds at the board's edge.
 * @param closed how far head and tail of a turned end are closed, 0 open to 1 down to the seam
 */
export function endField(
  design: CoverDesign,
  point: RangePoint,
  half: HalfSection,
  stand: PocketStand,
  closed: number,
): EndField {
  const needs = design.needs[point];
  const fit = design.fits[point];
  const { book, headTail, leathers } = needs;
  const { outside, pocket } = leathers;
  const turned = needs.foreEdgeSeat === null;
  const board = turned ? book.board : stand.rise;
  const lead = turned ? 0 : stand.lead;
  const growth = turned ? closed : Math.min(1, stand.rise / book.board);
  const room = Math.max(0.05, needs.foreEdge.seat + half.gap);
  const foreEdge = turned ? null : seatCurve(board, pocket.seatRadius, pocket.thickness, room);

  const top = Math.max(headTail.outsideOffset, LEAST_OFFSET);
  const lined = Math.max(...half.pieces.map(({ lining }) => lining[1]));
  // Under a thick lining the outside's curve needs more run than there is: there it comes in less, and the pocket down
  // farther. Its radius grows as the level goes down, and is the lined one before the lining begins.
  const run = headTail.seat + Math.max(0, Math.min(fit.head, fit.tail));
  const widest = linedRadius(outside.seatRadius, outside.thickness, lined);
  const linedTop = lined > 0 ? Math.min(top, offsetForRun(widest, run)) : top;
  const outsideCurve = (offset: number): SeatCurve => {
    if (lined === 0) return seatCurve(offset, outside.seatRadius, outside.thickness, Number.POSITIVE_INFINITY);
    const fitting = offset > 0 ? pressedRadius(offset, run) : widest;
    const radius = Math.min(widest, Math.max(outside.seatRadius, fitting));
    return curveOnFace(offset, radius, lined + outside.thickness / 2);
  };

  const gentlest = Math.max(1.15 * (outside.thickness + lined), top / (2 - 2 * Math.cos(STEEPEST)));
  const toFold = inFromSeam(half, half.toFoldEnd);
  const mouth = design.pieces.pocketDepth;
  const least = reverseCurve(top, gentlest).run;
  const falling = Math.max(gentlest, radiusForRun(top, Math.max(least, Math.min(FALL, toFold - mouth))));
  const rise: Ramp = {
    rise: top,
    radius: Math.max(gentlest, foreEdge?.seamRadius ?? 0, radiusForRun(top, room)),
    from: 0,
  };
  const ease = ramp(top - linedTop, gentlest, inFromSeam(half, half.toLiningEnd));
  const fall = ramp(linedTop, falling, mouth + reverseCurve(linedTop, falling).run, toFold);

  const seamLevel = (u: number): number => {
    const up = turned ? 1 : rampAt(rise, u - lead) / top;
    return growth * up * Math.max(0, top - rampAt(ease, u) - rampAt(fall, u));
  };
  // Where the outside turns away, what stands on its face is spread: a pocket that came down with it would come into it.
  const away = turned ? Number.POSITIVE_INFINITY : turnsAway(half);
  const spread = seamLevel(away);
  const pocketLevel = (u: number): number => (u > away ? Math.max(spread, seamLevel(u)) : seamLevel(u));
  const headEdge = book.height / 2;
  const seams = (level: number) => {
    const curve = outsideCurve(level);
    const drawn = curve.length - curve.run;
    return {
      curve,
      headSeam: headEdge + fit.head + headTail.needed - drawn,
      tailSeam: -(headEdge + fit.tail + headTail.needed - drawn),
    };
  };
  const outsideAt = repeated((level: number): ColumnSeat => {
    const { curve, headSeam, tailSeam } = seams(level);
    return { seamLevel: curve.rise, way: -1, head: curve, tail: curve, headSeam, tailSeam };
  });
  const pocketAt = repeated((seam: number, level: number): ColumnSeat => {
    const { headSeam, tailSeam } = seams(seam);
    const rise = Math.max(0, (turned ? growth : 1) * level - seam);
    const at = (space: number): SeatCurve => seatCurve(rise, pocket.seatRadius, pocket.thickness, space);
    const [head, tail] = [at(headSeam - headEdge), at(-tailSeam - headEdge)];
    const isAlike = head.radius === tail.radius;
    return { seamLevel: level - rise, way: 1, head, tail: isAlike ? head : tail, headSeam, tailSeam };
  });
  return {
    foreEdge,
    lead,
    leafAt(length) {
      const [u, h, angle] = seatPoint(foreEdge!, length - lead);
      return [u + lead, h, angle];
    },
    stops:
      growth > 0
        ? [...(turned ? [] : rampStops(rise).map((u) => u + lead)), ...rampStops(ease), mouth, ...rampStops(fall)]
        : [],
    seamLevel,
    outsideSeat: (u) => outsideAt(seamLevel(u)),
    pocketSeat: (u, level) => pocketAt(pocketLevel(u), level),
  };
}

/** Turn from which on the outside counts as turned away from the plane of its fore-edge seam, radians. */
const TURNED_AWAY = 0.01;

/** Distance in from the fore-edge seam at which half the outside begins to turn away from the plane of the seam, mm. */
function turnsAway(half: HalfSection): number {
  let [end, turn] = [half.length, 0];
  for (const { length, angle } of half.pieces.toReversed()) {
    turn += angle;
    if (Math.abs(turn) > TURNED_AWAY) return inFromSeam(half, end);
    end -= length;
  }
  return Number.POSITIVE_INFINITY;
}
