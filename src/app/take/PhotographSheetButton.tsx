import type { MarkedPaper } from '../../core/index.ts';
import { fileName } from '../../output/fileName.ts';
import { today } from '../../output/today.ts';
import { useBenchStore } from '../state/BenchContext.tsx';
import { pageAddress } from '../state/sheetBlock.ts';
import { SheetButton } from './SheetButton.tsx';

interface PhotographSheetButtonProps {
  /** A4 or Letter by the units of the job unless told. */
  readonly paper?: MarkedPaper;
  /** As many as the book takes unless told. */
  readonly pages?: number;
}

/** Saves the sheet that the book is photographed on, with as many pages as the book of the job takes. */
export function PhotographSheetButton(choice: PhotographSheetButtonProps) {
  const { getState } = useBenchStore();
  const make = async () => {
    const [{ photographSheetPdf }, { sheetLink }, { usualPages }] = await Promise.all([
      import('../../output/photographSheet/photographSheetPdf.ts'),
      import('../../output/photographSheet/sheetLink.ts'),
      import('../../output/photographSheet/sheetPages.ts'),
    ]);
    const { job, document } = getState().history.good;
    const { units } = job.work;
    const { paper = units === 'in' ? 'Letter' : 'A4' } = choice;
    const { pages = usualPages(job.book, paper) } = choice;
    const link = sheetLink(document, pageAddress());
    const bytes = await photographSheetPdf({ units, paper, pages, job: job.name, link, date: today() });
    return { name: fileName(job.name, 'photograph-sheet.pdf', [paper]), bytes };
  };
  return (
    <SheetButton sheet="sheet for photographs" make={make}>
      Save the sheet to photograph the book on
    </SheetButton>
  );
}
