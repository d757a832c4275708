import type { Job } from '../job/jobSchema.ts';
import type { CoverSupplies } from './coverSupplies.ts';

/** The steps of making a cover, in their order. */
export type StepId = 'measure' | 'mockup' | 'cut' | 'edges' | 'punch' | 'assemble' | 'stitch' | 'lace' | 'finish';

/** One step with the time that the job's rates give it. */
export interface WorkStep {
  readonly id: StepId;
  readonly name: string;
  readonly minutes: number;
  /** What may hurt here, and how to avoid it. Common practice, no source; data sheet and local rules come first. */
  readonly cautions: readonly string[];
}

const KNIFE = 'Knife and straight-edge: cut away from the hand, keep the blade sharp.';
const LASER =
  'Laser: never cut PVC: it frees toxic, corrosive fumes (hydrogen chloride). Chrome-tanned leather: its fumes may carry chromium; many machine makers forbid it. Follow the machine maker and the local rules.';
const DUST = 'Leather and sanding dust: extract it or wear a mask.';
const AWL = 'Awl and lacing chisel: work over a board, never toward the palm.';
const CEMENT =
  'Contact cement: the vapour is flammable and harmful. Ventilate, no flame; follow the safety data sheet and local rules.';
const DRESSING =
  'Dressings and finishes: follow the safety data sheet; oily rags can catch fire by themselves, dry them flat.';

/** Order of work with times and cautions; holes are made before the layers are joined, so that they match. */
export function workSteps({ rates, seam }: Job, { outlines, holes, punched, cement }: CoverSupplies): WorkStep[] {
  const { minutes } = rates;
  const pieces = outlines.reduce((sum, { count }) => sum + count, 0);
  const join: WorkStep =
    seam.method === 'lacing'
      ? { id: 'lace', name: 'Lace the seam', minutes: minutes.lace * holes, cautions: [AWL] }
      : { id: 'stitch', name: 'Stitch the seam', minutes: minutes.stitch * holes, cautions: [AWL] };
  return [
    { id: 'measure', name: 'Measure and draft', minutes: minutes.measure, cautions: [KNIFE] },
    { id: 'mockup', name: 'Card mock-up', minutes: minutes.mockup, cautions: [KNIFE] },
    { id: 'cut', name: 'Cut the leather', minutes: minutes.cut * pieces, cautions: [KNIFE, LASER] },
    { id: 'edges', name: 'Skive and bevel', minutes: minutes.edges, cautions: [KNIFE, DUST] },
    {
      id: 'punch',
      name: seam.method === 'lacing' ? 'Cut the slits' : 'Prick the holes',
      minutes: minutes.punch * punched,
      cautions: [AWL],
    },
    { id: 'assemble', name: 'Assemble', minutes: minutes.assemble, cautions: cement > 0 ? [CEMENT] : [] },
    join,
    { id: 'finish', name: 'Burnish, dress and load', minutes: minutes.finish, cautions: [DUST, DRESSING] },
  ];
}
