import { titled } from '../words/titled.ts';
import type { Question } from './check.ts';

/**
 * The rows of the elastic strip, which inform and do not change the verdict. They are apart from their answers, so that
 * a page can show them before the strip is solved. To add one, list it here and answer it in `withStrip`.
 */
export const STRIP_ROWS = [
  { id: 'seats', title: 'Board edges at the seam', unit: 'mm', failing: '' },
  { id: 'springsOpen', title: titled('staying shut'), unit: 'deg', failing: '' },
] as const satisfies readonly Question[];
