import type { Job } from '../job/jobSchema.ts';
import { type Mm, mm } from '../units/mm.ts';
import { holesIn, type SeamLine, type SeamRun, seamLength } from './seamLine.ts';

/** Styles of lacing that the trade names. */
export type LaceStyle = keyof Job['supplies']['laceMultiples'];

/** What a lace goes round, mm. */
export interface LaceSection {
  /** S: thickness of the layers. */
  readonly stack: number;
  /** m: slit to cut edge. */
  readonly margin: number;
  /** p: slit to slit. */
  readonly pitch: number;
  /** w: thickness of the lace; its middle line runs w/2 off the leather. */
  readonly lace: number;
}

/** How far back the hitch of a single loop sits, in pitches, and how much of the edge lies before it. The picture lays it so. */
const HITCH = { back: 0.6, before: 0.77 } as const;

/**
 * Length of lace per pitch on its middle line, with S' = S + w through or across the edge and m' = m + w/2 down a face:
 *
 * - running, in and out along the slits: p + S'
 * - whip, through a slit and over the edge to the next, the advance spread over what shows: S' + hypot(2 m' + S', p)
 * - single loop: down one face, through the slit, up the other, back to the hitch h = 0.6 pitches behind, which sits after
 *   c = 0.77 of the edge, and forward to the next slit: 2 m' + S' + hypot(h p, c S') + hypot((1 + h) p, (1 - c) S')
 * - loop of order n (double 2, triple 3): the edge is crossed three times: back over the bights of the n - 1 stitches before,
 *   under them on the leather, and forward n. Over others the middle line is a lace higher on either face, S" = S' + 2 w:
 *   2 m' + S' + hypot((n-1) p, S") + S' + hypot(n p, S")
 *
 * Derived from the path of each stitch. What is laid is up to 7 % shorter, because lace rounds its bends: the error is on the
 * long side.
 */
export function lacePerPitch(style: LaceStyle, { stack, margin, pitch, lace }: LaceSection): Mm {
  const through = stack + lace;
  const face = margin + lace / 2;
  const onOthers = through + 2 * lace;
  const loop = (order: number): number =>
    2 * face + 2 * through + Math.hypot((order - 1) * pitch, onOthers) + Math.hypot(order * pitch, onOthers);
  const { back, before } = HITCH;
  switch (style) {
    case 'running':
      return mm(pitch + through);
    case 'whip':
      return mm(through + Math.hypot(2 * face + through, pitch));
    case 'single loop':
      return mm(
        2 * face +
          through +
          Math.hypot(back * pitch, before * through) +
          Math.hypot((1 + back) * pitch, (1 - before) * through),
      );
    case 'double loop':
      return mm(loop(2));
    case 'triple loop':
      return mm(loop(3));
  }
}

/** Extra turns at each corner of a closed seam, so that the lace lies close there. Common practice, no source. */
const CORNER_TURNS = 2;

/** Corners of a closed seam. */
const CORNERS = 4;

/** Lace for a cover by parts that add up to the total, with the trade's multiple to compare. */
export interface LaceNeed {
  readonly style: LaceStyle;
  readonly slits: number;
  readonly seam: Mm;
  /** Taken up along the sides. */
  readonly turns: Mm;
  readonly corners: Mm;
  readonly tails: Mm;
  readonly splices: Mm;
  readonly total: Mm;
  /** Laces to cut, none longer than can be worked, and the length of each. */
  readonly laces: number;
  readonly each: Mm;
  /** Turns over seam, and the trade's range for it. */
  readonly multiple: number;
  readonly trade: { readonly low: number; readonly high: number };
  readonly withinTrade: boolean;
}

/**
 * Lace for all seams of a cover, from the geometry of each turn.
 * @param style one of the lacing styles
 * @returns null where a splice is as long as a lace in hand: no length of lace can be worked
 */
export function laceNeed(seams: readonly SeamLine[], style: LaceStyle, job: Job): LaceNeed | null {
  const { supplies, seam } = job;
  const { laceWorking_mm: working, spliceOverlap_mm: overlap, laceThickness_mm: lace } = supplies;
  if (overlap >= working) return null;
  const perPitch = ({ pitch, stack }: SeamRun): number =>
    lacePerPitch(style, { stack, margin: seam.edgeMargin_mm, pitch, lace });
  const turns = seams.flatMap(({ runs }) => runs).reduce((sum, run) => sum + run.pitches * perPitch(run), 0);
  // Running lace goes over the edge there. The tip of a square corner is the diagonal of the margin away from its slit.
  const perCorner = ({ pitch, stack }: SeamRun): number =>
    lacePerPitch(style === 'running' ? 'whip' : style, { stack, margin: Math.SQRT2 * seam.edgeMargin_mm, pitch, lace });
  const corners = seams
    .filter(({ closed }) => closed)
    .reduce((sum, { runs }) => sum + CORNERS * CORNER_TURNS * Math.max(...runs.map(perCorner)), 0);
  const tails = 2 * supplies.laceTail_mm * seams.length;
  const isSeam = turns > 0;
  const laces = isSeam ? Math.max(1, Math.ceil((turns + corners + tails - overlap) / (working - overlap))) : 0;
  const splices = Math.max(0, laces - 1) * overlap;
  const total = turns + corners + tails + splices;
  const along = seamLength(seams);
  const multiple = isSeam ? turns / along : 0;
  const trade = supplies.laceMultiples[style];
  // As it is printed: the trade has no finer figures.
  const said = Math.round(10 * multiple) / 10;
  return {
    style,
    slits: seams.reduce((sum, line) => sum + holesIn(line), 0),
    seam: along,
    turns: mm(turns),
    corners: mm(corners),
    tails: mm(tails),
    splices: mm(splices),
    total: mm(total),
    laces,
    each: mm(isSeam ? total / laces : 0),
    multiple,
    trade,
    withinTrade: !isSeam || (said >= trade.low && said <= trade.high),
  };
}
