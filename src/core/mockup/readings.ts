import type { JobPath } from '../job/jobPath.ts';
import type { Job } from '../job/jobSchema.ts';
import type { CardTrial } from './cardTrial.ts';
import type { Observation } from './estimate.ts';
import { priorErrors, STATED } from './priorErrors.ts';
import { type Values, valueIn } from './unknowns.ts';

/** Readings from the card on the book. */
export type CardReadings = Job['mockup']['readings'];

/** A length that can be read, with what it should be by the unknowns. */
export interface Reading extends Omit<Observation, 'value'> {
  readonly name: string;
  /** What it says something of. */
  readonly of: 'wrap' | 'height';
  readonly from: 'card' | 'tape' | 'ruler';
  /** The field it is typed into. */
  readonly path: JobPath;
  /** As read, mm; null where it was not. */
  readonly value: number | null;
}

/** A reading that was taken. */
export type Taken = Reading & Observation;

/** Least standard deviation of a reading, mm: one given as exact must not outweigh all others. */
const FINEST = 0.05;

/** Standard deviation, mm, of a thickness taken by callipers over boards pressed together by hand. An assumption. */
const CALLIPERS = 0.15;

/**
 * Every reading that can be taken of a book and its card, the taken ones with their values. A gap counts together with
 * its opposite edge; a stated error is twice the standard deviation.
 */
export function readingsOf(job: Job, trial: CardTrial, card: CardReadings, usual: Values): Reading[] {
  const { measured } = job.book;
  const { again } = job.mockup;
  const errors = priorErrors(job);
  const { bareWrap, gaps } = trial;
  const { front_mm: front, back_mm: back, head_mm: head, tail_mm: tail, opening_deg: opening } = card;
  const both = (Math.SQRT2 * card.error_mm) / STATED;
  const tape = { of: 'wrap', from: 'tape', error: errors.tape } as const;
  const all: Reading[] = [
    {
      ...tape,
      name: 'paper strip round the closed book',
      path: 'book.measured.closedWrap_mm',
      value: measured.closedWrap_mm,
      predict: (x) => bareWrap(x) + valueIn(x, 'strip'),
    },
    {
      ...tape,
      name: 'half round',
      path: 'book.measured.rolledHalf_mm',
      value: measured.rolledHalf_mm,
      predict: (x) => bareWrap(x) / 2,
    },
    {
      name: 'gap at the fore-edges',
      of: 'wrap',
      from: 'card',
      path: 'mockup.readings.front_mm',
      value: front === null || back === null ? null : front + back,
      error: both,
      predict: (x) => gaps(x).wrap,
    },
    {
      name: 'gap at head and tail',
      of: 'height',
      from: 'card',
      path: 'mockup.readings.head_mm',
      value: head === null || tail === null ? null : head + tail,
      error: both,
      predict: (x) => gaps(x).height,
    },
    {
      name: 'spine by callipers',
      of: 'wrap',
      from: 'ruler',
      path: 'mockup.again.spine_mm',
      value: again?.spine_mm ?? null,
      error: CALLIPERS,
      predict: (x) => valueIn(x, 'thickness') + valueIn(x, 'swell'),
    },
    {
      name: 'width, measured again',
      of: 'wrap',
      from: 'ruler',
      path: 'mockup.again.width_mm',
      value: again?.width_mm ?? null,
      error: errors.width,
      predict: (x) => valueIn(x, 'width'),
    },
    {
      name: 'rise by a straight edge',
      of: 'wrap',
      from: 'ruler',
      path: 'mockup.again.rise_mm',
      value: again?.rise_mm ?? null,
      error: errors.tape,
      predict: (x) => Math.abs(valueIn(x, 'rise')),
    },
    {
      name: 'height, measured again',
      of: 'height',
      from: 'ruler',
      path: 'mockup.again.height_mm',
      value: again?.height_mm ?? null,
      error: errors.height,
      predict: (x) => valueIn(x, 'height'),
    },
    ...(opening !== null && opening > 0 ? [openingReading(trial, card, usual, (opening * Math.PI) / 180, 0)] : []),
  ];
  return all.map((reading) => ({ ...reading, error: Math.max(FINEST, reading.error) }));
}

/**
 * The card held open by the book: no wrap to spare at that angle. Its error is that of the angle, as far as it changes
 * the wrap, and at least that of one gap.
 * @param angle radians, over 0
 * @param value 0 once the angle was read, null before
 */
export function openingReading(
  { spareAt }: CardTrial,
  { error_mm, error_deg }: CardReadings,
  usual: Values,
  angle: number,
  value: 0 | null,
): Reading {
  const off = (error_deg * Math.PI) / 180;
  const turned = Math.abs(spareAt(usual, angle + off) - spareAt(usual, Math.max(0, angle - off))) / 2;
  return {
    name: 'spare wrap at the opening read',
    of: 'wrap',
    from: 'card',
    path: 'mockup.readings.opening_deg',
    value,
    error: Math.max(turned, error_mm) / STATED,
    predict: (x) => spareAt(x, angle),
  };
}

export const isTaken = (reading: Reading): reading is Taken => reading.value !== null;
