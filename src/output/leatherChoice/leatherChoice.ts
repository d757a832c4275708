import {
  type CoverDesign,
  chanceWords,
  coverSupplies,
  coverWeight,
  type Printer,
  quote,
  type Report,
} from '../../core/index.ts';
import { leastOver } from '../customerSheet/leastOver.ts';
import { standing } from '../customerSheet/opensAndRests.ts';
import { type Compared, FITS, inHand, opens, stiffness } from '../customerSheet/whyThisLeather.ts';

/** The cover of one book in one leather. */
export interface LeatherOption {
  readonly id: string;
  /** Name of the leather. */
  readonly name: string;
  /** Cut anew for it. */
  readonly design: CoverDesign;
  readonly report: Report;
}

/** Two or three leathers for one book, side by side. */
export interface LeatherChoice {
  /** For the maker: all figures. */
  readonly maker: Compared;
  /** For a customer: what is seen, held and paid. */
  readonly customer: Compared;
}

/** An option with what is worked out of it once. */
interface Reckoned extends LeatherOption {
  /** Of the leather in it, g. */
  readonly weight: number;
  /** To buy, mm2. */
  readonly area: number;
  /** Of the leather alone; null where a part of it is not priced. */
  readonly price: number | null;
}

interface Row {
  readonly name: string;
  readonly value: (option: Reckoned) => string;
}

/**
 * Compares leathers for a book.
 * @param asked at least one; that with the best chance to fit is marked, the lighter one of equals
 */
export function leatherChoice(asked: readonly LeatherOption[], say: Printer): LeatherChoice {
  const options = asked.map(reckoned);
  const best = surest(options);
  const isPriced = options.some((option) => option.price !== null);
  const compared = (heading: string, rows: readonly Row[], sentences: readonly string[]): Compared => ({
    heading,
    rows: rows.map(({ name }) => name),
    columns: options.map((option) => ({
      id: option.id,
      name: option.name,
      isChosen: option === best,
      values: rows.map(({ value }) => value(option)),
    })),
    sentences,
  });
  const price: Row = {
    name: 'Price of the leather',
    value: ({ price: amount, design }) => (amount === null ? 'not priced' : say.money(amount, design.job.rates)),
  };
  const weight: Row = { name: 'Weight of the cover', value: (option) => say.mass(option.weight) };
  const fits: Row = { name: 'Fits', value: ({ report }) => FITS[report.verdict] };
  const hand: Row = { name: 'Thickness in the hand', value: ({ design }) => say.length(inHand(design)) };
  const pricedRows = isPriced ? [price] : [];
  return {
    maker: compared(
      'Leathers for this book',
      [
        {
          name: 'Weight',
          value: ({ design: { job } }) => say.weights(job.leather.outside.min_mm, job.leather.outside.max_mm),
        },
        { name: 'Outside, as cut', value: ({ design: { pieces } }) => cutWords(pieces.outside, say) },
        {
          name: 'Added at a fore-edge',
          value: ({ design: { pieces } }) => say.length(pieces.allowances.foreEdge.total),
        },
        { name: 'Added at the head', value: ({ design: { pieces } }) => say.length(pieces.allowances.head.total) },
        {
          name: 'Of it ease, for doubt',
          value: ({ design: { pieces } }) =>
            `${say.length(pieces.ease.foreEdge_mm)} and ${say.length(pieces.ease.head_mm)}`,
        },
        { name: 'Closes in', value: ({ report }) => chanceWords(report.doubt.chance.closes) },
        { name: 'Fits in', value: ({ report }) => chanceWords(report.doubt.chance.fits) },
        { name: 'Opens', value: ({ design }) => opens(design, say) },
        { name: 'New and let go, it', value: ({ report }) => standing(report, say)?.newCover ?? report.origin },
        { name: 'After a day pressed, it', value: ({ report }) => standing(report, say)?.pressedDay ?? report.origin },
        weight,
        hand,
        { name: 'Grain at the folds', value: ({ report }) => grainWords(report, say) },
        { name: 'Leather to buy', value: ({ area }) => say.area(area) },
        ...pricedRows,
      ],
      differences(options, best, say),
    ),
    customer: compared(
      'Which leather',
      [
        fits,
        { name: 'Opens', value: ({ design }) => opens(design, say) },
        hand,
        weight,
        { name: 'Stiffness of the cover', value: ({ design }) => say.share(stiffness(design, best.design)) },
        ...pricedRows,
      ],
      differences(options, best, say),
    ),
  };
}

const surest = (options: readonly Reckoned[]): Reckoned =>
  [...options].sort((a, b) => hundredths(b) - hundredths(a) || a.weight - b.weight)[0]!;

const cutWords = ({ width, height }: { readonly width: number; readonly height: number }, say: Printer): string =>
  `${say.size(width)} × ${say.size(height)}`;

function reckoned(option: LeatherOption): Reckoned {
  const { design } = option;
  const supplies = coverSupplies(design);
  const lines = quote(design, supplies).lines.filter(
    ({ group, name }) => group === 'materials' && name.endsWith(' leather'),
  );
  const isPriced = lines.every(({ amount }) => amount !== null);
  return {
    ...option,
    weight: coverWeight(design),
    area: supplies.areas.reduce((sum, { gross }) => sum + gross, 0),
    price: isPriced ? lines.reduce((sum, { amount }) => sum + amount!, 0) : null,
  };
}

/** The stretch at the folds, and whether this leather is known to bear it. */
function grainWords({ checks }: Report, say: Printer): string {
  const fold = checks.find(({ id }) => id === 'foldStrain')!;
  if (fold.value === null || fold.value === undefined) return 'not known';
  const known = fold.verdict === 'none' ? 'not tested' : fold.verdict === 'fits' ? 'bears it' : 'may crack';
  return `stretches ${say.share(fold.value)}, ${known}`;
}

/** Which fits most surely, and one sentence for each of the others: what it changes. */
function differences(options: readonly Reckoned[], best: Reckoned, say: Printer): string[] {
  const others = options.filter((option) => option !== best);
  if (others.length === 0) return [];
  const alike = others.filter((other) => hundredths(other) === hundredths(best)).length;
  const sure =
    alike === others.length
      ? 'All fit as surely'
      : `${best.name} fits ${alike > 0 ? 'as surely as any' : 'most surely'}, in ${chanceWords(best.report.doubt.chance.fits)}`;
  return [`${sure}.`, ...others.map((other) => `${other.name} in its place: ${changes(other, best, say).join(', ')}.`)];
}

/** Chance to fit as it is printed. */
const hundredths = ({ report }: LeatherOption): number => Math.floor(100 * report.doubt.chance.fits);

function changes(other: Reckoned, best: Reckoned, say: Printer): string[] {
  const by = (value: number, text: (size: number) => string, more: string, less: string, least: number): string[] =>
    Math.abs(value) < least ? [] : [`${text(Math.abs(value))} ${value > 0 ? more : less}`];
  const difference = (of: (option: Reckoned) => number): number => of(other) - of(best);
  const opensTo = ({ design }: LeatherOption): number => leastOver((point) => design.fits[point].opensTo ?? 0);
  const parts = [
    ...(hundredths(other) === hundredths(best) ? [] : [`fits in ${chanceWords(other.report.doubt.chance.fits)}`]),
    ...by(
      difference(({ design }) => design.pieces.outside.width),
      say.size,
      'more width to cut',
      'less width to cut',
      0.25,
    ),
    ...by(
      difference(({ weight }) => weight),
      say.mass,
      'heavier',
      'lighter',
      5,
    ),
    ...(opensTo(other) < Math.PI && opensTo(best) >= Math.PI ? ['no longer opens flat'] : []),
    ...(other.price === null || best.price === null
      ? []
      : by(other.price - best.price, (amount) => say.money(amount, best.design.job.rates), 'dearer', 'cheaper', 0.005)),
  ];
  return parts.length === 0 ? ['no difference that shows'] : parts;
}
