import type { CustomerSheet } from '../../output/customerSheet/customerSheet.ts';
import { fileName } from '../../output/fileName.ts';
import type { SheetOptions } from '../../output/pdf/sheetFile.ts';
import type { TitleBlock } from '../../output/titleBlock.ts';
import type { CoverPicture } from '../stage/coverPicture.ts';
import { PRINTED } from '../stage/usePrintedPictures.ts';
import { loadPrintedLetters } from '../state/printedLetters.ts';
import { saveFile } from '../state/saveFile.ts';
import { markBytes } from './mark.ts';

/** What the page of a customer shows. */
export interface ShownSheet {
  readonly sheet: CustomerSheet;
  readonly closed: CoverPicture;
  readonly open: CoverPicture;
  /** The maker's mark as a data address; null for none. */
  readonly mark: string | null;
  readonly units: 'mm' | 'in';
  /** The title block, which only the maker's own page can give. */
  readonly block?: () => Promise<TitleBlock>;
}

/** Saves the page as a PDF, with pictures of its covers once they are drawn. */
export async function saveSheet(shown: ShownSheet, onLacking: SheetOptions['onLacking']): Promise<void> {
  const { sheet, closed, open, mark, units } = shown;
  const { customerSheetPdf } = await import('../../output/customerSheet/customerSheetPdf.ts');
  await Promise.all([closed.settled, open.settled]);
  const pictures = [];
  for (const [caption, { scene }] of [
    [sheet.covers.closed, closed],
    [sheet.covers.open, open],
  ] as const) {
    const blob = await scene.current?.take(PRINTED, '#ffffff');
    if (blob) pictures.push({ caption, jpeg: new Uint8Array(await blob.arrayBuffer()) });
  }
  const paper = units === 'in' ? 'Letter' : 'A4';
  const bytes = await customerSheetPdf(sheet, {
    paper,
    pictures,
    mark: mark === null ? null : markBytes(mark),
    block: await shown.block?.(),
    onLacking,
  });
  const isPriced = sheet.madeOf.facts.some(({ name }) => name === 'Price');
  saveFile(fileName(sheet.title, 'sheet.pdf', [paper, isPriced ? 'with price' : '']), bytes, 'application/pdf');
}

/** Prints the page once its covers are drawn. */
export const printSheet = ({ closed, open }: Pick<ShownSheet, 'closed' | 'open'>): Promise<void> =>
  Promise.all([closed.settled, open.settled, loadPrintedLetters()]).then(() => window.print());
