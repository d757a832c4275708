import type { CoverDesign } from '../fold/coverDesign.ts';
import type { JobDocument } from '../job/jobDocument.ts';
import type { JobPath } from '../job/jobPath.ts';
import { type ExploreField, exploreFields } from './exploreField.ts';
import { type FitTarget, type MustChange, whatMustChange } from './whatMustChange.ts';

/**
 * Fields that a maker can still decide with the book on the bench. Its measures are not among them, but their error is.
 */
const DECIDED_BY_MAKER: readonly JobPath[] = [
  'ease.foreEdge_mm',
  'ease.head_mm',
  'ease.tail_mm',
  'pattern.outsideWidth_mm',
  'pattern.outsideHeight_mm',
  'pockets.depth_mm',
  'pockets.hold_mm',
  'seam.edgeMargin_mm',
  'leather.outside',
  'leather.outside.foldThickness_mm',
  'leather.pocket',
  'leather.lining',
  'leather.outside.bendRatio',
  'book.measured.error_mm',
];

export interface FieldChange {
  readonly field: ExploreField;
  readonly outcome: MustChange;
}

/**
 * What each of the maker's own fields, alone, must become for the target to fit.
 * @returns changes first, the smallest first, each counted in the steps that its field is set in, since a millimetre of
 *   leather is far more than one of outside; after them the fields that alone are not enough
 */
export function mustChangeList(document: JobDocument, design: CoverDesign, target: FitTarget): readonly FieldChange[] {
  return exploreFields(document, design)
    .filter(({ id }) => DECIDED_BY_MAKER.includes(id))
    .map((field) => ({ field, outcome: whatMustChange(document, field, target) }))
    .sort((a, b) => rank(a) - rank(b));
}

function rank({ field: { step }, outcome }: FieldChange): number {
  return outcome.status === 'change' ? Math.abs(outcome.to - outcome.from) / step : Number.POSITIVE_INFINITY;
}
