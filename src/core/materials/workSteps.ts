import type { Job } from '../job/jobSchema.ts';
import { titled } from '../words/titled.ts';
import type { CoverSupplies } from './coverSupplies.ts';

/** The steps of making a cover, in their order. */
export type StepId = 'measure' | 'mockup' | 'cut' | 'edges' | 'punch' | 'assemble' | 'stitch' | 'lace' | 'finish';

/** One step with the time that the job's rates give it. */
export interface WorkStep {
  readonly id: StepId;
  readonly name: string;
  readonly minutes: number;
  /** Dangers and how to avoid them. Common practice, no source; data sheet and local rules come first. */
  readonly cautions: readonly string[];
}

export const KNIFE = 'Knife and straight-edge: cut away from the hand, keep the blade sharp.';
const DUST = 'Leather and sanding dust: extract it or wear a mask.';
/** Tools for the holes of each kind of seam. */
const HOLES = {
  stitching: 'Pricking iron, mallet and awl: work over a board, never toward the palm.',
  lacing: 'Awl and lacing chisel: work over a board, never toward the palm.',
} as const;
const CEMENT =
  'Contact cement: the vapour of solvent cement is flammable and harmful. Ventilate, keep flames and sparks away, wear gloves. ' +
  'Follow its safety data sheet and the local rules. Water-based cement: see its data sheet.';
const DRESSING =
  'Dressings and finishes: follow the safety data sheet and the local rules. Oily rags can catch fire by themselves: dry them flat.';

/** Order of work with times and cautions; holes are made before the layers are joined, so that they match. */
export function workSteps({ rates, seam }: Job, { outlines, holes, punched, cement }: CoverSupplies): WorkStep[] {
  const { minutes } = rates;
  const pieces = outlines.reduce((sum, { count }) => sum + count, 0);
  const cautions = [HOLES[seam.method]];
  const join: WorkStep =
    seam.method === 'lacing'
      ? { id: 'lace', name: 'Lace the seam', minutes: minutes.lace * holes, cautions }
      : { id: 'stitch', name: 'Stitch the seam', minutes: minutes.stitch * holes, cautions };
  return [
    { id: 'measure', name: 'Measure and draft', minutes: minutes.measure, cautions: [KNIFE] },
    { id: 'mockup', name: titled('card trial'), minutes: minutes.mockup, cautions: [KNIFE] },
    { id: 'cut', name: 'Cut the leather', minutes: minutes.cut * pieces, cautions: [KNIFE] },
    { id: 'edges', name: 'Skive and bevel', minutes: minutes.edges, cautions: [KNIFE, DUST] },
    {
      id: 'punch',
      name: seam.method === 'lacing' ? 'Cut the slits' : 'Prick the holes',
      minutes: minutes.punch * punched,
      cautions,
    },
    { id: 'assemble', name: 'Assemble', minutes: minutes.assemble, cautions: cement > 0 ? [CEMENT] : [] },
    join,
    { id: 'finish', name: 'Burnish, dress and load', minutes: minutes.finish, cautions: [DUST, DRESSING] },
  ];
}
