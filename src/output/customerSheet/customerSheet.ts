import {
  briefReport,
  type CoverDesign,
  FACE_TITLES,
  holeNoun,
  type Job,
  leastWrap,
  type Printer,
  printer,
  type Report,
  type ToolingDesign,
  toolingAreas,
  type Verdict,
} from '../../core/index.ts';
import { finishWords, fittingWords } from '../fittingWords.ts';
import { type Offer, type OfferedPrice, offeredPrice, PLAIN_OFFER } from './offer.ts';
import { opensAndRests } from './opensAndRests.ts';
import { otherWeights } from './otherWeights.ts';
import { type RoomPicture, roomPicture } from './roomPicture.ts';
import { slipsOn } from './slipsOn.ts';
import { type Compared, whyThisLeather } from './whyThisLeather.ts';

/** A named fact about the cover. */
interface Said {
  readonly name: string;
  readonly value: string;
}

/** Sentences under a heading, and a picture where one helps. */
interface Passage {
  readonly heading: string;
  readonly sentences: readonly string[];
  readonly picture: RoomPicture | null;
}

/** How far the two covers of the sheet are open, radians: half open shows the pockets, boards and leather. */
export const OPENINGS = { closed: 0, open: (110 * Math.PI) / 180 } as const;

/** What a customer is shown of a job, without sums and patterns. The page and the PDF print all of it and nothing else. */
export interface CustomerSheet {
  readonly title: string;
  /** What it is, and who makes it. */
  readonly lead: string;
  /** Day of the offer; empty for none. */
  readonly date: string;
  readonly verdict: Verdict;
  /** The fit in plain words. */
  readonly fit: string;
  /** What each of the two pictures shows. */
  readonly covers: Readonly<Record<keyof typeof OPENINGS, string>>;
  readonly passages: readonly Passage[];
  readonly weights: Compared;
  readonly madeOf: { readonly heading: string; readonly facts: readonly Said[] };
  readonly caution: string;
  /** What is signed on paper. */
  readonly agreement: { readonly heading: string; readonly sentence: string; readonly blanks: readonly string[] };
}

/**
 * Describes a design to a customer.
 * @param report of the same design; with the elastic strip it tells how the cover rests too
 * @param offer what the maker adds: the day, the weights to compare, the prices
 * @param leathers compared in place of lighter and heavier ones
 */
export function customerSheet(
  design: CoverDesign,
  report: Report,
  offer: Offer = PLAIN_OFFER,
  leathers: Compared | null = null,
): CustomerSheet {
  const { job } = design;
  const say = printer(job.work.units);
  const others = otherWeights(job, offer);
  const price = (key: 'lighter' | 'chosen' | 'heavier', of: CoverDesign): OfferedPrice | null =>
    offer.prices === undefined ? offeredPrice(of) : (offer.prices?.[key] ?? null);
  const weighed = (key: 'lighter' | 'heavier') => {
    const other = others[key];
    return other && { design: other, verdict: briefReport(other).verdict, price: price(key, other) };
  };
  const chosen = { design, verdict: report.verdict, price: price('chosen', design) };
  return {
    title: job.name,
    lead: `A leather cover for this book${job.rates.maker === '' ? '' : `, by ${job.rates.maker}`}`,
    date: offer.date === null ? '' : dateWords(offer.date),
    verdict: report.verdict,
    fit: PLAIN[report.verdict](titles(report)),
    covers: covers(design, say),
    passages: [
      { heading: 'How it fits', sentences: slipsOn(design, say), picture: roomPicture(design, say) },
      { heading: 'How it opens and rests', sentences: opensAndRests(design, report, say), picture: null },
    ],
    weights: leathers ?? whyThisLeather({ chosen, lighter: weighed('lighter'), heavier: weighed('heavier') }, say),
    madeOf: {
      heading: 'What it is made of',
      facts: [
        { name: 'Book', value: book(job, say) },
        { name: 'Leather', value: leather(job, say) },
        { name: 'Seam', value: seam(job, say) },
        { name: 'Pockets', value: pockets(job) },
        ...fact('Fittings', fittingWords(job, say)),
        ...fact('Colours and finish', finishWords(job)),
        ...tooling(design),
        ...priced(chosen.price, say),
      ],
    },
    caution: CAUTION,
    agreement: {
      heading: 'Agreed',
      sentence: 'I have read this page and ask for the cover that it describes.',
      blanks: ['Date', 'Name', 'Signature'],
    },
  };
}

const CAUTION = 'Computed from the measures of the book and the weight of the leather; a card trial has the last word.';

const PLAIN: Readonly<Record<Verdict, (titles: string) => string>> = {
  fits: () => 'The cover will go on, close and stay on your book.',
  tight: (what) => `This cover should do. Near its limit: ${what}. We will try it in card before cutting leather.`,
  loose: (what) => `As drawn, this cover is too loose for this book: ${what}. We will change it before cutting.`,
  fails: (what) =>
    `As drawn, this cover does not fit this book yet. What falls short: ${what}. We will change it before cutting.`,
  unknown: (what) => `Whether this cover fits is not known yet: ${what}. We will find out before cutting.`,
  none: () => '',
};

/** What each check is about, in words for a customer. */
const ASKS: Readonly<Record<string, string>> = {
  closes: 'closing round the book',
  opens: 'lying open',
  foreEdge: 'room at the sides',
  head: 'room at the top',
  tail: 'room at the bottom',
  together: 'room at all edges at once',
  pocketHolds: 'the hold of the pockets',
  pocketLoads: 'slipping the boards into the pockets',
  foldStrain: 'the folds at the spine',
  seamMargin: 'the leather beside the seam',
  measures: 'the measures of the book',
};

/** The checks that decided the verdict; all edges at once only where no single one did. */
function titles({ checks, verdict }: Report): string {
  const deciding = checks.filter((check) => check.verdict === verdict);
  const named = deciding.filter(({ id }) => id !== 'together');
  return (named.length > 0 ? named : deciding).map(({ id, title }) => ASKS[id] ?? title.toLowerCase()).join(', ');
}

/** What the pictures show, in the leather that the verdict speaks of, so that picture and sentence tell one angle. */
function covers(design: CoverDesign, say: Printer): CustomerSheet['covers'] {
  const { staysOpen } = design.fits[leastWrap(design)];
  if (staysOpen === null) return { closed: NOT_IN, open: NOT_IN };
  const stays = `Stays open ${say.angle(staysOpen)}`;
  return {
    closed: staysOpen > OPENINGS.closed ? stays : 'Closed',
    open: staysOpen > OPENINGS.open ? stays : `Open ${say.angle(OPENINGS.open, 'nearest')}`,
  };
}

const NOT_IN = 'The boards do not go in';

let longDate: Intl.DateTimeFormat | undefined;

/** A day as `27 November 2026`. */
function dateWords(date: string): string {
  longDate ??= new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' });
  const day = new Date(`${date}T00:00:00Z`);
  // A link may hold a day that no calendar has.
  return Number.isNaN(day.getTime()) ? '' : longDate.format(day);
}

const book = ({ book: { kind, width_mm, height_mm, thickness_mm } }: Job, say: Printer): string =>
  `${kind}, ${say.size(width_mm)} wide, ${say.size(height_mm)} high, ${say.size(thickness_mm)} thick`;

function leather({ leather: { outside, lining } }: Job, say: Printer): string {
  return `${say.weights(outside.min_mm, outside.max_mm)}${lining === null ? '' : ', lined'}`;
}

function seam(job: Job, say: Printer): string {
  const { method, style, edgeMargin_mm, pitch_mm } = job.seam;
  const each = holeNoun(job) === 'slits' ? 'slit' : 'hole';
  return method === 'lacing'
    ? `laced, ${style}, ${say.size(edgeMargin_mm)} from the edge, a ${each} every ${say.size(pitch_mm)}`
    : `saddle-stitched by hand, ${say.size(edgeMargin_mm)} from the edge, a stitch every ${say.size(pitch_mm)}`;
}

const pockets = ({ pockets: { construction }, seam: { method } }: Job): string =>
  construction === 'turned'
    ? 'the ends of the cover, turned in'
    : `two leather pockets ${method === 'lacing' ? 'laced' : 'stitched'} inside`;

/** One fact; none where nothing is said. */
const fact = (name: string, words: readonly string[]): Said[] =>
  words.length === 0 ? [] : [{ name, value: words.join(', ') }];

/** What is tooled, face by face; none where nothing is. */
function tooling(design: CoverDesign): Said[] {
  const { designs } = design.job.tooling;
  const faces = toolingAreas(design).flatMap(({ face }) => {
    const words = designs.filter(({ area }) => area === face).map(designWords);
    return words.length === 0 ? [] : [`${FACE_TITLES[face].toLowerCase()} ${words.join(', ')}`];
  });
  return faces.length === 0 ? [] : [{ name: 'Tooling', value: faces.join('; ') }];
}

function designWords(design: ToolingDesign): string {
  if (design.kind === 'title') return `“${design.text}”`;
  if (design.kind === 'border') return design.lines === 2 ? 'border of two lines' : 'border';
  return 'drawing';
}

function priced(price: OfferedPrice | null, say: Printer): Said[] {
  if (price === null) return [];
  const { total, unpriced } = price;
  const without = unpriced.length === 0 ? '' : `, without ${unpriced.join(', ').toLowerCase()}`;
  return [{ name: 'Price', value: `${say.money(total, price)}${without}` }];
}
