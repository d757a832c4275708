import { capital } from '../words/capital.ts';
import { listed } from '../words/listed.ts';
import { titled } from '../words/titled.ts';
import type { FASTENINGS } from './constructionSchema.ts';
import { holeNoun } from './holeNoun.ts';
import type { Job } from './jobSchema.ts';
import type { OptionalStep, WorkId } from './orderSchema.ts';
import { isPunchedTogether, isStepTaken } from './stepTaken.ts';

/** The steps that are timed and priced, one by one. */
export type StepId = Exclude<WorkId, 'fittings' | 'load' | 'close'>;

/** One step of the order of work. */
export interface OrderedStep {
  readonly id: StepId;
  readonly name: string;
  /** Dangers and how to avoid them. Common practice, no source; data sheet and local rules come first. */
  readonly cautions: readonly string[];
}

export const KNIFE = 'Knife and straight-edge: cut away from the hand, keep the blade sharp.';
export const DUST = 'Leather and sanding dust: extract it or wear a mask.';
/** Tools for the holes of each kind of seam. */
const HOLES = {
  stitching: 'Pricking iron, mallet and awl: work over a board, never toward the palm.',
  lacing: 'Awl and lacing chisel: work over a board, never toward the palm.',
  punched: 'Drive punch, mallet and awl: work over a board, never toward the palm.',
} as const;

const holeCaution = ({ seam }: Job): string => HOLES[seam.iron?.kind === 'drive punch' ? 'punched' : seam.method];
const CEMENT =
  'Contact cement: the vapour of solvent cement is flammable and harmful. Ventilate, keep flames and sparks away, wear gloves. ' +
  'Follow its safety data sheet and the local rules. Water-based cement: see its data sheet.';
export const DRESSING =
  'Dressings, finishes and edge paint: follow the safety data sheet and the local rules. Oily rags can catch fire by themselves: dry them flat.';
const SETTER =
  'Setters and punches: strike square on a hard base, protect the eyes. Follow the instructions of the fastening.';
const FASTENING: Readonly<Record<(typeof FASTENINGS)[number], string>> = {
  stud: SETTER,
  snap: SETTER,
  buckle: SETTER,
  magnet:
    'Strong magnets: they pinch, and swallowed they injure. Keep them from children, from pacemakers and from cards. Follow their instructions.',
};
const TOOLING =
  'Swivel knife, stamps and mallet: keep the free hand behind the blade. Heat pens, hot tools and hot foil burn skin and give off ' +
  'fumes: put them on a stand, ventilate. Follow their instructions and the local rules.';
export const DYE =
  'Dyes: many are thinned with alcohol or another solvent, whose vapour is flammable and harmful. Ventilate, keep flames and ' +
  'sparks away, wear gloves. Follow the safety data sheet and the local rules.';

const punchName = (job: Job): string => {
  if (job.seam.iron?.kind === 'drive punch') return 'Punch the holes';
  return holeNoun(job) === 'slits' ? 'Cut the slits' : 'Prick the holes';
};

/** Names of the steps that a cover may do without. */
export const OPTIONAL_STEP_NAMES: Readonly<Record<OptionalStep, string>> = {
  case: 'Case the leather',
  trace: 'Trace the design',
  tool: 'Tool the design',
  dry: 'Dry the leather',
  dye: 'Dye the leather',
  dress: 'Dress the leather',
  line: 'Lay the lining in',
  cement: 'Cement the layers',
};

/** Cautions of the optional steps. */
const CAUTIONS: Readonly<Record<OptionalStep, readonly string[]>> = {
  case: [],
  trace: [],
  tool: [TOOLING],
  dry: [],
  dye: [DYE],
  dress: [DRESSING],
  line: [],
  cement: [CEMENT],
};

/**
 * Order of work, each step once.
 *
 * Leather is cased, tooled and dried before it is dressed, and dressed before it is joined. Holes are made before the layers
 * are joined, so that they match, or after they are cemented, through all of them at once.
 */
export function workOrder(job: Job): OrderedStep[] {
  const isLaced = job.seam.method === 'lacing';
  const cautions = [holeCaution(job)];
  const optional = (...ids: readonly OptionalStep[]): OrderedStep[] =>
    ids
      .filter((id) => isStepTaken(job, id))
      .map((id) => ({ id, name: OPTIONAL_STEP_NAMES[id], cautions: CAUTIONS[id] }));
  const isCementedHere = job.supplies.cementBand_mm > 0 && !isStepTaken(job, 'cement');
  const punch: OrderedStep = { id: 'punch', name: punchName(job), cautions };
  const join: OrderedStep[] = [
    ...optional('line', 'cement'),
    { id: 'assemble', name: 'Assemble', cautions: isCementedHere ? [CEMENT] : [] },
  ];
  const seamCautions = job.order.clip_mm === null ? cautions : [KNIFE, ...cautions];
  return [
    { id: 'measure', name: 'Measure and draft', cautions: [KNIFE] },
    { id: 'mockup', name: titled('card trial'), cautions: [KNIFE] },
    { id: 'cut', name: 'Cut the leather', cautions: [KNIFE] },
    { id: 'edges', name: job.finish.edge === 'raw' ? 'Skive' : 'Skive and bevel', cautions: [KNIFE, DUST] },
    ...optional(...wetSteps(job), 'dress'),
    ...(isPunchedTogether(job) ? [...join, punch] : [punch, ...join]),
    isLaced
      ? { id: 'lace', name: 'Lace the seam', cautions: seamCautions }
      : { id: 'stitch', name: 'Stitch the seam', cautions: seamCautions },
    {
      id: 'finish',
      name: inOneName([...finishing(job), 'load']),
      cautions: [...(job.finish.edge === 'raw' ? [] : [DUST]), ...(finishing(job).length === 0 ? [] : [DRESSING])],
    },
  ];
}

/** What is done to the sewn cover before the book goes in, each in a word or two; none where raw edges are dressed before. */
export const finishing = (job: Job): readonly string[] => [
  ...{ raw: [], burnished: ['burnish edges'], painted: ['paint edges'] }[job.finish.edge],
  ...(isStepTaken(job, 'dress') ? [] : ['dress']),
];

/** Work that is done together, as the name of a step: `Burnish edges, dress and load`. */
export const inOneName = (words: readonly string[]): string => capital(listed(words));

/** What is sewn on or laid in by itself before the layers are joined, timed with assembling; null for a cover without fittings. */
export function fittingsStep(job: Job): { readonly name: string; readonly cautions: readonly string[] } | null {
  const { strap, ribbon, penLoop } = job.construction;
  const names = [strap?.shape, ribbon && 'ribbon', penLoop && 'pen loop'].filter((name) => typeof name === 'string');
  if (names.length === 0) return null;
  return {
    name: `Fit ${names.join(names.length === 3 ? ', ' : ' and ')}`,
    cautions: strap === null ? [] : [holeCaution(job), FASTENING[strap.fastening]],
  };
}

/** The steps that wet or mark the leather, in their order: it dries before it is dyed where it was cased, and else after. */
function wetSteps(job: Job): readonly OptionalStep[] {
  if (job.order.dyeing === 'before tooling') return ['dye', 'case', 'trace', 'tool', 'dry'];
  return isStepTaken(job, 'case') ? ['case', 'trace', 'tool', 'dry', 'dye'] : ['trace', 'tool', 'dye', 'dry'];
}
