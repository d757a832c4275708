import type { SeamKnot } from './seamKnot.ts';
import type { SeamWork } from './seamWork.ts';
import { rowReach, rowStack, type StationRow } from './station.ts';

/** Bights that a loop of each order lies over; the style is named by it. */
const ORDERS: Partial<Record<SeamWork['style'], number>> = { 'single loop': 1, 'double loop': 2, 'triple loop': 3 };

/** Whether a style leaves a plait along the edge. */
export const isPlaited = (style: SeamWork['style']): boolean => style in ORDERS;

/** 1 the grain side, -1 the flesh side. */
type Side = 1 | -1;

/** How far down the faces the plait of the loops reaches, mm from the edge. Judged by eye. */
const CAP = 1;

/** Where on the round of the edge a lace turns back under the plait, radians from the middle of the edge. Judged by eye. */
const TUCK = (65 * Math.PI) / 180;

/** How far back the hitch of a single loop sits, in pitches. Judged by eye. */
const HITCH = 0.6;

/**
 * Lace along a row, from slit to slit, each style by its own way:
 *
 * - running: in and out along the slits; at a corner over the edge and through again
 * - whip: through the slit to the flesh side, over the edge to the next
 * - single loop: through the slit, up the flesh side and on to the edge, under the bight of the stitch before and over it
 *   again, on to the next, down the grain side
 * - loop of order n = 2 or 3: as the single one, but over the edge and n - 1 stitches back, under all bights that lie there
 *   to the flesh side, and over the edge again n stitches on
 *
 * The first end lies in the first slit, the last in the last: tails and splices are hidden between the layers.
 */
export function laceRow(row: StationRow, work: SeamWork, firstMove: number): SeamKnot[] {
  const pen = lacePen(row, work, firstMove);
  const last = row.isClosed ? row.stations.length : row.stations.length - 1;
  const order = ORDERS[work.style];
  let side: Side = -1;
  pen.begin();
  for (let i = 0; i < last; i++) {
    pen.next();
    if (order !== undefined) pen.loop(i, order);
    else if (work.style === 'whip' || pen.isSameSlit(i)) pen.overEdge(i, side);
    else {
      pen.along(i, side);
      side = side > 0 ? -1 : 1;
    }
    pen.through(i + 1);
  }
  return pen.knots;
}

/** Twist at a slit of lace that lies along the seam. */
const ACROSS = -Math.PI / 2;

/** Draws a lace's way, knot by knot. */
function lacePen(row: StationRow, { section, slit }: SeamWork, firstMove: number) {
  const { thickness } = section;
  const half = thickness / 2;
  const twist = slit ?? 0;
  const knots: SeamKnot[] = [];
  let move = firstMove;
  const station = (i: number) => row.stations[i % row.stations.length]!;
  const isSameSlit = (i: number): boolean => station(i).hole === station(i + 1).hole;
  /** Radius of the middle line where it turns into the slit: pulled tight, lace bends round its own inner face. */
  const bend = (i: number): number => Math.min(half, station(i).stack / 2);
  /** Height over the grain side of what stands `off` over one of the faces. */
  const over = (u: number, side: Side, off: number): number => (side > 0 ? off : -rowStack(row, u) - off);
  const put = (
    u: number,
    y: number,
    z: number,
    turn: number,
    more: Partial<Pick<SeamKnot, 'twist' | 'isInside' | 'pass'>> = {},
  ): void => {
    knots.push({ u, y, z, turn, twist: 0, move, isInside: false, pass: null, ...more });
  };
  /** Turn of the way out of the leather, for one given for the grain side. */
  const turned = (turn: number, side: Side): number => (side > 0 ? turn : Math.PI - turn);

  /** On the axis of a slit, in the middle of the layers. */
  const within = (i: number, pass: number | null): void =>
    put(i, -station(i).stack / 2, 0, -Math.PI / 2, { twist, isInside: true, pass });
  /** At the mouth of a slit, lying as it does on the face; it turns to the slit in the leather. */
  const mouth = (i: number, side: Side, lies: number): void =>
    put(i, over(i, side, half - bend(i)), 0, -Math.PI / 2, { twist: lies, isInside: true });

  /** From a face, coming from the edge, into a slit. */
  const enter = (i: number, side: Side): void => {
    put(i, over(i, side, half - 0.3 * bend(i)), 0.3 * bend(i), turned(-Math.PI / 4, side));
    mouth(i, side, 0);
  };

  /** How high over a face the lace lies near its slit: on the turns that lie there already. */
  const stands = (i: number): number => half + station(i).pile * half;

  return {
    knots,
    isSameSlit,
    begin(): void {
      within(0, null);
    },
    next(): void {
      move++;
    },
    through(i: number): void {
      within(i, i % row.stations.length);
    },

    /** From the slit on one face over the edge to the next slit on the other face, in a straight line if laid flat. */
    overEdge(i: number, from: Side): void {
      const to: Side = from > 0 ? -1 : 1;
      const [near, far] = [rowReach(row, i), rowReach(row, i + 1)];
      const whole = near + far + rowStack(row, i + 0.5) + 2 * thickness;
      const at = (way: number): number => i + way / whole;
      const edge = near + half;
      const beyond = edge + rowStack(row, i + 0.5) + thickness;
      const c = bend(i);
      mouth(i, from, 0);
      put(at(0.3 * c), over(i, from, half - 0.3 * c), 0.3 * c, turned(-Math.PI / 4, from));
      put(at(c), over(at(c), from, stands(i)), c, turned(0, from));
      const rim = (u: number, side: Side, turn: number): void =>
        put(u, over(u, side, half * Math.cos(turn)), rowReach(row, u) + half * Math.sin(turn), turned(turn, side));
      rim(at(near), from, 0);
      rim(at(near + 0.7 * half), from, Math.PI / 4);
      rim(at(edge + half), from, Math.PI / 2);
      rim(at(beyond - half), to, Math.PI / 2);
      rim(at(beyond - 0.7 * half + half), to, Math.PI / 4);
      rim(at(beyond + half), to, 0);
      put(at(whole - c), over(i + 1, to, stands(i + 1)), c, turned(0, to));
      enter(i + 1, to);
    },

    /** From slit to slit along one face. */
    along(i: number, side: Side): void {
      const c = bend(i);
      const share = c / row.pitch;
      mouth(i, side, ACROSS);
      put(i + 0.3 * share, over(i, side, half - 0.3 * c), 0, turned(0, side));
      for (const u of [i + share, i + 0.5, i + 1 - share]) put(u, over(u, side, half), 0, turned(0, side));
      put(i + 1 - 0.3 * share, over(i + 1, side, half - 0.3 * c), 0, turned(0, side));
      mouth(i + 1, side, ACROSS);
    },

    /** A loop of order n from slit i on the flesh side to the grain side of the next slit. */
    loop(i: number, order: number): void {
      const c = bend(i);
      const back = row.isClosed ? i - order + 1 : Math.max(0, i - order + 1);
      mouth(i, -1, 0);
      put(i, over(i, -1, half - 0.3 * c), 0.3 * c, turned(-Math.PI / 4, -1));
      put(i, over(i, -1, stands(i)), c, Math.PI);
      put(i, over(i, -1, half), rowReach(row, i) - 2.2 * CAP, Math.PI);
      /** On the round over the edge: `angle` from -90 degrees at the flesh side to 90 at the grain side, `off` over it. */
      const round = (u: number, angle: number, off: number, isInside = false): void => {
        const deep = rowStack(row, u) / 2;
        put(
          u,
          -deep + (deep + off) * Math.sin(angle),
          rowReach(row, u) + off * Math.cos(angle) - CAP * (1 - Math.cos(angle)),
          Math.PI / 2 - angle,
          { isInside },
        );
      };
      /** From a place on the round to another; `height` over the leather in thicknesses of lace, by the share of the way. */
      const cross = (
        from: readonly [u: number, angle: number],
        to: readonly [u: number, angle: number],
        height: (share: number) => number,
      ): void => {
        for (const share of [0, 1 / 6, 1 / 3, 1 / 2, 2 / 3, 5 / 6, 1])
          round(
            from[0] + (to[0] - from[0]) * share,
            from[1] + (to[1] - from[1]) * share,
            half + thickness * height(share),
          );
      };
      if (order === 1) {
        // A hitch round the bight of the stitch before, on the grain side's half of the edge.
        const hitch = [i - HITCH, TUCK / 2] as const;
        cross([i, -Math.PI / 2], hitch, (share) => 0.6 * (1 - share));
        cross(hitch, [i + 1, Math.PI / 2], (share) => 0.6 + 0.6 * Math.sin(Math.PI * share));
      } else {
        // Over one lace and under the next, both ways.
        const ends = (share: number): number => 0.55 + 0.45 * Math.min(1, 6 * share, 6 * (1 - share));
        const wave = (share: number): number => 0.5 * Math.sin(2 * Math.PI * share);
        cross([i, -Math.PI / 2], [back, TUCK], (share) => ends(share) - wave(share));
        for (const angle of [0.7, 0, -0.7]) round(back, angle * TUCK, half, true);
        cross([back, -TUCK], [i + 1, Math.PI / 2], (share) => ends(share) + wave(share));
      }
      const to = i + 1;
      put(to, half, rowReach(row, to) - 2.2 * CAP, 0);
      put(to, stands(to), bend(to), 0);
      enter(to, 1);
    },
  };
}
