import { bookModel } from '../../book/bookModel.ts';
import { bookOutline, CLOSED } from '../../book/bookOutline.ts';
import { isRiseEstimated, riseOf } from '../../book/rise.ts';
import { tautPath } from '../../book/tautPath.ts';
import { doubtOf } from '../../doubt/doubtOf.ts';
import type { DoubtPath } from '../../job/doubtSchema.ts';
import type { Job } from '../../job/jobSchema.ts';
import { riseForArc } from '../../math/circularSegment.ts';
import { TOLERANCE } from '../../math/tolerance.ts';
import { MM_PER_INCH, mm } from '../../units/mm.ts';
import type { Printer } from '../../units/printer.ts';
import { titled } from '../../words/titled.ts';
import type { Answer, CheckContext, Remedy } from '../check.ts';

/** One measured wrap, and the same computed from width, thickness and rise; all in mm. */
interface Reading {
  readonly name: string;
  readonly measured: number;
  readonly computed: number;
  /** Standard uncertainty of the difference. */
  readonly u: number;
  /** How much of the whole wrap the reading spans: 1, or 1/2 for the rolled half. */
  readonly share: number;
}

/** A possible cause of a disagreement, with the change of the job for it. */
interface Cause extends Required<Remedy> {
  readonly text: string;
}

/** Largest joint dip, mm, that still looks like a joint and not a slip of the tape. Common practice, no source. */
const LARGEST_DIP = 6;

/**
 * Cross-checks the wrap measured round the book against width, thickness and rise.
 *
 * A difference within two of its standard uncertainties agrees; within three it is uncertain; beyond that at least one measure
 * is wrong, and the changes that would each explain it are computed.
 */
export function measures({ design, say }: CheckContext): Answer {
  const { book } = design.job;
  const readings = readingsOf(design.job);
  if (isRiseEstimated(book))
    return {
      verdict: 'tight',
      state: 'rise not measured',
      message: `The rise of the rounded spine was not measured: ${say.length(riseOf(book))} is taken, a third of a circle. It may be off by ${say.length(AGREES * doubtOf(design.job, 'book.spine.rise_mm').u)} either way.`,
      ...riseByWrap(book, readings, say),
    };
  if (readings.length === 0)
    return {
      verdict: 'none',
      state: 'not checked',
      message: 'A paper strip round the closed book would check them.',
    };
  const ratio = (reading: Reading): number =>
    Math.abs(reading.measured - reading.computed) / Math.max(TOLERANCE.length, reading.u);
  const reading = readings.reduce((most, each) => (ratio(each) > ratio(most) ? each : most));
  const difference = reading.measured - reading.computed;
  const verdict = verdictOf(reading);
  const found = `${reading.name}: ${say.size(reading.measured)} measured, ${say.length(reading.computed)} from the other measures`;
  const judged = {
    verdict,
    value: difference,
    limit: AGREES * reading.u,
    bound: 'within',
  } as const;
  if (verdict === 'fits') return { ...judged, message: `${found}; they agree.` };
  const [likely, ...others] = causesOf(book, difference / reading.share, say);
  return {
    ...judged,
    message:
      `${found}; ${say.length(Math.abs(difference))} ${difference > 0 ? 'more' : 'less'} than they allow.` +
      ` Likely cause: ${likely.text}.` +
      (others.length > 0 ? ` Or: ${others.map(({ text }) => text).join('; or ')}.` : ''),
    remedy: likely.remedy,
    change: likely.change,
  };
}

/** Names of the two measures that give the wrap. */
const [PAPER_STRIP, HALF_ROUND] = [titled('paper strip'), titled('half round')];

/** Where the wrap was measured it gives the rise; else the rise has to be measured. */
function riseByWrap(book: Job['book'], readings: readonly Reading[], say: Printer): Remedy {
  const reading = readings.find(({ name }) => name === PAPER_STRIP || name === HALF_ROUND);
  const path = bookModel(book).spinePath;
  const rise =
    reading === undefined
      ? null
      : riseForArc(book.thickness_mm, path + (reading.measured - reading.computed) / reading.share);
  if (reading === undefined || rise === null)
    return {
      remedy:
        'Measure how far the spine stands out beyond the straight line between the boards, and type it as the rise.',
    };
  return {
    remedy: `By the ${reading.name.toLowerCase()} the rise is ${say.size(asMeasured(rise, say))}: take that, or measure it.`,
    change: [{ path: 'book.spine.rise_mm', value: asMeasured(rise, say) }],
  };
}

/** Standard uncertainties within which a difference agrees, 19 in 20 by chance, and from which on it contradicts. */
const AGREES = 2;
const CONTRADICTS = 3;

function verdictOf(reading: Reading): 'fits' | 'tight' | 'fails' {
  const difference = Math.abs(reading.measured - reading.computed);
  if (difference <= AGREES * reading.u + TOLERANCE.length) return 'fits';
  return difference <= CONTRADICTS * reading.u + TOLERANCE.length ? 'tight' : 'fails';
}

function readingsOf(job: Job): Reading[] {
  const { book } = job;
  const { closedWrap_mm: strip, rolledHalf_mm: rolled, openFlatWidth_mm: openFlat } = book.measured;
  if (strip === null && rolled === null && openFlat === null) return [];
  const u = (path: DoubtPath): number => doubtOf(job, path).u;
  const wrap = bareWrap(book);
  const readings: Reading[] = [];
  // A typed rise of a rounded spine counts by what it adds to the path over the spine.
  const computed = Math.hypot(2 * u('book.width_mm'), u('book.thickness_mm'), riseShare(book, u('book.spine.rise_mm')));
  const [byStrip, byRolling] = [u('book.measured.closedWrap_mm'), u('book.measured.rolledHalf_mm')];
  if (strip !== null)
    readings.push({ name: PAPER_STRIP, measured: strip, computed: wrap, u: Math.hypot(computed, byStrip), share: 1 });
  if (rolled !== null)
    readings.push({
      name: HALF_ROUND,
      measured: rolled,
      computed: wrap / 2,
      u: Math.hypot(computed / 2, byRolling),
      share: 1 / 2,
    });
  if (strip !== null && rolled !== null)
    readings.push({
      name: 'Paper strip against the half round',
      measured: strip,
      computed: 2 * rolled,
      u: Math.hypot(byStrip, 2 * byRolling),
      share: 1,
    });
  if (openFlat !== null) {
    // Any extra length at the joints from 0 to the largest is plausible; only what lies outside that range disagrees.
    const nearest = Math.min(Math.max(openFlat, wrap), wrap + 2 * LARGEST_DIP);
    readings.push({
      name: 'Open flat',
      measured: openFlat,
      computed: nearest,
      u: Math.hypot(computed, u('book.measured.openFlatWidth_mm')),
      share: 1,
    });
  }
  return readings;
}

/** What a rise off by one standard uncertainty adds to the path over a rounded back, mm. */
function riseShare(book: Job['book'], u: number): number {
  if (book.spine.shape === 'flat') return 0;
  const rise = Math.min(riseOf(book) + u, book.thickness_mm / 2);
  return bareWrap({ ...book, spine: { ...book.spine, rise_mm: mm(rise) } }) - bareWrap(book);
}

/** Closed wrap on the surface of the bare book. */
function bareWrap(book: Job['book']): number {
  return tautPath(bookOutline(bookModel(book), CLOSED)).length;
}

/**
 * Causes that each explain a wrap `difference` mm longer than computed, likeliest first: a rise of the back, a thicker
 * spine than was measured (swell, wedge), a slip in the width; each as a ruler shows it, to 0.1 mm or 1/64 in.
 */
function causesOf(book: Job['book'], difference: number, say: Printer): [...Cause[], Cause] {
  const { thickness_mm: thickness, width_mm: width, boardThickness_mm: board } = book;
  const causes: Cause[] = [];
  const found = riseForArc(thickness, bookModel(book).spinePath + difference);
  if (found !== null) {
    const rise = asMeasured(found, say);
    causes.push({
      text: `a rounded spine with a rise of ${say.size(rise)}`,
      remedy: `If the spine is rounded, set its rise to ${say.size(rise)}; else measure again.`,
      change: [
        { path: 'book.spine.shape', value: 'rounded' },
        { path: 'book.spine.rise_mm', value: rise },
      ],
    });
  }
  const spine = asMeasured(thickness + difference, say);
  if (book.spine.shape === 'flat' && spine > 2 * board)
    causes.push({
      text: `a spine ${say.size(spine)} thick, ${difference > 0 ? 'swollen beyond' : 'thinner than'} the ${say.size(thickness)} given`,
      remedy: `Measure the thickness at the spine again: ${say.size(spine)} would agree.`,
      change: [{ path: 'book.thickness_mm', value: spine }],
    });
  const wide = asMeasured(width + difference / 2, say);
  const slip = {
    text: `a width of ${say.size(wide)} in place of ${say.size(width)}`,
    remedy: `Measure the width again: ${say.size(wide)} would agree.`,
    change: [{ path: 'book.width_mm', value: wide }],
  } satisfies Cause;
  return [...causes, slip];
}

/** A measure as a ruler shows it: to 0.1 mm or 1/64 in. */
function asMeasured(value: number, { units }: Printer): number {
  const step = units === 'in' ? MM_PER_INCH / 64 : 0.1;
  return Number((Math.round(value / step) * step).toFixed(6));
}
