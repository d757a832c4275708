import { runLength, type SeamLine } from './seamLine.ts';

/**
 * Area to be coated with contact cement, mm2: 2 (layers - 1) x band x length, for both faces of every joint.
 * @param band width of the band along the seam, mm, 0 or more
 */
export const cementArea = (seams: readonly SeamLine[], band: number): number =>
  seams
    .flatMap(({ runs }) => runs)
    .reduce((sum, run) => sum + 2 * Math.max(0, run.layers - 1) * band * runLength(run), 0);
