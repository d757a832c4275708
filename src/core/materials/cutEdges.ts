import type { CoverDesign } from '../fold/coverDesign.ts';
import type { Finish } from '../job/finishSchema.ts';
import { bulgedLine, contourLength } from '../math/contour.ts';
import type { Drawing, PieceId } from '../pattern/drawing.ts';
import { mouthSagitta } from '../pattern/mouth.ts';
import { turnAxis } from '../pattern/seam.ts';
import { runLength, type SeamLine, seamLength } from './seamLine.ts';

/** A stretch of cut edge that is finished as one. */
interface CutEdge {
  readonly name: string;
  readonly length: number;
  /** Thickness of the layers that end there, mean along the edge, at the thick end of their ranges. */
  readonly thickness: number;
}

/** The cut edges of an assembled cover, and how they are finished. */
export interface CutEdges {
  readonly how: Finish['edge'];
  readonly edges: readonly CutEdge[];
  /** All of them, mm. */
  readonly length: number;
  /** Edge paint, ml: area of the edges x all coats of it; 0 where they are not painted. Estimate. */
  readonly paint: number;
}

/** Cubic millimetres in a millilitre. */
const MM3_PER_ML = 1000;

/**
 * Cut edges that a hand finishes: round the assembled cover through all its layers, the pocket mouths, the strap and the tab
 * of its buckle all round, and both long edges of the pen loop.
 *
 * Turned ends have folds at the fore-edges, and their mouths are the cut ends of the outside. The edges of a centre lining
 * lie under the pockets and the ends of a pen loop in the seam: they are not finished.
 */
export function cutEdges(design: CoverDesign, { pieces }: Drawing, seams: readonly SeamLine[]): CutEdges {
  const { job, needs } = design;
  const { outside, pocket } = needs.thick.leathers;
  const isTurned = job.pockets.construction === 'turned';
  const { width, height } = design.pieces.outside;
  const outlineOf = (id: PieceId): number => contourLength(pieces.find((piece) => piece.id === id)?.outline ?? []);
  const loop = pieces.find(({ id }) => id === 'penLoop');
  const layers = meanStack(seams) ?? outside.thickness;
  const mouth = contourLength([bulgedLine([0, 0], [0, height], mouthSagitta(job, design.pieces))]);
  const edges: CutEdge[] = [
    isTurned
      ? { name: 'head and tail', length: 2 * (width - 2 * turnAxis(design)), thickness: layers }
      : { name: 'round the cover', length: outlineOf('outside'), thickness: layers },
    { name: 'pocket mouths', length: 2 * mouth, thickness: isTurned ? outside.thickness : pocket.thickness },
    { name: `closure ${job.construction.strap?.shape}`, length: outlineOf('strap'), thickness: outside.thickness },
    { name: 'buckle tab', length: outlineOf('buckleTab'), thickness: outside.thickness },
    {
      name: 'pen loop',
      length: loop === undefined ? 0 : 2 * (loop.width - 4 * job.seam.edgeMargin_mm),
      thickness: outside.thickness,
    },
  ].filter(({ length }) => length > 0);
  const area = edges.reduce((sum, { length, thickness }) => sum + length * thickness, 0);
  const { edge } = job.finish;
  return {
    how: edge,
    edges,
    length: edges.reduce((sum, { length }) => sum + length, 0),
    paint: edge === 'painted' ? (area * job.supplies.paintFilm_mm) / MM3_PER_ML : 0,
  };
}

/** Thickness sewn through, mean along the seam; null without a seam. */
function meanStack(seams: readonly SeamLine[]): number | null {
  const length = seamLength(seams);
  if (length === 0) return null;
  return seams.flatMap(({ runs }) => runs).reduce((sum, run) => sum + run.stack * runLength(run), 0) / length;
}
