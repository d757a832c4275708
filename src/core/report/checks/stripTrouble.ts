import type { RangePoint } from '../../leather/leatherModel.ts';
import type { StripStatus } from '../../strip/stripSolution.ts';
import type { StripContext } from '../stripContext.ts';

/** Spare wrap in thicknesses of the book from which it is named as the trouble. */
const FAR_TOO_LONG = 10;

/** Says in a maker's words why the elastic strip found no answer: a part of a sentence, without its full stop. */
export function stripTrouble(
  { design, say }: StripContext,
  point: RangePoint,
  { status, message }: { readonly status: StripStatus; readonly message: string },
): string {
  const { book, leathers } = design.needs[point];
  const leather = leathers.outside.foldThickness;
  const { closedSlack } = design.fits[point];
  if (status === 'badInput')
    return message.startsWith('length')
      ? 'no leather is left between the boards'
      : 'the boards have no flat part on which the leather could be held';
  if (message) return message;
  if (leather > book.thickness)
    return `the leather, ${say.length(leather)}, is thicker than the book, ${say.length(book.thickness)}`;
  if (closedSlack > FAR_TOO_LONG * book.thickness)
    return `it could not follow ${say.length(closedSlack)} of spare wrap round a book ${say.length(book.thickness)} thick`;
  return 'its search for a balance did not end';
}
