import type { ReactNode } from 'react';
import {
  type CoverDesign,
  isRiseEstimated,
  type Job,
  type LeatherName,
  type Printer,
  riseOf,
  temperOf,
} from '../../core/index.ts';

/** Sizes with their unit once where they share it: `165 × 240 × 28 mm`. */
function across(print: Pick<Printer, 'size'>, ...sizes: readonly number[]): string {
  const texts = sizes.map((size) => print.size(size));
  const unit = texts[0]?.match(/ \S+$/)?.[0] ?? '';
  const isShared = texts.every((text) => text.endsWith(unit));
  return isShared ? texts.map((text) => text.slice(0, -unit.length)).join(' × ') + unit : texts.join(' × ');
}

/** The book in one sentence, its measures in bold. */
export function bookSentence({ book }: Job, print: Printer): ReactNode {
  const { shape } = book.spine;
  const rise = isRiseEstimated(book) ? `${print.length(riseOf(book))}, estimated` : print.size(riseOf(book));
  return (
    <>
      <b>{across(print, book.width_mm, book.height_mm, book.thickness_mm)}</b>, {boardWords(book, print)}, spine {shape}
      {shape === 'flat' ? '' : ` ${rise}`}
    </>
  );
}

const boardWords = ({ kind, boardThickness_mm }: Job['book'], print: Printer): string =>
  `${kind === 'hardback' ? 'boards' : `${kind}, covers`} ${print.size(boardThickness_mm)}`;

/** The leather in one sentence, its weight in bold. */
export function leatherSentence({ leather, making }: Job, print: Printer): ReactNode {
  const weight = (piece: LeatherName): string => {
    const { min_mm, max_mm } = leather[piece]!;
    return print.weights(min_mm, max_mm);
  };
  const parts = [
    temperOf(leather.outside)?.name ?? 'own figures',
    leather.lining === null ? '' : `lined ${weight('lining')}`,
    making.state === 'dry' ? '' : making.state,
    making.dressing === 'nothing' ? '' : making.dressing,
  ];
  return (
    <>
      <b>{weight('outside')}</b>, {parts.filter((part) => part !== '').join(', ')}
    </>
  );
}

/** Seam and pockets in one sentence. */
export function seamSentence({ seam, pockets }: Job, print: Printer): string {
  const how = seam.method === 'lacing' ? `Laced, ${seam.style}` : 'Stitched';
  const ends = pockets.construction === 'turned' ? 'turned ends' : 'pockets apart';
  return `${how}, ${print.size(seam.edgeMargin_mm)} from the edge; ${ends}`;
}

/** The cut sizes in one sentence, that of the outside in bold. */
export function cutSentence({ pieces }: CoverDesign, print: Printer): ReactNode {
  const { outside, pocketDepth } = pieces;
  return (
    <>
      <b>{across(print, outside.width, outside.height)}</b> outside, pockets {print.size(pocketDepth)} deep
    </>
  );
}
