import type { RangePoint } from '../../leather/leatherModel.ts';
import { createStripSolver, type StripSolver } from '../../strip/solveStrip.ts';
import { stripSettings } from '../../strip/stripSettings.ts';
import { type CoverDesign, lyingDesign } from '../coverDesign.ts';
import type { InnerPath } from '../section/innerPath.ts';
import { pressedCrease } from './pressedCrease.ts';
import { sectionInputAt } from './sectionInputAt.ts';
import { settledPaths } from './settledPaths.ts';
import { solveSection } from './solveSection.ts';

/** The outside as it lies on the bench at one opening. */
export interface Settled {
  /** Inner faces of the two halves. */
  readonly front: InnerPath;
  readonly back: InnerPath;
  /** Share of the room at the fore-edges that is at the front one, 0 to 1. */
  readonly frontShare: number;
  /** How far the bench is turned from the back board, radians, 0 up: a back that is lower than the board lifts its joint. */
  readonly benchTilt: number;
}

/** The settled outside at an opening, radians; null where the strip did not settle. */
export type Settle = (opening: number) => Settled | null;

/** A solver for shapes to look at: its forces to a thousandth, since leather between board and bench is slow to find finer ones. */
export const createSettleSolver = (): StripSolver =>
  createStripSolver({ ...stripSettings, segments: 320, gap: 1e-5, residual: 1e-3 });

/**
 * Makes the shape that the outside settles into at any opening: the elastic strip, pressed round the book and creased as the
 * job says, with the book on the bench on its back board.
 *
 * The bench is an obstacle below the leather, and the boards lie on it as if held down: leather that is creased sharply is not
 * pressed flat by the weight of the book alone. A round back gives way under that weight, see `lyingBook`. One solve takes some 5 ms, so that the scene can follow while the book is opened.
 * @param solver from createSettleSolver; its memory is used until another shape is made with it
 */
export function settledCover(design: CoverDesign, point: RangePoint, solver: StripSolver): Settle {
  const { fits, needs, job } = design;
  const { leathers } = needs[point];
  const offset = (leathers.lining?.foldThickness ?? 0) + leathers.outside.foldThickness / 2;
  const angles = pressedCrease(design, point, fits[point].staysOpen ?? Math.PI);
  const crease = { angles, set: job.leather.outside.creaseSet };
  const { seat, margin } = needs[point].foreEdge;
  const bench = { overhang: seat + margin };
  return (opening) => {
    const section = solveSection(
      { ...sectionInputAt(lyingDesign(design, point, opening), point, opening, crease), bench },
      solver,
    );
    if (section.status !== 'converged') return null;
    const { front, back } = section.foreEdgeGap;
    const frontShare = front + back > 0 ? front / (front + back) : 1 / 2;
    return { ...settledPaths(section, offset), frontShare, benchTilt: section.benchTilt };
  };
}
