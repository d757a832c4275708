import { leastChange } from '../leather/changeOf.ts';
import { rectangle } from '../math/contour.ts';
import type { Printer } from '../units/printer.ts';
import { asCut, cutSum, lengthSum, part } from './cutSums.ts';
import { type CutSum, line, noLayers, type PieceDrawing, path } from './drawing.ts';
import { evenPitch } from './evenPitch.ts';
import { holeMarks } from './holeMarks.ts';
import { letteredPiece } from './letteredPiece.ts';
import type { NamedMarks } from './lettering.ts';
import type { PatternSource, SeamHole } from './seam.ts';
import { sizeLine } from './sumColumn.ts';

/** Radii of a buckle's bar and of its prong, mm. Common practice, no source. */
export const BUCKLE = { wire: 1.1, prong: 0.8 } as const;
/** Where the bar lies, as a share of the way from the strap's hole to its end. Common practice, no source. */
const BAR_SHARE = 0.45;
/** Slope at which the upper end comes down from the bar onto the lower one, radians (20 degrees). Free choice. */
const SLOPE = 0.35;
/** The slot goes so far beyond the bar's half circle at either side, and leaves the prong so much room, mm. Common practice, no source. */
const SLOT = { beyond: 2, room: 1 } as const;

/** The tab that holds a buckle: folded over its bar, slotted for its prong, both ends sewn to the front under the strap's end. */
export interface BuckleTab {
  readonly width: number;
  readonly sum: CutSum;
  /** From the fastening of the closed strap to the bar, mm. */
  readonly toBar: number;
  /** Each end is sewn down over this much of its length, mm. */
  readonly sewn: number;
  /** Slot for the prong, about the middle of the fold. */
  readonly slot: { readonly middle: number; readonly length: number; readonly width: number };
  /** Holes in the frame of the outside: two rows across both ends. */
  readonly holes: readonly SeamHole[];
}

/** How a tab in leather of a thickness goes over the bar, on its neutral line, mm and radians. */
export interface TabFold {
  readonly slope: number;
  /** About the bar, and at the foot of the slope. */
  readonly radius: number;
  /** Straight stretch of the slope. */
  readonly straight: number;
  /** From the bar's middle to where both ends lie on each other. */
  readonly across: number;
}

/**
 * A neutral line of radius R = r + K t turns about the bar by pi + w, goes straight by s and turns back by w, down by the
 * bar's diameter 2 r: s = (2 r - 2 R (1 - cos w)) / sin w, over 2 R sin w + s cos w across.
 * @param thickness t of the tab, mm
 * @param neutral K
 */
export function tabFold(thickness: number, neutral: number): TabFold {
  const radius = BUCKLE.wire + neutral * thickness;
  const straight = Math.max(0, 2 * BUCKLE.wire - 2 * radius * (1 - Math.cos(SLOPE))) / Math.sin(SLOPE);
  return { slope: SLOPE, radius, straight, across: 2 * radius * Math.sin(SLOPE) + straight * Math.cos(SLOPE) };
}

/**
 * Length of the tab: pi R round the bar, from there 2 R w + s to where the upper end lies on the lower one and as far as that
 * is across below it, and three edge margins sewn at either end. It is cut from the outside's leather, thick end, in any direction,
 * and so for the way in which that leather shrinks more.
 * @param front front edge of the finished cover in the frame of the outside
 * @returns null where the closure has no buckle
 */
export function buckleTabOf(source: PatternSource, front: number): BuckleTab | null {
  const { job, pieces, needs } = source;
  const { strap } = job.construction;
  if (strap?.fastening !== 'buckle') return null;
  const { thickness, neutral } = needs.thick.leathers.outside;
  const { edgeMargin_mm: margin, pitch_mm } = job.seam;
  const { radius, slope, straight, across } = tabFold(thickness, neutral);
  const [round, down, sewn] = [Math.PI * radius, 2 * radius * slope + straight, 3 * margin];
  const parts = [
    part('round the bar', round),
    part('down from the bar', down),
    part('under the bar', across),
    part('end sewn to the front', sewn, 2),
  ];
  const sum = lengthSum(job, asCut(job, parts, leastChange(job)));
  const toBar = BAR_SHARE * strap.end_mm;
  const end = front + (strap.reach_mm + toBar + across + sewn) / pieces.growth;
  const low = pieces.outside.height / 2 - strap.width_mm / 2 + margin;
  const { intervals, pitch } = evenPitch(strap.width_mm - 2 * margin, pitch_mm);
  return {
    width: strap.width_mm,
    sum,
    toBar,
    sewn,
    slot: {
      middle: sewn + down + round / 2,
      length: round + 2 * SLOT.beyond,
      width: 2 * BUCKLE.prong + SLOT.room,
    },
    holes: [margin, 2 * margin].flatMap((at) =>
      Array.from({ length: intervals + 1 }, (_, k): SeamHole => {
        return {
          at: [end - at, low + k * pitch],
          heading: Math.PI / 2,
          side: 'frontForeEdge',
          isCorner: false,
          layers: ['outside'],
        };
      }),
    ),
  };
}

export function buckleTabDrawing(source: PatternSource, tab: BuckleTab, print: Printer): PieceDrawing {
  const { job, pieces, isCard = false } = source;
  const [length, { width, slot }] = [tab.sum.total, tab];
  const layers = noLayers();
  const outline = rectangle([0, 0], [length, width]);
  layers.cut.push(path(outline, true));
  layers.fold.push(line([slot.middle, 0], [slot.middle, width]));
  const far = tab.holes[0]!.at[0] + job.seam.edgeMargin_mm;
  const low = (pieces.outside.height - width) / 2;
  const holes = tab.holes.map((hole) => ({ ...hole, at: [far - hole.at[0], hole.at[1] - low] as const }));
  layers.hole.push(...holeMarks(job, holes, { origin: 0, sign: 1 }));
  layers.hole.push(...holeMarks(job, holes, { origin: length, sign: -1 }));
  const [across, up] = [slot.length / 2, slot.width / 2];
  const from = [slot.middle - across, width / 2 - up] as const;
  const to = [slot.middle + across, width / 2 + up] as const;
  layers.hole.push(path(rectangle(from, to, { style: 'rounded', size: up }), true));
  const sums = [tab.sum, cutSum('height', width, [], 'width of the tab')];
  return letteredPiece(
    source,
    { id: 'buckleTab', name: 'Buckle tab', count: 1, width: length, height: width, outline, layers, sums },
    [...(isCard ? [] : ['in any direction']), sizeLine(tab.sum, print)],
    { x: tab.sewn, y: 0.1 * width, width: length - 2 * tab.sewn, height: 0.8 * width },
  );
}

/** Where the tab is sewn, on the outside seen from its grain side: from the bar to its end. */
export function buckleTabMarks({ job, pieces }: PatternSource, tab: BuckleTab): NamedMarks {
  const { width, height } = pieces.outside;
  const end = width - tab.holes[0]!.at[0] - job.seam.edgeMargin_mm;
  const bar = end + tab.sewn;
  const [low, high] = [height / 2 - tab.width / 2, height / 2 + tab.width / 2];
  return {
    marks: [line([bar, low], [end, low]), line([end, low], [end, high]), line([end, high], [bar, high])],
    words: [['buckle tab', [end - 4, height / 2], 2.5, Math.PI / 2, 'mark']],
  };
}
