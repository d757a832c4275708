import { type Job, MARKED_PAPERS, type MarkedPaper } from '../../core/index.ts';

/** Pages of a sheet that lie beside each other; the others lie below them. */
export const pagesBeside = (pages: number): number => (pages < 3 ? pages : Math.ceil(pages / 2));

/** What a sheet is to show beyond the book on each side, mm: two rows of marks, for a slanted view hides one; at head and tail one where pages lie beside the book. */
const RIM = { beside: 40, beyond: 22 } as const;

/** Pages on which a book of this size leaves marks in sight on all sides; for one that is too large all there are. */
export function usualPages(
  { width_mm, height_mm }: Pick<Job['book'], 'width_mm' | 'height_mm'>,
  paper: MarkedPaper,
): number {
  const { width, height, pages: most } = MARKED_PAPERS[paper];
  const isEnough = (pages: number): boolean =>
    width_mm + 2 * RIM.beside <= pagesBeside(pages) * width &&
    height_mm + 2 * (pages === 1 ? RIM.beside : RIM.beyond) <= (pages < 3 ? 1 : 2) * height;
  return [1, 2, 4, 6].find((pages) => pages <= most && isEnough(pages)) ?? most;
}
