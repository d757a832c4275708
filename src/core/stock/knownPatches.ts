import type { DoubtPath } from '../job/doubtSchema.ts';
import type { Patch } from '../job/jobDocument.ts';
import type { Job, LeatherName } from '../job/jobSchema.ts';
import { bilinear } from '../math/linear.ts';
import { HAND_DOUBTS, type Hand } from './hand.ts';
import type { Known, LeatherKnowledge } from './leatherKnowledge.ts';
import { bendWay, UNKNOWNS, type Unknown } from './leatherUnknowns.ts';
import type { StockLeather } from './stockSchema.ts';

type LeatherField = keyof Job['leather']['outside'];

/** A leather of the shelf as a job takes it. */
export interface TakenLeather {
  readonly id: string;
  readonly revision: number;
  readonly leather: StockLeather;
}

/**
 * What a job is told of a leather when it takes it: the changes of the job for one of its leathers, `leather.PIECE.taken` among them.
 *
 * Thickness by callipers where there is any reading, else the range as sold. K and bend ratio are those of the bends that decide the wrap,
 * round folds that run along the height: across the backbone, or along it where the piece is turned (`making.backbone`). The
 * outside also brings the change of size for the way in which the job is worked, the maker's hand, colour and surface. Doubts go with
 * their figures. What is not known beyond what is usual stays out of the change of size, so that the job goes on to show it as usual.
 * @param knowledge of this leather, worked as the job says
 */
export function knownPatches(
  piece: LeatherName,
  { id, revision, leather }: TakenLeather,
  knowledge: LeatherKnowledge,
  hand: Hand,
  job: Job,
): readonly Patch[] {
  const of = <Key extends LeatherField>(key: Key) => `leather.${piece}.${key}` as const;
  const way = bendWay('wrap', job.making.backbone);
  const { neutral, bendRatio, modulus_MPa: modulus, creaseSet, density_kg_m3: density } = knowledge;
  const [thin, thick] = thicknessOf(leather);
  const price = leather.price_per_dm2;
  const figures: Patch[] = [
    { path: of('min_mm'), value: thin },
    { path: of('max_mm'), value: thick },
    { path: of('neutral'), value: within(neutral[way].value, 0.4, 0.8, 3) },
    { path: of('bendRatio'), value: within(bendRatio[way].value, 0.02, 3, 3) },
    { path: of('modulus_MPa'), value: within(modulus[way].value, 20, 200, 0) },
    { path: of('creaseSet'), value: within(creaseSet.value, 0, 1, 2) },
    { path: of('density_kg_m3'), value: within(density.value, 300, 1500, 0) },
    { path: of('taken'), value: { id, revision, name: leather.name } },
    ...(piece === 'lining' ? [] : [doubted(`leather.${piece}.bendRatio`, bendRatio[way])]),
    ...(piece === 'outside' ? [doubted('leather.outside.neutral', neutral[way])] : []),
    { path: `finish.${piece}.colour`, value: leather.colour },
    { path: `finish.${piece}.surface`, value: leather.surface },
    ...(price === null ? [] : [{ path: `rates.prices.${piece}_per_dm2` as const, value: price }]),
  ];
  return piece === 'outside'
    ? [...figures, ...makingPatches(knowledge, hand, job, [neutral[way], bendRatio[way]])]
    : figures;
}

/**
 * Change of size and hand belong to the whole cover, which is made as its outside is. What stays unknown of the hand is put into the doubt of
 * the two cut sizes, the chance of margins alone into that of the margins; then correlations of six inputs say all that is known.
 */
function makingPatches({ change, joint }: LeatherKnowledge, hand: Hand, job: Job, bends: readonly Known[]): Patch[] {
  const patches: Patch[] = [
    ...changed('making.changeAlong', change.along),
    ...changed('making.changeAcross', change.across),
    { path: 'making.hand.margin_mm', value: round(hand.margin_mm.value, 2) },
    { path: 'making.hand.cutting_mm', value: round(hand.cutting_mm.value, 2) },
  ];
  const isHandKnown = hand.margin_mm.from !== 'usual' || hand.cutting_mm.from !== 'usual';
  const inputs = cutInputs(job);
  const sums = inputs.map(({ parts }) => UNKNOWNS.map((unknown) => parts[unknown] ?? 0));
  const variances = sums.map((sum, i) => bilinear(sum, joint.covariance, sum) + (inputs[i]!.chance ?? 0) ** 2);
  const isUsual = !isHandKnown && [...bends, change.along, change.across].every(({ from }) => from === 'usual');
  const theirs = job.correlations.filter(
    ({ a, b }) => ![a, b].every((path) => inputs.some((each) => each.path === path)),
  );
  const ours = inputs.flatMap(({ path: a, chance: ofA }, i) =>
    inputs.slice(i + 1).flatMap(({ path: b, chance: ofB }, k) => {
      const r =
        bilinear(sums[i]!, joint.covariance, sums[i + 1 + k]!) / Math.sqrt(variances[i]! * variances[i + 1 + k]!);
      const isOfHand = ofA !== undefined || ofB !== undefined;
      return Math.abs(r) < NOTICED || (isOfHand && !isHandKnown) ? [] : [{ a, b, r: round(r, 6) }];
    }),
  );
  const doubt = (path: DoubtPath, u: number): Patch => ({
    path: `doubts.${path}`,
    value: isHandKnown ? { u: round(u, 4), from: 'measured' } : undefined,
  });
  return [
    ...patches,
    doubt('seam.edgeMargin_mm', HAND_DOUBTS.margin.chance),
    ...inputs.flatMap(({ path, chance }, i) => (chance === undefined ? [] : [doubt(path, Math.sqrt(variances[i]!))])),
    { path: 'correlations', value: isUsual ? theirs : [...theirs, ...ours] },
  ];
}

/** Correlations below this alter no figure that is shown. */
const NOTICED = 0.001;

/** An input of a cover as a sum of the unknowns; of a cut size also its chance, mm. */
interface CutInput {
  readonly path: DoubtPath;
  readonly parts: Partial<Record<Unknown, number>>;
  readonly chance?: number;
}

/** The inputs that leather and hand put in doubt together. */
function cutInputs({ making, pockets }: Job): readonly CutInput[] {
  const way = bendWay('wrap', making.backbone);
  const { chance } = HAND_DOUBTS.cutting;
  const margins = { 'hand.margin': -2, 'hand.cutting': 1 } as const;
  return [
    { path: 'leather.outside.neutral', parts: { [`neutral.${way}`]: 1 } },
    { path: 'leather.outside.bendRatio', parts: { [`bendRatio.${way}`]: 1 } },
    { path: 'making.changeAlong', parts: { [`change.${making.state}.along`]: 1 } },
    { path: 'making.changeAcross', parts: { [`change.${making.state}.across`]: 1 } },
    // A turned end has no margin at the fore-edge.
    {
      path: 'pattern.outsideWidth_mm',
      parts: pockets.construction === 'turned' ? { 'hand.cutting': 1 } : margins,
      chance,
    },
    { path: 'pattern.outsideHeight_mm', parts: margins, chance },
  ];
}

const changed = (path: 'making.changeAlong' | 'making.changeAcross', known: Known): Patch[] => [
  { path, value: known.from === 'usual' ? null : within(known.value, -0.05, 0.03, 5) },
  doubted(path, known),
];

/** The doubt of a figure; none beyond what is usual where nothing better is known. */
const doubted = (path: DoubtPath, { u, from }: Known): Patch => ({
  path: `doubts.${path}`,
  value: from === 'usual' ? undefined : { u: round(u, 6), from: from === 'shop' ? 'usual' : 'measured' },
});

/** From the thinnest to the thickest reading by callipers; as sold where there is none. */
function thicknessOf({ callipered_mm: read, min_mm: min, max_mm: max }: StockLeather): readonly [number, number] {
  return read.length > 0 ? [Math.min(...read), Math.max(...read)] : [min, max];
}

const round = (value: number, decimals: number): number => Number(value.toFixed(decimals));

/** Rounded, and within what a job may have. */
const within = (value: number, least: number, most: number, decimals: number): number =>
  Math.max(least, Math.min(most, round(value, decimals)));
