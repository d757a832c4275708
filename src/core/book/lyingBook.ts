import { circularSegment } from '../math/circularSegment.ts';
import { mm } from '../units/mm.ts';
import type { BookModel } from './bookModel.ts';

/**
 * The book as it lies on a bench at an opening: its round back is pressed flat under its own weight as the boards go down.
 *
 * The arc of the back keeps its length P and turns by 2 a (1 - opening / pi) in all, a its half angle in the closed book:
 * closed it is as round as ever, flat it is straight, with the boards' hinges P apart. An assumption of this project, for
 * hollow and flexible backs: a stiff one keeps its round and lifts the boards.
 * @param opening swing of both boards together, radians, 0 to pi
 * @returns the book itself where its back is flat
 */
export function lyingBook(book: BookModel, opening: number): BookModel {
  if (book.rise === 0 || opening <= 0) return book;
  const half = circularSegment(book.thickness, book.rise).halfAngle * Math.max(0, 1 - opening / Math.PI);
  // A back this near to straight is straight: its circle is too large to place points on.
  if (half < STRAIGHT) return { ...book, rise: mm(0), thickness: book.spinePath };
  const radius = book.spinePath / (2 * half);
  return { ...book, rise: mm(radius * (1 - Math.cos(half))), thickness: mm(2 * radius * Math.sin(half)) };
}

/** Half angle of a back that counts as straight, radians: it rises 0.02 mm in a book 80 mm thick. */
const STRAIGHT = 1e-3;
