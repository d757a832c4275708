import { type CheckBar, printer } from '../../core/index.ts';

export const TITLE = 'Sheet to photograph a book on';

/** What the customer does with the sheet, in words that need no knowledge of the trade. */
export function stepWords(units: 'mm' | 'in', pages: number): readonly string[] {
  const far = units === 'mm' ? '70 cm' : '28 in';
  const fine = units === 'mm' ? 'to the nearest quarter of a millimetre' : 'to the nearest 1/64 in';
  return [
    `Print ${pages === 1 ? 'this page' : `all ${pages} pages`} at actual size (100 %), not “fit to page”, on plain white paper.`,
    `Lay a ruler along both bars on this page, from end stroke to end stroke. Write down below what it shows, ${fine}, and how thick the closed book is.`,
    pages === 1
      ? 'Lay the page flat on a table, in even light.'
      : 'Lay the pages flat on a table, in even light, edge to edge as in the picture, none over another. The gaps between them do not matter; pages that move do.',
    'Lay the closed book in the middle, its spine to the left, its upper end away from you. Black squares must stay in sight on all four sides of it.',
    `Take three photographs from about ${far}, without zoom: one straight down, two slanted from different sides. Each shows the whole sheet. Keep your hands and your shadow away.`,
    'If you can, stand the book up on its lower end and take three more from above. They show how thick it is.',
    'Send the photographs as the camera made them, not cropped and not made smaller, and the three lengths below.',
  ];
}

/** What a bar is meant to measure. */
export function barLength({ length }: Pick<CheckBar, 'length'>, units: 'mm' | 'in'): string {
  const say = printer(units);
  return units === 'mm' ? say.size(length) : say.length(length);
}
