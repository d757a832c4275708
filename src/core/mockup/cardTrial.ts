import { needsAt } from '../allowance/needs.ts';
import { wrapAt } from '../allowance/wrap.ts';
import { bookModel } from '../book/bookModel.ts';
import { bookOutline, CLOSED, symmetricOpening } from '../book/bookOutline.ts';
import { riseError, riseOf } from '../book/rise.ts';
import { tautPath } from '../book/tautPath.ts';
import { coverFit } from '../fold/coverFit.ts';
import type { Job } from '../job/jobSchema.ts';
import { seatToSeat } from '../pattern/pieces.ts';
import { mm } from '../units/mm.ts';
import { type Card, cardDesign, cardJob } from './cardDesign.ts';
import type { Observation, Prior } from './estimate.ts';

/** Readings from the card on the book. */
export type CardReadings = Job['mockup']['readings'];

/**
 * Measures that a trial may correct, in the order of the unknowns; the card's neutral fraction and bend ratio follow.
 */
export const MEASURES = ['width', 'thickness', 'rise', 'height'] as const;

export type MeasureName = (typeof MEASURES)[number];

/** Standard deviations of the card's neutral fraction and bend ratio. Assumptions. */
const CARD_ERROR = { neutral: 0.1, bendRatio: 0.1 } as const;

/** Least error of a reading, mm: one given as exact must not outweigh all others. */
const FINEST = 0.05;

/** A reading of the wrap or of the height, from the card or from a tape round the book. */
interface CardObservation extends Observation {
  readonly name: string;
  readonly of: 'wrap' | 'height';
  readonly from: 'card' | 'tape';
}

/** A trial as an estimation problem. */
export interface CardTrial {
  readonly prior: Prior;
  readonly observations: readonly CardObservation[];
  /** The job with the book's measures taken from the unknowns. */
  bookAs(unknowns: readonly number[]): Job;
  /** Wrap of the bare book, mm: 2 W + P for a closed book with sharp edges. */
  bareWrap(unknowns: readonly number[]): number;
  /** Spare wrap, front and back together, and spare height, head and tail together, that the card should show, mm. */
  gaps(unknowns: readonly number[]): { readonly wrap: number; readonly height: number };
}

/**
 * States a trial in card as an estimation problem.
 *
 * Unknowns: width, thickness, rise (rounded backs only) and height, each with its measuring error, and the card's
 * neutral fraction and bend ratio. The card was cut from the present measures; the fold model predicts what it shows:
 *
 *   front + back = seat to seat, as cut - closed wrap;   head + tail = height as cut - 2 margins - H - 2 needed;
 *   held open at an angle: seat to seat = wrap at that angle.
 *
 * A paper strip or a rolled half that the job gives is a further reading of the wrap.
 */
export function cardTrial(job: Job, sheet: Card, readings: CardReadings): CardTrial {
  const { book } = job;
  const { pieces } = cardDesign(job, sheet);
  const error = book.measured.error_mm;
  const isRounded = book.spine.shape === 'rounded';
  const bookAs = ([width, thickness, rise, height]: readonly number[]): Job => {
    const over = mm(thickness!);
    return {
      ...job,
      book: {
        ...book,
        width_mm: mm(width!),
        thickness_mm: over,
        foreEdgeThickness_mm: mm(book.foreEdgeThickness_mm + over - book.thickness_mm),
        spine:
          isRounded && rise !== riseOf(book)
            ? { ...book.spine, rise_mm: mm(Math.max(0, Math.min(rise!, over / 2))) }
            : book.spine,
        height_mm: mm(height!),
      },
    };
  };
  const inCard = (unknowns: readonly number[]): Job =>
    cardJob(bookAs(unknowns), { ...sheet, neutral: unknowns[4]!, bendRatio: Math.max(0, unknowns[5]!) });
  // Wrap and height are computed for the same unknowns in turn: one fold gives both.
  const known = new WeakMap<readonly number[], ReturnType<CardTrial['gaps']>>();
  const gaps: CardTrial['gaps'] = (unknowns) => {
    const found = known.get(unknowns);
    if (found !== undefined) return found;
    const made = inCard(unknowns);
    const fit = coverFit(made, pieces, needsAt(made, 'thick'));
    const gap = { wrap: fit.closedSlack, height: fit.head + fit.tail };
    known.set(unknowns, gap);
    return gap;
  };
  const spareAt = (unknowns: readonly number[], angle: number): number => {
    const needs = needsAt(inCard(unknowns), 'thick');
    return seatToSeat(pieces, needs) - wrapAt(needs.book, symmetricOpening(angle), needs.leathers).length;
  };
  const bareWrap = (unknowns: readonly number[]): number =>
    tautPath(bookOutline(bookModel(bookAs(unknowns).book), CLOSED)).length;

  const prior: Prior = {
    mean: [book.width_mm, book.thickness_mm, riseOf(book), book.height_mm, sheet.neutral, sheet.bendRatio],
    error: [error, error, isRounded ? riseError(book) : 0, error, CARD_ERROR.neutral, CARD_ERROR.bendRatio],
  };
  const observations: CardObservation[] = [];
  const add = (reading: CardObservation): void => {
    observations.push({ ...reading, error: Math.max(FINEST, reading.error) });
  };
  const { closedWrap_mm: strip, rolledHalf_mm: rolled } = book.measured;
  if (strip !== null) add({ name: 'closed wrap', of: 'wrap', from: 'tape', value: strip, error, predict: bareWrap });
  if (rolled !== null)
    add({ name: 'rolled half', of: 'wrap', from: 'tape', value: rolled, error, predict: (x) => bareWrap(x) / 2 });
  const { front_mm: front, back_mm: back, head_mm: head, tail_mm: tail, opening_deg: opening } = readings;
  const both = Math.SQRT2 * readings.error_mm;
  const card = { from: 'card', error: both } as const;
  if (front !== null && back !== null)
    add({ ...card, name: 'gap at the fore-edges', of: 'wrap', value: front + back, predict: (x) => gaps(x).wrap });
  if (head !== null && tail !== null)
    add({ ...card, name: 'gap at head and tail', of: 'height', value: head + tail, predict: (x) => gaps(x).height });
  if (opening !== null && opening > 0) {
    const [angle, off] = [(opening * Math.PI) / 180, (readings.error_deg * Math.PI) / 180];
    const turned = Math.abs(spareAt(prior.mean, angle + off) - spareAt(prior.mean, Math.max(0, angle - off))) / 2;
    const spread = Math.max(turned, readings.error_mm);
    const predict = (x: readonly number[]): number => spareAt(x, angle);
    add({ ...card, name: 'spare wrap at the opening read', of: 'wrap', value: 0, error: spread, predict });
  }
  return { prior, observations, bookAs, bareWrap, gaps };
}
