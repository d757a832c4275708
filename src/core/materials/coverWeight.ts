import type { CoverDesign } from '../fold/coverDesign.ts';
import { pieceOutlines, polygonArea } from './pieceOutline.ts';

/** Grams of a cubic millimetre at 1 kg/m3. */
const GRAMS_PER_MM3 = 1e-6;

/**
 * Weight of the leather of a cover, g: area of every piece as cut x mean thickness x density of its leather. Thread, lace, cement and metal
 * are left out, and so is what skiving takes away.
 */
export function coverWeight(design: CoverDesign): number {
  const { leather: leathers } = design.job;
  return pieceOutlines(design).reduce((sum, { leather, count, polygon }) => {
    const { min_mm: min, max_mm: max, density_kg_m3: density } = leathers[leather]!;
    return sum + ((count * polygonArea(polygon) * (min + max)) / 2) * density * GRAMS_PER_MM3;
  }, 0);
}
