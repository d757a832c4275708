import type { CoverDesign, Printer, Verdict } from '../../core/index.ts';
import { leastOver } from './leastOver.ts';
import type { OfferedPrice } from './offer.ts';
import { roomAtEachSide } from './roomPicture.ts';

/** The cover in one leather, or in one weight of it. */
interface Weighed {
  readonly design: CoverDesign;
  readonly verdict: Verdict;
  readonly price: OfferedPrice | null;
}

interface Weights {
  readonly lighter: Weighed | null;
  readonly chosen: Weighed;
  readonly heavier: Weighed | null;
}

/** The weights of leather side by side. */
export interface Compared {
  readonly heading: string;
  /** What is compared, row by row. */
  readonly rows: readonly string[];
  readonly columns: readonly {
    readonly id: string;
    readonly name: string;
    readonly isChosen: boolean;
    readonly values: readonly string[];
  }[];
  /** What another weight would change. */
  readonly sentences: readonly string[];
}

/** In a table, whether a cover fits. */
export const FITS: Readonly<Record<Verdict, string>> = {
  fits: 'yes',
  tight: 'just',
  loose: 'too loose',
  fails: 'no',
  unknown: 'not known',
  none: '',
};

/** Compares the chosen leather with a lighter and a heavier one, each cover cut for its own leather. */
export function whyThisLeather({ lighter, chosen, heavier }: Weights, say: Printer): Compared {
  const named = Object.entries({ lighter, chosen, heavier }) as [keyof Weights, Weighed | null][];
  const columns = named
    .flatMap(([id, each]) => (each === null ? [] : [{ id, each }]))
    // A typed weight may lie on the other side of the chosen one.
    .sort((a, b) => inHand(a.each.design) - inHand(b.each.design));
  const all = columns.map(({ each }) => each);
  const isPriced = all.some(({ price }) => price !== null);
  const values = ({ design, verdict, price }: Weighed): string[] => [
    FITS[verdict],
    say.signedGap(roomAtEachSide(design)),
    say.signedGap(leastOver((point) => Math.min(design.fits[point].head, design.fits[point].tail))),
    opens(design, say),
    say.length(inHand(design)),
    say.share(stiffness(design, chosen.design)),
    ...(isPriced ? [price === null ? 'not priced' : say.money(price.total, price)] : []),
  ];
  return {
    heading: 'Why this leather',
    rows: [
      'Fits',
      'Room at each side',
      'Room at the top and the bottom',
      'Opens',
      'Thickness in the hand',
      'Stiffness of the cover',
      ...(isPriced ? ['Price'] : []),
    ],
    columns: columns.map(({ id, each }) => ({
      id,
      name: nameOf(each, say),
      isChosen: each === chosen,
      values: values(each),
    })),
    sentences: [
      ...reason(all, chosen, say),
      ...all.flatMap((other) => (other === chosen ? [] : differences(other, chosen, say))),
      ...(isPriced && all.length > 1 ? ['Every weight is reckoned at the same price for its area.'] : []),
    ],
  };
}

/** What speaks for the chosen weight: that another does not fit, or else only how it feels. */
function reason(all: readonly Weighed[], chosen: Weighed, say: Printer): string[] {
  const failing = all.filter(({ verdict }) => verdict === 'fails' || verdict === 'loose');
  if (failing.includes(chosen)) return [];
  if (failing.length > 0)
    return failing.map(
      (each) => `${nameOf(each, say)} would not fit: ${each.verdict === 'loose' ? 'too loose' : 'too small'}.`,
    );
  return all.length === 1
    ? []
    : ['Each of them would fit, so the choice is one of feel: thinner in the hand, or stiffer.'];
}

const nameOf = ({ design: { job } }: Weighed, say: Printer): string =>
  say.weights(job.leather.outside.min_mm, job.leather.outside.max_mm);

export function opens({ fits }: CoverDesign, say: Printer): string {
  const opensTo = leastOver((point) => fits[point].opensTo ?? 0);
  return opensTo >= Math.PI ? 'flat' : opensTo === 0 ? 'not at all' : say.angle(opensTo, 'down');
}

/** The book in its cover at the spine edge, mm. */
export function inHand({ job, needs }: CoverDesign): number {
  const { outside, lining } = needs.nominal.leathers;
  return job.book.thickness_mm + 2 * (outside.thickness + (lining?.thickness ?? 0));
}

/**
 * Stiffness of the outside as a share of that of another, by E and the cube of its thickness (bending stiffness of a plate,
 * E t^3 / 12 (1 - nu^2); Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 1959, section 1; from memory).
 */
export function stiffness(of: CoverDesign, other: CoverDesign): number {
  const [one, two] = [of, other].map(
    ({ job, needs }) => job.leather.outside.modulus_MPa * needs.nominal.leathers.outside.thickness ** 3,
  );
  return one! / two!;
}

function differences(other: Weighed, chosen: Weighed, say: Printer): string[] {
  const more = inHand(other.design) - inHand(chosen.design);
  const stiffer = stiffness(other.design, chosen.design) - 1;
  const name = nameOf(other, say);
  const isHeavier = more > 0;
  return [
    `In ${name} the book is ${say.length(Math.abs(more))} ${isHeavier ? 'thicker' : 'thinner'} in the hand, and its cover ${say.share(Math.abs(stiffer))} ${isHeavier ? 'stiffer' : 'less stiff'}.`,
    ...cost(other.price, chosen.price, name, say),
  ];
}

/** Only prices that leave out the same can be compared. */
function cost(other: OfferedPrice | null, chosen: OfferedPrice | null, name: string, say: Printer): string[] {
  if (other === null || chosen === null || other.unpriced.join() !== chosen.unpriced.join()) return [];
  const more = other.total - chosen.total;
  if (Math.abs(more) < 0.5 * 10 ** -chosen.decimals) return [`${name} costs the same.`];
  return [`${name} costs ${say.money(Math.abs(more), chosen)} ${more > 0 ? 'more' : 'less'}.`];
}
