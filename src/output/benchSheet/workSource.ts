import {
  type CoverDesign,
  type CoverSupplies,
  coverSupplies,
  type Drawing,
  patternDrawing,
  type StepId,
} from '../../core/index.ts';

/** The steps as they are worked, one at a time: some steps that are timed and priced as one are several here. */
export type WorkId = StepId | 'fittings' | 'load' | 'close';

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
