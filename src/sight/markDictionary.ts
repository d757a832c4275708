import aruco from 'js-aruco2';

/** Garrido-Jurado et al. 2016, Generation of fiducial marker dictionaries using mixed integer linear programming. */
const NAME = 'ARUCO_MIP_36h12';

/** Cells along a side of a mark, of which the outermost are black. */
export const MARK_CELLS = 8;

/**
 * Cells of two marks differ in 12 places at least, however turned, so that up to 5 misread cells still tell one from all others;
 * fewer are let through, so that a chance pattern is seldom taken for a mark.
 */
export const MOST_MISREAD = 3;

/** The library takes distances below its limit. */
export const markDetector = () => new aruco.AR.Detector({ dictionaryName: NAME, maxHammingDistance: MOST_MISREAD + 1 });

let codes: readonly string[] | undefined;

/** The cells within the black rim of a mark, row by row from its upper left: '1' is white. */
export function markCode(id: number): string {
  codes ??= new aruco.AR.Dictionary(NAME).codeList;
  return codes[id]!;
}
