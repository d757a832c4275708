import type { CoverDesign } from '../fold/coverDesign.ts';
import { reachRange } from '../fold/section/reachRange.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { seatToSeat } from '../pattern/pieces.ts';
import { mm } from '../units/mm.ts';
import type { FilmFigure, FilmJam, Movement } from './filmStep.ts';
import { loadingAt, movementFor } from './loading.ts';

/** A jam as it is reckoned: the movement that stops, and how far it goes. */
export interface Jam extends Omit<FilmJam, 'at'> {
  readonly movement: Movement;
  readonly value: number;
}

const length = (words: string, value: number): FilmFigure => ({ words, unit: 'mm', value: mm(value) });

/**
 * What stops the film of a cover, by the fit: edges that overrun at the first board, boards that do not bend back far enough at
 * the second, a wrap too short where it is closed. Null where all goes.
 */
export function jamOf(design: CoverDesign, point: RangePoint): Jam | null {
  const { job, made } = design;
  const needs = design.needs[point];
  const { book, closed, flat, headTail } = needs;
  const { head, tail, pocket, closes } = design.fits[point];
  if (head + tail < -TOLERANCE.length)
    return {
      movement: 'firstIn',
      value: 1,
      words: 'The board is higher than the room between the seams at head and tail.',
      has: length('room between head and tail', made.outside.height - 2 * job.seam.edgeMargin_mm - 2 * headTail.needed),
      needs: length('height of the board', book.height),
    };
  const wrap = length('wrap between the stops', seatToSeat(made, needs));
  const range = reachRange(design, point);
  if (range === null)
    return {
      movement: 'firstIn',
      value: 1,
      words: 'The wrap does not reach the second board.',
      has: wrap,
      needs: length('wrap of the book open flat', flat.length),
    };
  if (!pocket.loads)
    return {
      movement: 'bentBack',
      value: movementFor(
        book.foldBack / pocket.loadingAngle,
        (bentBack) => loadingAt({ firstIn: 1, bentBack, secondIn: 0 }).bent,
      ),
      words: 'The boards do not bend back far enough for the second board to pass its pocket mouth.',
      has: { words: 'boards bend back', unit: 'rad', value: book.foldBack },
      needs: { words: 'the second board needs', unit: 'rad', value: pocket.loadingAngle },
    };
  if (!closes)
    return {
      movement: 'closed',
      value: 1 - range.least / range.most,
      words: 'The wrap is too short to close.',
      has: wrap,
      needs: length('wrap of the closed book', closed.length),
    };
  return null;
}
