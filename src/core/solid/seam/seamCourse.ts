import { type CoverDesign, madeDesign } from '../../fold/coverDesign.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { sincePunched } from '../../pattern/pieces.ts';
import type { SeamHole } from '../../pattern/seam.ts';
import { seamHoles } from '../../pattern/seamHoles.ts';
import { type Strap, sewingOrder, strapOf } from '../../pattern/strap.ts';
import { type CornerShape, cornerShape } from './cornerReach.ts';
import { isPlaited, laceRow } from './laceRow.ts';
import type { SeamKnot } from './seamKnot.ts';
import { type SeamWork, type StrandSection, seamWork } from './seamWork.ts';
import { stackAt } from './stackAt.ts';
import type { Station, StationRow } from './station.ts';
import { stitchRow } from './stitchRow.ts';

/** One strand: the row that it is worked along, and its knots in the needle's order. */
export interface StrandCourse {
  readonly row: StationRow;
  readonly knots: readonly SeamKnot[];
}

/** The way of every strand of a seam, in the needle's order. */
export interface SeamCourse {
  readonly section: StrandSection;
  readonly strands: readonly StrandCourse[];
  /** Moves of the needle in all: from one hole to the next, both needles of a saddle stitch at once. */
  readonly moves: number;
  /** Angle from slit to seam line, radians; null for round holes. */
  readonly slit: number | null;
  /** Diameter of the holes or width of the slits, mm. */
  readonly opening: number;
}

/** Times that lace goes through the slit of a corner beyond the once of every slit. The order of work says so. */
const CORNER_TURNS = 2;

/**
 * The way of thread or lace along the seam of a cover, from its start to its finish as the pattern has them. Stations have
 * the numbers of the holes of `foldedSeam`.
 */
export function seamCourse(asCut: CoverDesign, point: RangePoint): SeamCourse {
  const design = madeDesign(asCut);
  const { rows, isClosed, starts } = seamHoles(design);
  const [across, along] = sincePunched(design.pieces);
  const stack = stackAt(design, point);
  const work = seamWork(design.job);
  const corner = cornerShape(design, isPlaited(work.style) ? null : work.section.width);
  const lines = isClosed ? [rows.flatMap(({ holes }) => holes)] : rows.map(({ holes }) => holes);
  const pitches = rows.map(({ pitch }) => pitch);
  let first = 0;
  const courses = lines.map((holes, i): StationRow => {
    const from = isClosed ? holes.indexOf(starts[0]!) : 0;
    const stations = holes.flatMap((_, k) => {
      const at = (from + k) % holes.length;
      const hole = holes[at]!;
      const margin = design.job.seam.edgeMargin_mm * (hole.side === 'tail' || hole.side === 'head' ? along : across);
      return stationsOf(hole, first + at, stack(hole), margin, work.slit === null ? null : corner);
    });
    first += holes.length;
    return { stations, isClosed, pitch: pitches[i]! };
  });
  return courseOf(courses, work);
}

/**
 * The way of the thread or running lace that sews a closure strap to the back, row by row and back again, and the tab of its
 * buckle to the front.
 * @returns null where the job has no strap; stations have the numbers of `closureHoles`
 */
export function strapCourse(design: CoverDesign, point: RangePoint): SeamCourse | null {
  const strap = strapOf(design);
  if (strap === null) return null;
  const { job, needs } = design;
  const { thickness } = needs[point].leathers.outside;
  const rowOf = (piece: Pick<Strap, 'holes'>, first: number, layers: number): StationRow => ({
    stations: sewingOrder(piece).map(
      (hole): Station => ({
        hole: first + hole,
        fan: 0,
        stack: layers * thickness,
        reach: job.seam.edgeMargin_mm,
        pile: 0,
      }),
    ),
    isClosed: false,
    pitch: job.seam.pitch_mm,
  });
  const rows = [rowOf(strap, 0, 2), ...(strap.tab ? [rowOf(strap.tab, strap.holes.length, 3)] : [])];
  const work = seamWork(job);
  return courseOf(rows, {
    ...work,
    style: work.slit === null ? work.style : 'running',
  });
}

/**
 * The way along a fore-edge away from the corners, without back stitches.
 * @param count stations of the stretch
 * @returns null where no seam runs along the fore-edge
 */
export function edgeCourse(design: CoverDesign, point: RangePoint, count: number): SeamCourse | null {
  const row = seamHoles(design).rows.find(({ side }) => side === 'backForeEdge');
  if (row === undefined) return null;
  const stack = stackAt(design, point)(row.holes[Math.floor(row.holes.length / 2)]!);
  const stations = Array.from({ length: count }, (_, hole): Station => {
    return { hole, fan: 0, stack, reach: design.job.seam.edgeMargin_mm, pile: 0 };
  });
  return courseOf([{ stations, isClosed: false, pitch: row.pitch }], { ...seamWork(design.job), backStitches: 0 });
}

function courseOf(rows: readonly StationRow[], work: SeamWork): SeamCourse {
  const strands: StrandCourse[] = [];
  let moves = 0;
  for (const row of rows.filter(({ stations }) => stations.length > 1)) {
    const laid = work.slit === null ? stitchRow(row, work, moves) : [laceRow(row, work, moves)];
    strands.push(...laid.map((knots) => ({ row, knots })));
    moves = laid[0]!.at(-1)!.move;
  }
  return { section: work.section, strands, moves, slit: work.slit, opening: work.opening };
}

/** One station at a hole, or as many as lace goes through the hole of a corner, fanned over it. */
function stationsOf(
  hole: SeamHole,
  index: number,
  stack: number,
  margin: number,
  corner: CornerShape | null,
): Station[] {
  if (corner === null || !hole.isCorner) return [{ hole: index, fan: 0, stack, reach: margin, pile: 0 }];
  return Array.from({ length: CORNER_TURNS + 1 }, (_, i): Station => {
    const fan = corner.fan * ((2 * i) / CORNER_TURNS - 1);
    return { hole: index, fan, stack, reach: corner.reach(fan), pile: i };
  });
}
