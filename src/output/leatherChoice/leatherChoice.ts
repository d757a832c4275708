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

interface Row {
  readonly name: string;
  readonly value: (option: LeatherOption) => string;
}

/**
 * Compares leathers for a book.
 * @param options at least one; that with the best chance to fit is marked, the lighter one of equals
 */
export function leatherChoice(options: readonly LeatherOption[], say: Printer): LeatherChoice {
  const best = surest(options);
  const isPriced = options.some((option) => priceOf(option) !== null);
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
  const price: Row = { name: 'Price of the leather', value: (option) => moneyWords(option, say) ?? 'not priced' };
  const weight: Row = { name: 'Weight of the cover', value: ({ design }) => say.mass(coverWeight(design)) };
  const fits: Row = { name: 'Fits', value: ({ report }) => FITS[report.verdict] };
  const hand: Row = { name: 'Thickness in the hand', value: ({ design }) => say.length(inHand(design)) };
  const pricedRows = isPriced ? [price] : [];
  return {
    maker: compared(
      'Leathers for this book',
      [
        { name: 'Weight', value: ({ design: { job } }) => weights(job.leather.outside, say) },
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
        { name: 'Leather to buy', value: ({ design }) => say.area(areaOf(design)) },
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

function surest(options: readonly LeatherOption[]): LeatherOption {
  return [...options].sort(
    (a, b) => hundredths(b) - hundredths(a) || coverWeight(a.design) - coverWeight(b.design),
  )[0]!;
}

const weights = ({ min_mm, max_mm }: { readonly min_mm: number; readonly max_mm: number }, say: Printer): string =>
  say.weights(min_mm, max_mm);

const cutWords = ({ width, height }: { readonly width: number; readonly height: number }, say: Printer): string =>
  `${say.size(width)} × ${say.size(height)}`;

const areaOf = (design: CoverDesign): number => coverSupplies(design).areas.reduce((sum, { gross }) => sum + gross, 0);

/** Price of the leather alone; null where none of it is priced. */
function priceOf({ design }: LeatherOption): number | null {
  const lines = quote(design, coverSupplies(design)).lines.filter(
    ({ group, name }) => group === 'materials' && name.endsWith(' leather'),
  );
  return lines.some(({ amount }) => amount === null) ? null : lines.reduce((sum, { amount }) => sum + amount!, 0);
}

function moneyWords(option: LeatherOption, say: Printer): string | null {
  const price = priceOf(option);
  return price === null ? null : say.money(price, option.design.job.rates);
}

/** The stretch at the folds, and whether this leather is known to bear it. */
function grainWords({ checks }: Report, say: Printer): string {
  const fold = checks.find(({ id }) => id === 'foldStrain')!;
  if (fold.value === null || fold.value === undefined) return 'not known';
  const known = fold.verdict === 'none' ? 'not tested' : fold.verdict === 'fits' ? 'bears it' : 'may crack';
  return `stretches ${say.share(fold.value)}, ${known}`;
}

/** Which fits most surely, and one sentence for each of the others: what it changes. */
function differences(options: readonly LeatherOption[], best: LeatherOption, say: Printer): string[] {
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

function changes(other: LeatherOption, best: LeatherOption, say: Printer): string[] {
  const by = (value: number, text: (size: number) => string, more: string, less: string, least: number): string[] =>
    Math.abs(value) < least ? [] : [`${text(Math.abs(value))} ${value > 0 ? more : less}`];
  const difference = (of: (option: LeatherOption) => number): number => of(other) - of(best);
  const prices = [priceOf(other), priceOf(best)];
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
      difference(({ design }) => coverWeight(design)),
      say.mass,
      'heavier',
      'lighter',
      5,
    ),
    ...(opensTo(other) < Math.PI && opensTo(best) >= Math.PI ? ['no longer opens flat'] : []),
    ...(prices[0] == null || prices[1] == null
      ? []
      : by(prices[0] - prices[1], (amount) => say.money(amount, best.design.job.rates), 'dearer', 'cheaper', 0.005)),
  ];
  return parts.length === 0 ? ['no difference that shows'] : parts;
}
