import {
  type CoverDesign,
  coverSupplies,
  FACE_TITLES,
  type Job,
  MM_PER_OUNCE,
  type Printer,
  printer,
  type Quote,
  quote,
  RANGE_POINTS,
  type Report,
  type ToolingDesign,
  toolingAreas,
  type Verdict,
} from '../../core/index.ts';
import { finishWords, fittingWords } from '../fittingWords.ts';

/** A named fact about the cover. */
export interface Said {
  readonly name: string;
  readonly value: string;
}

/** A length that shows the fit, and what it is to someone who has no rule at hand. */
interface Figure extends Said {
  readonly means: string;
}

/** What a customer is shown of a job, without sums and patterns. */
export interface CustomerSheet {
  readonly title: string;
  /** What it is, and who makes it. */
  readonly lead: string;
  readonly verdict: Verdict;
  /** The fit in plain words. */
  readonly fit: string;
  /** Three lengths that show the fit, each the least over the leather's range. */
  readonly numbers: readonly [Figure, Figure, Figure];
  readonly facts: readonly Said[];
  /** Null where the job prices nothing. */
  readonly price: { readonly amount: string; readonly without: string } | null;
}

/**
 * Describes a design to a customer.
 * @param report of the same design
 */
export function customerSheet(design: CoverDesign, report: Report): CustomerSheet {
  const { job } = design;
  const say = printer(job.work.units);
  return {
    title: job.name,
    lead: `A leather cover for this book${job.rates.maker === '' ? '' : `, by ${job.rates.maker}`}`,
    verdict: report.verdict,
    fit: PLAIN[report.verdict](titles(report)),
    numbers: numbers(design, say),
    facts: [
      { name: 'Book', value: book(job, say) },
      { name: 'Leather', value: leather(job, say) },
      ...inTheHand(design, say),
      { name: 'Seam', value: seam(job, say) },
      { name: 'Pockets', value: pockets(job) },
      ...fact('Fittings', fittingWords(job, say)),
      ...fact('Colours and finish', finishWords(job)),
      ...tooling(design),
    ],
    price: price(quote(design, coverSupplies(design)), say),
  };
}

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

/** Printed on every sheet that shows a computed fit. */
export const CAUTION =
  'Computed from the measures of the book and the weight of the leather; a card trial has the last word.';

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
  foreEdge: 'room at the fore-edges',
  head: 'room at the head',
  tail: 'room at the tail',
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

/** Thickness of a sheet of office paper of 80 g/m2, mm; common practice, no source. */
const PAPER_SHEET = 0.1;

function numbers({ fits, job }: CoverDesign, say: Printer): CustomerSheet['numbers'] {
  const least = (of: (point: (typeof RANGE_POINTS)[number]) => number): number => Math.min(...RANGE_POINTS.map(of));
  const room = (where: string, what: string, value: number): Figure => {
    // As the length itself: room is never overstated.
    const count = Math.abs(Math.floor(value / PAPER_SHEET + 1e-9));
    const sheets = count === 0 ? 'less than a sheet of paper' : `about ${say.count(count, 'sheet', 'sheets')} of paper`;
    return {
      name: value < 0 ? `Too short at the ${where} by` : `Room at the ${where}, at least`,
      value: say.gap(value),
      means: value < 0 ? `Short by ${sheets}.` : `${what}: ${sheets}.`,
    };
  };
  const held = Math.max(
    0,
    least((point) => fits[point].pocket.held),
  );
  return [
    room(
      'fore-edge',
      'For the boards to go in and come out by hand',
      least((point) => Math.min(fits[point].foreEdge.front, fits[point].foreEdge.back)),
    ),
    room(
      'head and tail',
      'For the book to lie in it without rubbing',
      least((point) => Math.min(fits[point].head, fits[point].tail)),
    ),
    {
      name: 'Board held in each pocket, at least',
      value: say.gap(held),
      means: `${say.share(held / job.book.width_mm)} of the width of the board.`,
    },
  ];
}

const book = ({ book: { kind, width_mm, height_mm, thickness_mm } }: Job, say: Printer): string =>
  `${kind}, ${say.size(width_mm)} wide, ${say.size(height_mm)} high, ${say.size(thickness_mm)} thick`;

function leather({ leather: { outside, lining } }: Job, say: Printer): string {
  return `${say.weights(outside.min_mm, outside.max_mm)}${lining === null ? '' : ', lined'}`;
}

/**
 * How thick the book is in its cover at the spine, and what leather an ounce lighter or heavier would change: its thickness
 * twice, and the stiffness of the outside by the cube of its thickness (bending stiffness of a plate, E t^3 / 12 (1 - nu^2);
 * Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 1959, section 1; from memory).
 */
function inTheHand({ job, needs }: CoverDesign, say: Printer): Said[] {
  const { outside, lining } = needs.nominal.leathers;
  const both = 2 * (outside.thickness + (lining?.thickness ?? 0));
  const other = (more: number): string => {
    const stiffness = (1 + more / outside.thickness) ** 3;
    const than = more > 0 ? ['heavier', 'thicker', 'stiffer'] : ['lighter', 'thinner', 'less stiff'];
    return `An ounce ${than[0]} is ${say.length(2 * Math.abs(more))} ${than[1]} in all and ${say.share(Math.abs(stiffness - 1))} ${than[2]}.`;
  };
  const lighter = outside.thickness > 2 * MM_PER_OUNCE ? [other(-MM_PER_OUNCE)] : [];
  return [
    {
      name: 'In the hand',
      value: `${say.length(job.book.thickness_mm + both)} thick at the spine, ${say.length(both)} of it leather`,
    },
    { name: 'Other leather', value: [...lighter, other(MM_PER_OUNCE)].join(' ') },
  ];
}

const seam = ({ seam: { method, style, edgeMargin_mm, pitch_mm } }: Job, say: Printer): string =>
  method === 'lacing'
    ? `laced, ${style}, ${say.size(edgeMargin_mm)} from the edge, a slit every ${say.size(pitch_mm)}`
    : `saddle-stitched by hand, ${say.size(edgeMargin_mm)} from the edge, a stitch every ${say.size(pitch_mm)}`;

const pockets = ({ pockets: { construction }, seam: { method } }: Job): string =>
  construction === 'turned'
    ? 'the ends of the cover, turned in'
    : `two leather pockets ${method === 'lacing' ? 'laced' : 'stitched'} inside`;

/** A fact that may have nothing to say. */
const fact = (name: string, words: readonly string[]): Said[] =>
  words.length === 0 ? [] : [{ name, value: words.join(', ') }];

function price({ lines, total, unpriced, ...sign }: Quote, say: Printer): CustomerSheet['price'] {
  if (lines.every(({ amount }) => amount === null)) return null;
  return {
    amount: say.money(total, sign),
    without: unpriced.length === 0 ? '' : `without ${[...new Set(unpriced)].join(', ').toLowerCase()}`,
  };
}
