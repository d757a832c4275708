import type { DoubtPath } from '../job/doubtSchema.ts';
import type { Patch } from '../job/jobDocument.ts';
import type { Job, LeatherName } from '../job/jobSchema.ts';
import { type Hand, handDoubts } from './hand.ts';
import type { Known, LeatherKnowledge } from './leatherKnowledge.ts';
import { bendWay } from './leatherUnknowns.ts';
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
  return piece === 'outside' ? [...figures, ...makingPatches(knowledge, hand)] : figures;
}

/** Change of size and hand belong to the whole cover, which is made as its outside is. */
function makingPatches({ change: { along, across } }: LeatherKnowledge, hand: Hand): Patch[] {
  const { margin, cutting } = handDoubts(hand);
  const isHandKnown = hand.margin_mm.from !== 'usual' || hand.cutting_mm.from !== 'usual';
  const doubt = (path: 'seam.edgeMargin_mm' | 'pattern.outsideWidth_mm' | 'pattern.outsideHeight_mm', u: number) => ({
    path: `doubts.${path}` as const,
    value: isHandKnown ? { u: round(u, 3), from: 'measured' } : undefined,
  });
  return [
    ...changed('making.changeAlong', along),
    ...changed('making.changeAcross', across),
    { path: 'making.hand.margin_mm', value: round(hand.margin_mm.value, 2) },
    { path: 'making.hand.cutting_mm', value: round(hand.cutting_mm.value, 2) },
    doubt('seam.edgeMargin_mm', margin),
    doubt('pattern.outsideWidth_mm', cutting),
    doubt('pattern.outsideHeight_mm', cutting),
  ];
}

const changed = (path: 'making.changeAlong' | 'making.changeAcross', known: Known): Patch[] => [
  { path, value: known.from === 'usual' ? null : within(known.value, -0.05, 0.03, 4) },
  doubted(path, known),
];

/** The doubt of a figure; none beyond what is usual where nothing better is known. */
const doubted = (path: DoubtPath, { u, from }: Known): Patch => ({
  path: `doubts.${path}`,
  value: from === 'usual' ? undefined : { u: round(u, 4), from: from === 'shop' ? 'usual' : 'measured' },
});

/** From the thinnest to the thickest reading by callipers; as sold where there is none. */
function thicknessOf({ callipered_mm: read, min_mm: min, max_mm: max }: StockLeather): readonly [number, number] {
  return read.length > 0 ? [Math.min(...read), Math.max(...read)] : [min, max];
}

const round = (value: number, decimals: number): number => Number(value.toFixed(decimals));

/** Rounded, and within what a job may have. */
const within = (value: number, least: number, most: number, decimals: number): number =>
  Math.max(least, Math.min(most, round(value, decimals)));
