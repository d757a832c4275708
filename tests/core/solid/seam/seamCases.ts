import { coverDesign } from '../../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import type { Pose } from '../../../../src/core/solid/pose.ts';
import { soundJob } from '../../../jobArbitrary.ts';
import { nth } from '../../../nth.ts';

const [tide, choir, shore] = [0, 1, 2].map((i) => nth(EXAMPLE_JOBS, i).document as Record<string, object>) as [
  Record<string, object>,
  Record<string, object>,
  Record<string, object>,
];

const laced = (style: string, more: object = {}) => ({ seam: { method: 'lacing', style, ...more } });
const rounded = { construction: { corners: 'rounded' } };
const clipped = { construction: { corners: 'clipped' } };
const turned = { pockets: { construction: 'turned', depth_mm: 60 } };
const thin = { lining: { min_mm: 0.8, max_mm: 1 } };

/** Twelve covers: every seam style, construction and corner. */
const CASES: readonly (readonly [name: string, document: object])[] = [
  ['stitched, square', { ...choir, seam: { method: 'stitching' } }],
  ['stitched, rounded', { ...tide, seam: { method: 'stitching', cornerRadius_mm: 12 }, ...rounded }],
  ['stitched, turned ends', { ...shore, ...turned }],
  ['stitched, full lining', { ...shore, leather: { ...shore.leather, ...thin }, construction: { lining: 'full' } }],
  ['running', { ...tide, ...laced('running') }],
  ['whip', { ...tide, ...laced('whip') }],
  ['single loop, clipped', { ...choir, ...laced('single loop', { cornerRadius_mm: 8 }), ...clipped }],
  ['double loop', { ...choir, ...laced('double loop') }],
  ['double loop, rounded', { ...choir, ...laced('double loop', { cornerRadius_mm: 15 }), ...rounded }],
  ['triple loop', { ...tide, ...laced('triple loop') }],
  ['whip, turned ends', { ...tide, ...laced('whip'), ...turned }],
  ['running, rounded a little', { ...choir, ...laced('running', { cornerRadius_mm: 5 }), ...rounded }],
];

export const SEAM_CASES = CASES.map(([name, document]) => ({
  name,
  design: () => coverDesign(soundJob(document)),
}));

/** Positions of the film while the seam is there, and openings. */
export const SEAM_POSES: readonly Pose[] = [
  ...[0.36, 0.45, 0.6, 0.75, 0.9, 1].map((at): Pose => ({ kind: 'sequence', at })),
  ...[0, 0.5, 1.2, 2, Math.PI].map((angle): Pose => ({ kind: 'opening', angle })),
];
