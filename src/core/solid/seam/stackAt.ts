import type { CoverDesign } from '../../fold/coverDesign.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import type { SeamHole, SeamLayer } from '../../pattern/seam.ts';

/** Thickness of all layers at a hole of the seam, mm, at one point of the weight range. */
export function stackAt(design: CoverDesign, point: RangePoint): (hole: SeamHole) => number {
  const { outside, pocket, lining } = design.needs[point].leathers;
  const thickness: Readonly<Record<SeamLayer, number>> = {
    outside: outside.thickness,
    frontPocket: pocket.thickness,
    backPocket: pocket.thickness,
    lining: lining?.thickness ?? 0,
    frontTurnedEnd: outside.thickness,
    backTurnedEnd: outside.thickness,
  };
  return ({ layers }) => layers.reduce((sum, layer) => sum + thickness[layer], 0);
}
