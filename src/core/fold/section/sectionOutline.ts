import type { BookModel } from '../../book/bookModel.ts';
import { type BookOutline, bookOutline, type Opening } from '../../book/bookOutline.ts';
import { mm } from '../../units/mm.ts';

/** Share of half the thickness that a rounded edge may take here: at 1 both boards shrink to one line and cross. */
const ROUNDEST = 1 - 1e-6;

/** The book's outline; an edge rounded by half the thickness is rounded by 1e-6 of it less. */
export function sectionOutline(book: BookModel, opening: Opening): BookOutline {
  const most = (ROUNDEST * book.thickness) / 2;
  return bookOutline(book.edgeRadius <= most ? book : { ...book, edgeRadius: mm(most) }, opening);
}
