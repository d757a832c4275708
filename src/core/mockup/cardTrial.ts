import { needsAt } from '../allowance/needs.ts';
import { wrapAt } from '../allowance/wrap.ts';
import { bookModel } from '../book/bookModel.ts';
import { bookOutline, CLOSED, symmetricOpening } from '../book/bookOutline.ts';
import { riseOf } from '../book/rise.ts';
import { tautPath } from '../book/tautPath.ts';
import { coverFit, spareWhenClosed } from '../fold/coverFit.ts';
import type { Job } from '../job/jobSchema.ts';
import { seatToSeat } from '../pattern/pieces.ts';
import { type Mm, mm } from '../units/mm.ts';
import { type Card, cardDesign, cardJob } from './cardDesign.ts';
import { UNKNOWNS, type Values, valueIn } from './unknowns.ts';

interface Spare {
  readonly wrap: number;
  readonly height: number;
}

/** A trial in card as a model: what follows from the unknowns. All lengths in mm. */
export interface CardTrial {
  /** The job with the book's measures taken from the unknowns. */
  bookAs(values: Values): Job;
  /** Wrap of the bare book: 2 W + P for a closed book with sharp edges. */
  bareWrap(values: Values): number;
  /** Spare wrap, front and back together, and spare height, head and tail together. */
  spare(values: Values): Spare;
  /** The same as they should be read. */
  gaps(values: Values): Spare;
  /** Opening at which the card holds the book, radians: 0 where it closes, null where the book does not go in. */
  staysOpen(values: Values): number | null;
  /** Spare wrap with the book held open at an angle, radians: 0 where the card just reaches. */
  spareAt(values: Values, angle: number): number;
}

/**
 * The model of a card that was cut from the present measures and is tried on the true book:
 *
 *   front + back = seat to seat, as cut - closed wrap;   head + tail = height as cut - 2 margins - H - 2 needed;
 *   held open at an angle: seat to seat = wrap at that angle.
 *
 * A swollen spine is thicker than the fore-edge; a thickness that is off is so at both. A flat spine with a rise is
 * rounded.
 */
export function cardTrial(job: Job, sheet: Card): CardTrial {
  const { book } = job;
  const { pieces } = cardDesign(job, sheet);
  const bookAs = (values: Values): Job => {
    const thickness = valueIn(values, 'thickness');
    const spine = mm(thickness + valueIn(values, 'swell'));
    return {
      ...job,
      book: {
        ...book,
        width_mm: mm(valueIn(values, 'width')),
        thickness_mm: spine,
        foreEdgeThickness_mm: mm(book.foreEdgeThickness_mm + thickness - book.thickness_mm),
        spine: spineWith(book, valueIn(values, 'rise'), spine),
        height_mm: mm(valueIn(values, 'height')),
      },
    };
  };
  const inCard = (values: Values): Job => {
    const bendRatio = Math.max(0, valueIn(values, 'bendRatio'));
    return cardJob(bookAs(values), { ...sheet, neutral: valueIn(values, 'neutral'), bendRatio });
  };
  const spare = remembered((values): Spare => {
    const made = inCard(values);
    return spareWhenClosed(made, pieces, needsAt(made, 'thick'));
  });
  return {
    bookAs,
    bareWrap: remembered((values) => tautPath(bookOutline(bookModel(bookAs(values).book), CLOSED)).length),
    spare,
    gaps: (values) => {
      const { wrap, height } = spare(values);
      return {
        wrap: wrap + 2 * valueIn(values, 'foreEdgeStop'),
        height: height + 2 * valueIn(values, 'headTailStop'),
      };
    },
    staysOpen: (values) => {
      const made = inCard(values);
      return coverFit(made, pieces, needsAt(made, 'thick')).staysOpen;
    },
    spareAt: (values, angle) => {
      const needs = needsAt(inCard(values), 'thick');
      return seatToSeat(pieces, needs) - wrapAt(needs.book, symmetricOpening(angle), needs.leathers).length;
    },
  };
}

/** Predictions are asked for again and again at the same points, and how a gap was read changes no book and no card. */
function remembered<Result>(of: (values: Values) => Result): (values: Values) => Result {
  const known = new Map<string, Result>();
  return (values) => {
    const key = values.slice(0, OF_THE_CARD).join();
    const result = known.get(key) ?? of(values);
    known.set(key, result);
    return result;
  };
}

/** Number of unknowns, from the first, that the fit of the card depends on. */
const OF_THE_CARD = UNKNOWNS.indexOf('foreEdgeStop');

/** Least rise of a rounded back, mm: one of 0 would count as not measured. */
const LEAST_RISE = 0.01;

/**
 * The spine with another rise, within what its thickness allows; as typed where the rise is that of the job. A negative
 * rise counts as its mirror image, so that the wrap changes smoothly through a flat back.
 */
function spineWith(book: Job['book'], rise: number, thickness: Mm): Job['book']['spine'] {
  const size = Math.abs(rise);
  if (rise === riseOf(book) || (book.spine.shape === 'flat' && size < LEAST_RISE)) return book.spine;
  return { shape: 'rounded', rise_mm: mm(Math.max(LEAST_RISE, Math.min(size, thickness / 2))) };
}
