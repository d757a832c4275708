import type { CoverDesign } from '../../core/fold/coverDesign.ts';
import { fieldNote } from '../../core/job/fieldNote.ts';
import { MM_PER_INCH } from '../../core/units/mm.ts';
import type { LengthUnit } from '../../core/units/parseLength.ts';
import { END_NAMES, type End } from './lane.ts';
import type { PatternZone } from './patternZone.ts';

/** A handle on the strip: the field of the job that it changes, and by how much. */
export interface Grip {
  readonly path: string;
  readonly name: string;
  /** Value in force, mm. */
  readonly value: number;
  /** How much the value grows, mm, for each millimetre that the handle goes outward, away from spine and board. */
  readonly rate: number;
}

/** A step of the handle, mm: what a ruler shows, and finer where leather is what is measured. */
const STEPS: Readonly<Record<LengthUnit, { readonly size: number; readonly allowance: number }>> = {
  mm: { size: 0.5, allowance: 0.1 },
  in: { size: MM_PER_INCH / 32, allowance: MM_PER_INCH / 64 },
};

/** mm by which the field of a grip goes up or down at one key press. */
export const stepOf = ({ path }: Grip, unit: LengthUnit): number =>
  STEPS[unit][/^(pattern|pockets)\./.test(path) ? 'size' : 'allowance'];

/** The value on the next whole step after the handle has gone `outward` mm, within what the field allows. */
export function gripValue(grip: Grip, outward: number, unit: LengthUnit): number {
  const { min, max } = fieldNote(grip.path);
  const step = stepOf(grip, unit);
  const value = Math.round((grip.value + grip.rate * outward) / step) * step;
  return Math.min(max, Math.max(min, Number(value.toFixed(6))));
}

type Axis = PatternZone['axis'];

const PATHS = { width: 'pattern.outsideWidth_mm', height: 'pattern.outsideHeight_mm' } as const;

/** Outside size, taken at a cut edge: both edges move, so the size grows twice as fast as the handle goes. */
export const sizeGrip = ({ pieces }: CoverDesign, axis: Axis): Grip => ({
  path: PATHS[axis],
  name: `outside ${axis}`,
  value: pieces.outside[axis],
  rate: 2,
});

/** Pocket depth, taken at the mouth of a separate pocket: the mouth goes inward as the pocket deepens. */
export const mouthGrip = ({ pieces }: CoverDesign): Grip => ({
  path: 'pockets.depth_mm',
  name: 'pocket depth',
  value: pieces.pocketDepth,
  rate: -1,
});

/** What the end itself takes: the turned end where there is one at this edge, else the edge margin. */
function endGrip(design: CoverDesign, axis: Axis, rate: number): Grip {
  const { job } = design;
  if (axis === 'width' && job.pockets.construction === 'turned') return { ...mouthGrip(design), rate };
  return { path: 'seam.edgeMargin_mm', name: 'edge margin', value: job.seam.edgeMargin_mm, rate };
}

/**
 * The two handles of one end, so that each moves the line on which it stands.
 *
 * While the tool decides the size, the seam moves outward with the ease and the cut edge with the margin. Where the maker
 * has given the size, the cut edge moves with that, and the seam inward with the margin.
 */
export function endGrips(design: CoverDesign, axis: Axis, end: End): { readonly cut: Grip; readonly seam: Grip } {
  const { job } = design;
  if (job.pattern[axis === 'width' ? 'outsideWidth_mm' : 'outsideHeight_mm'] !== null)
    return { cut: sizeGrip(design, axis), seam: endGrip(design, axis, -1) };
  const edge = axis === 'width' ? 'foreEdge' : end === 'first' ? 'head' : 'tail';
  const seam = {
    path: `ease.${edge}_mm`,
    name: `${edge === 'foreEdge' ? 'fore-edge' : END_NAMES.height[end]} ease`,
    value: job.ease[`${edge}_mm`],
    rate: 1,
  };
  return { cut: endGrip(design, axis, 1), seam };
}
