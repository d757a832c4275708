import type { RangePoint } from '../../leather/leatherModel.ts';
import type { StripSolver } from '../../strip/solveStrip.ts';
import type { CoverDesign } from '../coverDesign.ts';
import type { InnerPath } from '../section/innerPath.ts';
import { pressedCrease } from './pressedCrease.ts';
import { sectionInputAt } from './sectionInputAt.ts';
import { settledPath } from './settledPath.ts';
import { solveSection } from './solveSection.ts';

/** Inner face of the settled outside at an opening, radians; null where the strip did not settle. */
export type Settle = (opening: number) => InnerPath | null;

/**
 * Makes the shape that the outside settles into at any opening: the elastic strip, pressed round the book and creased as the
 * job says.
 *
 * One solve takes about 2 ms, so that the scene can follow while the book is opened.
 * @param solver its memory is used until another shape is made with it
 */
export function settledCover(design: CoverDesign, point: RangePoint, solver: StripSolver): Settle {
  const { fits, needs, job } = design;
  const { leathers } = needs[point];
  const offset = (leathers.lining?.foldThickness ?? 0) + leathers.outside.foldThickness / 2;
  const angles = pressedCrease(design, point, fits[point].staysOpen ?? Math.PI);
  const crease = { angles, set: job.leather.outside.creaseSet };
  return (opening) => {
    const section = solveSection(sectionInputAt(design, point, opening, crease), solver);
    if (section.status !== 'converged') return null;
    const gap = (section.foreEdgeGap.front + section.foreEdgeGap.back) / 2;
    return settledPath(section, offset, gap);
  };
}
