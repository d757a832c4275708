import {
  changeOf,
  holeNoun,
  holeShape,
  isChangeTested,
  type Job,
  type JobRecord,
  type PatternSource,
  printer,
  routeWords,
  temperOf,
} from '../core/index.ts';
import { ironName } from './ironWords.ts';
import { shareFragment } from './shareLink/shareLink.ts';
import { versionMark } from './versionMark.ts';

/** What a title block says of a job, in words; how it is drawn is `pdf/titleBlock.ts`. */
export interface TitleBlock {
  readonly job: string;
  /** What the sheet is, such as `Template` or `Bench sheet`. */
  readonly sheet: string;
  /** Book, leather, seam and what else the sheet names, in the order in which they are read. */
  readonly facts: readonly { readonly name: string; readonly value: string }[];
  /** Day that the sheet is made, ISO 8601; empty for none. */
  readonly date: string;
  /** Mark of the version of the job, as on the screen. */
  readonly version: string;
  /** Address that opens the job, for the square code; null where there is none. */
  readonly link: string | null;
  /** Whether the job is too large for any address. */
  readonly isTooLarge: boolean;
}

/** What the sheet is drawn from. */
type DrawnFrom = Pick<PatternSource, 'job' | 'isCard'>;

export interface TitleSource {
  readonly sheet: string;
  /** The open job, and the design that the sheet is made of: of a card trial it is not the job's own. */
  readonly job: Job;
  readonly design: DrawnFrom;
  /** The job as written, which the square code holds. */
  readonly document: JobRecord;
  /** Day, ISO 8601, such as `2026-11-27`. No clock is read here: the same day gives the same file. */
  readonly date?: string;
  /** Address of the page without its fragment, such as `https://leather.example/`. Without it the sheet has no square code. */
  readonly address?: string | null;
  /** What the square code holds in place of the whole job: a customer is not sent the rates. Null where it is too long for an address. */
  readonly fragment?: string | null;
  /** What one sheet says and others do not, such as `Pieces`. */
  readonly also?: TitleBlock['facts'];
}

/** The title block of a sheet: which job, in which version, and what would tell two sheets apart on a bench. */
export function titleBlock(source: TitleSource): TitleBlock {
  const { sheet, job, design, document, date = '', address = null, also = [] } = source;
  const isMakers = source.fragment === undefined;
  const fragment = source.fragment === undefined ? shareFragment(document) : source.fragment;
  return {
    job: job.name.trim() === '' ? 'Cover without a name' : job.name,
    sheet,
    facts: [
      ...also,
      { name: 'Book', value: bookWords(job) },
      { name: design.isCard === true ? 'Card' : 'Leather', value: leatherWords(design, isMakers) },
      { name: 'Seam', value: seamWords(design) },
    ],
    date,
    version: versionMark(job),
    link: address === null || fragment === null ? null : `${address}${fragment}`,
    isTooLarge: address !== null && fragment === null,
  };
}

function bookWords({ book, work }: Job): string {
  const say = printer(work.units);
  return `${book.kind}, ${say.size(book.width_mm)} wide, ${say.size(book.height_mm)} high, ${say.size(book.thickness_mm)} thick, boards ${say.size(book.boardThickness_mm)}, spine ${book.spine.shape}`;
}

/** Characters of the name of a leather that are printed. */
const PRINTED_NAME = 40;

const clipped = (name: string): string =>
  name.length > PRINTED_NAME ? `${name.slice(0, PRINTED_NAME).trimEnd()}…` : name;

/**
 * The outside, and the lining where there is one: thickness from its thinnest to its thickest, temper, how it is worked.
 * @param isMakers whether the maker reads it, who knows the leathers by their names; a customer is not told them
 */
function leatherWords({ job, isCard = false }: DrawnFrom, isMakers: boolean): string {
  const { leather, work } = job;
  const say = printer(work.units);
  const { outside, pocket, lining } = leather;
  const range = ({ min_mm, max_mm }: typeof outside): string => say.weights(min_mm, max_mm);
  const named = (piece: typeof outside): string =>
    isMakers && piece.taken !== null ? `${clipped(piece.taken.name)} ${range(piece)}` : range(piece);
  if (isCard) return `${say.fine(outside.max_mm)} thick, scored at the folds`;
  const temper = temperOf(outside)?.name;
  return [
    named(outside),
    ...(named(pocket) === named(outside) ? [] : [`pockets ${named(pocket)}`]),
    ...(lining === null ? [] : [`lining ${named(lining)}`]),
    temper === undefined ? 'folds as measured' : `${temper} temper`,
    ...madeFor(job),
  ].join(', ');
}

/** The state that the pieces are cut for: how the leather is worked, and by how much it changes. */
function madeFor(job: Job): string[] {
  const { width, height } = changeOf(job);
  const say = printer(job.work.units);
  const by = (change: number): string => say.share(Math.abs(change), 1);
  const way = (change: number): string => (change < 0 ? 'shrinks' : 'grows');
  if (width === 0 && height === 0) return [routeWords(job)];
  const change =
    width === height
      ? `${way(width)} ${by(width)}`
      : `${way(width)} ${by(width)} in width, ${way(height)} ${by(height)} in height`;
  return [`cut to be ${routeWords(job)}: ${change}${isChangeTested(job) ? '' : ', untested'}`];
}

function seamWords({ job }: DrawnFrom): string {
  const { seam, work } = job;
  const say = printer(work.units);
  return [
    ...(seam.method === 'lacing' ? ['laced', seam.style] : ['stitched']),
    `${say.size(seam.edgeMargin_mm)} from the edge`,
    seam.iron === null
      ? `pitch ${say.size(seam.pitch_mm)}`
      : `pitch ${say.exact(seam.pitch_mm)} by ${ironName(seam.iron)}`,
    `${holeNoun(job)} ${say.size(holeShape(job).size)}`,
  ].join(', ');
}
