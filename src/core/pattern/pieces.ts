import { allowances } from '../allowance/allowances.ts';
import { endNeed, type Needs, type NeedsOverRange } from '../allowance/needs.ts';
import { roundDown, roundUp } from '../allowance/roundUp.ts';
import { pathLength } from '../book/tautPath.ts';
import type { Job } from '../job/jobSchema.ts';
import { cutStep } from '../job/workSchema.ts';
import { type Mm, mm } from '../units/mm.ts';
import { holesAcross, mouthsAreClear } from './clearEnds.ts';
import type { Pieces } from './cutPieces.ts';

export type { Piece, Pieces } from './cutPieces.ts';

/** Board length that pockets cover when the maker leaves it open: half, the shallow end of common practice (no source). */
const USUAL_COVERAGE = 0.5;

/** How far a centre lining is tucked under each pocket mouth, mm. Common practice, no source. */
export const LINING_TUCK = 10;

/** Depths that the tool decides are multiples of these, mm: the second where the first finds no place between two holes. */
const DEPTH_STEPS = [0.5, 0.1] as const;

export const depthSteps = (job: Job): readonly [number, ...number[]] =>
  job.work.units === 'in' ? [cutStep(job)] : DEPTH_STEPS;

/** Step of a lining that is not rounded, mm. */
const FINE_STEP = 0.1;

/**
 * Pocket depth where the maker leaves it open: half a board beyond the seat, but never less than the holding depth asks
 * once the boards have travelled, nor, above that, more than lets the second board be loaded.
 */
export const usualPocketDepth = (job: Job, thick: Needs): Mm => pocketDepths(job, thick).usual;

/** The usual depth, and how shallow and deep a pocket may be by the same rules, mm. */
function pocketDepths(job: Job, thick: Needs): { readonly least: number; readonly usual: Mm; readonly most: number } {
  const { book, foreEdge, closed, flat } = thick;
  const [step] = depthSteps(job);
  const travel = Math.max(0, (closed.length - flat.length) / 2);
  const holding = foreEdge.seat + job.ease.foreEdge_mm + cutStep(job) / 2 + travel + job.pockets.hold_mm;
  const loading = foreEdge.seat + book.width * (1 - Math.cos(Math.min(book.foldBack, Math.PI)));
  const usual = foreEdge.seat + USUAL_COVERAGE * book.width;
  const longest = foreEdge.seat + book.width;
  return {
    least: holding,
    usual: mm(Math.min(roundDown(longest, step), roundUp(Math.max(holding, Math.min(usual, loading)), step))),
    most: Math.min(longest, loading),
  };
}

/**
 * Derives every cut piece, sized for the thick end of the leather; sizes that the job gives are taken as they are.
 *
 * Pocket mouths and lining end between two holes of the seam: where no even pitch brings that about, a depth that the tool
 * decides moves by as little as it takes, and a lining is cut a little wider (a full one between turned ends narrower).
 * @param job a parsed job
 * @param needs what the book asks over the weight range
 */
export function pieces(job: Job, needs: NeedsOverRange): Pieces {
  const at = (pocketDepth: Mm): Pieces => piecesAt(job, needs, pocketDepth);
  const given = job.pockets.depth_mm;
  if (given !== null) return lined(job, needs, at(given));
  const { least, usual, most } = pocketDepths(job, needs.thick);
  const cut = at(usual);
  const isClear = (made: Pieces): boolean => mouthsAreClear({ job, pieces: made, needs });
  if (isClear(cut)) return lined(job, needs, cut);
  for (const step of depthSteps(job)) {
    // A coarse step needs more than one pitch to come by every place between two holes.
    for (let n = 1; n * step <= Math.max(job.seam.pitch_mm, 3 * step); n++) {
      for (const depth of [usual + n * step, usual - n * step]) {
        if (depth < least || depth > most) continue;
        const moved = at(mm(Math.round(depth * 1e9) / 1e9));
        if (isClear(moved)) return lined(job, needs, moved);
      }
    }
  }
  return lined(job, needs, cut);
}

/** The pieces with their lining, if there is one, cut so that it ends between two holes: rounded, else in the middle. */
function lined(job: Job, needs: NeedsOverRange, cut: Pieces): Pieces {
  const { lining, outside } = cut;
  const holes = lining === null || lining.width >= outside.width ? null : holesAcross({ job, pieces: cut, needs });
  if (lining === null || holes === null) return cut;
  const step = cutStep(job) || FINE_STEP;
  const end = (width: number): number => (outside.width - width) / 2;
  const cutTo = (width: number): Pieces => ({ ...cut, lining: { ...lining, width: mm(width) } });
  const ways = job.construction.lining === 'full' ? ([-1] as const) : ([1, -1] as const);
  for (const way of ways) {
    const most = way === 1 ? 2 * job.seam.pitch_mm : lining.width;
    for (let by = 0; by < most; by += step) {
      const width = lining.width + way * by;
      if (holes.isClear(end(width))) return cutTo(width);
    }
  }
  const middle = outside.width - 2 * holes.middle(end(lining.width));
  return cutTo(Math.max(0, job.work.units === 'in' ? snap(middle, step) : middle));
}

function piecesAt(job: Job, needs: NeedsOverRange, pocketDepth: Mm): Pieces {
  const { thick } = needs;
  const { book, leathers, foreEdge, foreEdgeSeat } = thick;
  const step = cutStep(job);
  const turned = job.pockets.construction === 'turned';
  const allowed = allowances(job, needs, pocketDepth);

  const width = job.pattern.outsideWidth_mm ?? snap(2 * book.width + book.spinePath + 2 * allowed.foreEdge.total, step);
  const height = job.pattern.outsideHeight_mm ?? snap(book.height + allowed.head.total + allowed.tail.total, step);
  const pocketWidth = turned
    ? pocketDepth
    : roundUp(foreEdge.margin + (foreEdgeSeat?.curve.length ?? 0) + pocketDepth - foreEdge.seat, step);

  const { lining } = leathers;
  const covered = pocketDepth - foreEdge.seat - job.ease.foreEdge_mm;
  const liningWrap =
    lining === null
      ? 0
      : Math.max(
          pathLength(thick.closed.path.pieces, lining.neutralDepth),
          pathLength(thick.flat.path.pieces, lining.neutralDepth),
        );
  return {
    outside: { width: mm(width), height: mm(height) },
    pocket: { width: mm(pocketWidth), height: mm(height), count: turned ? 0 : 2 },
    lining: lining === null ? null : { width: liningWidth(), height: mm(height) },
    pocketDepth,
    allowances: allowed,
  };

  /** A full lining is cut like the outside, but lies between the turns of turned ends; a centre lining spans the mouths. */
  function liningWidth(): Mm {
    if (job.construction.lining === 'centre') return roundUp(liningWrap - 2 * covered + 2 * LINING_TUCK, step);
    return turned ? roundDown(Math.max(0, width - 2 * (pocketDepth + foreEdge.turn)), step) : mm(width);
  }
}

/** The sum with its rounding part already in it, freed of floating-point noise. */
const snap = (size: number, step: number): number => (step === 0 ? size : Math.round(size / step) * step);

/** Length between the places where the two board edges may seat, as cut: outside width less both ends. */
export function seatToSeat({ outside, pocketDepth }: Pieces, needs: Needs, turned: boolean): Mm {
  return mm(outside.width - 2 * (endNeed(needs) + (turned ? pocketDepth : 0)));
}
