import type { Drawing } from '../../../core/index.ts';
import type { Paper } from '../../../output/pdf/paper.ts';
import { type MeasuredBars, printerScale } from '../../../output/pdf/printerScale.ts';
import { tiling } from '../../../output/pdf/tiling.ts';

/** Pages that the template takes: the page with the check bars and the tiles of each piece. */
export const templatePages = ({ pieces }: Drawing, paper: Paper, bars?: MeasuredBars): number =>
  pieces.reduce((sum, piece) => sum + tiling(piece, paper, printerScale(bars)).tiles.length, 1);
