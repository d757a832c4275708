import type { Question } from './check.ts';

/**
 * The rows that the elastic strip answers, which inform and have no say in the verdict. They stand apart from their
 * answers, so that a page can show them before the strip has answered. To add one, list it here and answer it in `withStrip`.
 */
export const STRIP_ROWS = [
  { id: 'seats', title: 'Board edges at the seam', unit: 'mm', failing: '' },
  { id: 'springsOpen', title: 'Staying shut', unit: 'deg', failing: '' },
] as const satisfies readonly Question[];
