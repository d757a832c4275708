import type { CoverDesign } from '../fold/coverDesign.ts';
import { isPunchedTogether } from '../job/stepTaken.ts';
import type { CutLength } from '../pattern/drawing.ts';
import { patternDrawing } from '../pattern/patternDrawing.ts';
import { ribbonOf } from '../pattern/ribbon.ts';
import { strapOf } from '../pattern/strap.ts';
import { type ToolingAmount, toolingAmount } from '../tooling/toolingAmount.ts';
import { type Mm, mm } from '../units/mm.ts';
import { type Printer, printer } from '../units/printer.ts';
import { cementArea } from './cement.ts';
import { type CutEdges, cutEdges } from './cutEdges.ts';
import { type Fastening, fasteningOf } from './fastening.ts';
import { type LaceNeed, type LaceStyle, laceNeed, lacePerPitch } from './lace.ts';
import { type LeatherArea, leatherAreas, type PieceOutline, pieceOutlines } from './pieceOutline.ts';
import { laceOffReel, offReel, threadOffReel } from './reel.ts';
import { closureLines, holesIn, type SeamLine, seamLines } from './seamLine.ts';
import { type ThreadNeed, threadNeed } from './thread.ts';

/** Materials of one cover. */
export interface CoverSupplies {
  readonly outlines: readonly PieceOutline[];
  readonly areas: readonly LeatherArea[];
  readonly seams: readonly SeamLine[];
  /** Holes or slits of the seam, each counted once for all its layers. */
  readonly holes: number;
  /** Holes or slits to punch, strap and pen loop included: in each piece, or at the seam once through all layers. */
  readonly punched: number;
  /** Null for a laced seam, and where no workable thread is long enough. */
  readonly thread: ThreadNeed | null;
  /** Null for a stitched seam, and where no workable lace is long enough. */
  readonly lace: LaceNeed | null;
  /** Thread or running lace that joins a closure strap, and the tab of its buckle, to the outside, tails included; 0 without a strap. */
  readonly strap: Mm;
  /** Marker ribbons to cut, all of one length; null for none. */
  readonly ribbon: CutLength | null;
  /** Null without a closure. */
  readonly fastening: Fastening | null;
  readonly edges: CutEdges;
  /** mm2, both faces of every joint. */
  readonly cement: number;
  readonly tooling: ToolingAmount;
  /** What cannot be made as asked, and the remedy. */
  readonly notes: readonly string[];
}

/** Computes leather, thread or lace (as measured off the reel), holes, ribbon, fastening, cut edges and cement of a cover. */
export function coverSupplies(design: CoverDesign): CoverSupplies {
  const { job } = design;
  const { supplies, seam } = job;
  const drawing = patternDrawing(design);
  const outlines = pieceOutlines(design, drawing);
  const seams = seamLines(design);
  const isLaced = seam.method === 'lacing';
  const { units } = job.work;
  const sewn = isLaced ? null : threadNeed(seams, supplies);
  const thread = sewn && threadOffReel(sewn, units);
  const laced = isLaced ? laceNeed(seams, seam.style as LaceStyle, job) : null;
  const lace = laced && laceOffReel(laced, units);
  const notes: string[] = [];
  if (!isLaced && thread === null)
    notes.push('The tails and back stitches use up a thread in hand: make the tails shorter or the thread longer.');
  if (isLaced && lace === null)
    notes.push('A splice uses up a lace in hand: make the splice shorter or the lace longer.');
  if (lace !== null && !lace.withinTrade) notes.push(offTrade(lace, printer(units)));
  const inPieces = drawing.pieces.reduce((sum, piece) => sum + piece.holes * piece.count, 0);
  const holes = seams.reduce((sum, line) => sum + holesIn(line), 0);
  return {
    outlines,
    areas: leatherAreas(outlines, supplies.waste),
    seams,
    holes,
    // A strap and its tab are sewn on before: their holes are punched in each piece, and so is the slot of a tab.
    punched: isPunchedTogether(job) ? holes + closurePunched(design) : inPieces,
    thread,
    lace,
    strap: offReel(closureSewing(design), units),
    ribbon: ribbonOf(design),
    fastening: fasteningOf(job),
    edges: cutEdges(design, drawing, seams),
    cement: cementArea(seams, supplies.cementBand_mm),
    tooling: toolingAmount(design),
    notes,
  };
}

function closurePunched(design: CoverDesign): number {
  const strap = strapOf(design);
  if (strap === null) return 0;
  return 2 * strap.holes.length + (strap.tab === null ? 0 : 3 * strap.tab.holes.length + 1);
}

function closureSewing(design: CoverDesign): Mm {
  const lines = closureLines(design);
  const { supplies, seam } = design.job;
  if (lines.length === 0) return mm(0);
  if (seam.method === 'stitching') return threadNeed(lines, supplies)?.total ?? mm(0);
  const { laceThickness_mm: lace, laceTail_mm: tail } = supplies;
  const run = lines
    .flatMap(({ runs }) => runs)
    .reduce(
      (sum, { pitches, pitch, stack }) =>
        sum + pitches * lacePerPitch('running', { stack, margin: seam.edgeMargin_mm, pitch, lace }),
      0,
    );
  return mm(run + lines.length * 2 * tail);
}

function offTrade({ multiple, trade, style }: LaceNeed, { number }: Printer): string {
  const rule = `the trade's rule of thumb for ${style} lacing is ${trade.low} to ${trade.high}`;
  const where = multiple > trade.high ? 'a wide margin or a close pitch' : 'a narrow margin or a wide pitch';
  return `The lace comes to ${number(multiple, 1)} times the seam, by the way that it runs; ${rule}. That is ${where}: lace a short trial before you buy.`;
}
