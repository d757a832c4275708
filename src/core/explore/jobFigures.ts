import { type NumberField, numberFields } from '../job/jobPaths.ts';

/** Parts of the job from which pattern and fit are computed. */
const SECTIONS = ['book', 'leather', 'making', 'seam', 'pockets', 'ease', 'pattern'] as const;

/**
 * Numbers in those parts that no closed-form result or limit comes from: stiffness, crease set, density and friction
 * serve the elastic strip and the weight, the pitch, the iron and the corners the drawing, the two wraps only the cross-check of the
 * measures. No fold is judged in a pocket, and no seat in a lining.
 */
const WITHOUT_RESULT =
  /^book\.square_mm$|^book\.measured\.(closedWrap|rolledHalf)_mm$|^seam\.((pitch|cornerRadius)_mm$|iron\.)|\.(modulus_MPa|creaseSet|density_kg_m3|friction)$|^leather\.pocket\.(neutral|foldThickness_mm|strainLimit)$|^leather\.lining\.(bendRatio|strainLimit)$/;

/** Every number of the job on which a result or limit may depend, in the order of the schema. */
export const JOB_FIGURES: readonly NumberField[] = SECTIONS.flatMap(numberFields).filter(
  ({ path }) => !WITHOUT_RESULT.test(path),
);
