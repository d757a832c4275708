import { type CoverDesign, type CoverSupplies, coverSupplies, type Drawing, patternDrawing } from '../../core/index.ts';

/** What a design gives for all its steps; given again when they are printed in another unit. */
export interface WorkSource {
  readonly design: CoverDesign;
  readonly supplies: CoverSupplies;
  readonly drawing: Drawing;
}

export const workSource = (design: CoverDesign): WorkSource => ({
  design,
  supplies: coverSupplies(design),
  drawing: patternDrawing(design),
});
