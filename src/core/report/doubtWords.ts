import type { CoverInput } from '../doubt/coverInputs.ts';
import type { DoubtPath } from '../job/doubtSchema.ts';

const WORDS: Readonly<Record<DoubtPath, string>> = {
  'book.width_mm': 'the width of the book',
  'book.height_mm': 'the height of the book',
  'book.thickness_mm': 'the thickness of the book',
  'book.foreEdgeThickness_mm': 'the thickness at the fore-edge',
  'book.boardThickness_mm': 'the thickness of the boards',
  'book.spine.rise_mm': 'how round the spine is',
  'book.cornerRadius_mm': 'the rounding of the edges at the spine',
  'book.jointDip_mm': 'the extra length at the joints when open',
  'book.pageGive': 'how far the pages squash',
  'book.measured.closedWrap_mm': 'the paper strip round the closed book',
  'book.measured.rolledHalf_mm': 'the half round, rolled on card',
  'book.measured.openFlatWidth_mm': 'the width of the book lying open',
  'leather.outside': 'how thick the leather is',
  'leather.outside.foldThickness_mm': 'how thin the folds are skived',
  'leather.outside.neutral': 'where the leather keeps its length in a fold',
  'leather.outside.bendRatio': 'how sharply the leather folds',
  'leather.pocket': 'how thick the pocket leather is',
  'leather.pocket.bendRatio': 'how sharply the pocket leather folds',
  'leather.lining': 'how thick the lining is',
  'leather.lining.foldThickness_mm': 'how thin the lining is skived',
  'making.changeAlong': 'how much the leather changes in height',
  'making.changeAcross': 'how much the leather changes in width',
  'seam.edgeMargin_mm': 'where the seam is punched',
  'pattern.outsideWidth_mm': 'how the width is cut',
  'pattern.outsideHeight_mm': 'how the height is cut',
};

/** An input in a maker's words, as a part of a sentence. */
export const doubtWords = (path: CoverInput['path']): string =>
  path.startsWith('scale of ') ? `the ${path}` : WORDS[path as DoubtPath];
