import {
  type CoverDesign,
  fieldNote,
  type JobPath,
  type LengthUnit,
  MM_PER_INCH,
  type PatternZone,
} from '../../core/index.ts';
import { END_NAMES, type End } from './track.ts';

/** A handle on the strip: the field of the job that it changes, and by how much. */
export interface Handle {
  readonly path: JobPath;
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

/** mm by which the field of a handle goes up or down at one key press. */
export const stepOf = ({ path }: Handle, unit: LengthUnit): number =>
  STEPS[unit][/^(pattern|pockets)\./.test(path) ? 'size' : 'allowance'];

/** The value on the next whole step after the handle has gone `outward` mm, within what the field allows. */
export function handleValue(handle: Handle, outward: number, unit: LengthUnit): number {
  const { min, max } = fieldNote(handle.path);
  const step = stepOf(handle, unit);
  const value = Math.round((handle.value + handle.rate * outward) / step) * step;
  return Math.min(max, Math.max(min, Number(value.toFixed(6))));
}

type Axis = PatternZone['axis'];

const PATHS = { width: 'pattern.outsideWidth_mm', height: 'pattern.outsideHeight_mm' } as const;

/** Outside size, taken at a cut edge: both edges move, so the size grows twice as fast as the handle goes. */
export const sizeHandle = ({ pieces }: CoverDesign, axis: Axis): Handle => ({
  path: PATHS[axis],
  name: `outside ${axis}`,
  value: pieces.outside[axis],
  rate: 2,
});

/** Pocket depth, taken at the mouth of a separate pocket: the mouth goes inward as the pocket deepens. */
export const mouthHandle = ({ pieces }: CoverDesign): Handle => ({
  path: 'pockets.depth_mm',
  name: 'pocket depth',
  value: pieces.pocketDepth,
  rate: -1,
});

/** Field of the end itself: the turned end where there is one at this edge, else the edge margin. */
function endHandle(design: CoverDesign, axis: Axis, rate: number): Handle {
  const { job } = design;
  if (axis === 'width' && job.pockets.construction === 'turned') return { ...mouthHandle(design), rate };
  return { path: 'seam.edgeMargin_mm', name: 'edge margin', value: job.seam.edgeMargin_mm, rate };
}

/**
 * The two handles of one end, so that each moves the line on which it stands.
 *
 * While the tool decides the size, the seam moves outward with the ease and the cut edge with the margin. Where the maker
 * has given the size, the cut edge moves with that, and the seam inward with the margin.
 */
export function endHandles(design: CoverDesign, axis: Axis, end: End): { readonly cut: Handle; readonly seam: Handle } {
  const { job } = design;
  if (job.pattern[axis === 'width' ? 'outsideWidth_mm' : 'outsideHeight_mm'] !== null)
    return { cut: sizeHandle(design, axis), seam: endHandle(design, axis, -1) };
  const edge = axis === 'width' ? 'foreEdge' : end === 'first' ? 'head' : 'tail';
  const seam: Handle = {
    path: `ease.${edge}_mm`,
    name: `${edge === 'foreEdge' ? 'fore-edge' : END_NAMES.height[end]} ease`,
    value: design.pieces.ease[`${edge}_mm`],
    rate: 1,
  };
  return { cut: endHandle(design, axis, 1), seam };
}
