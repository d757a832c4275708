import { useState } from 'react';
import { capital, type PatternSource } from '../../core/index.ts';
import type { SheetOptions } from '../../output/pdf/sheetFile.ts';
import { Choice } from '../fields/Choice.tsx';
import { optionsOf } from '../fields/optionsOf.ts';
import { useBenchStore } from '../state/BenchContext.tsx';
import { saveFile } from '../state/saveFile.ts';
import { sheetBlock } from '../state/sheetBlock.ts';
import { MakingNote } from './MakingNote.tsx';
import { useMaking } from './useMaking.ts';

const PAPERS = ['A4', 'Letter'] as const;
type SheetPaper = (typeof PAPERS)[number];

interface SaveSheetProps {
  /** What it is called, within a sentence. */
  readonly sheet: string;
  /** Makes the PDF. */
  readonly make: (
    options: { readonly paper: SheetPaper } & Pick<SheetOptions, 'onLacking' | 'block'>,
  ) => Promise<Uint8Array>;
  /** What the sheet is drawn from, where it is not the job's own design. */
  readonly source?: PatternSource;
  readonly nameOf: (paper: SheetPaper) => string;
}

/** The choice of paper for a sheet, and the button that saves it as PDF. */
export function SaveSheet({ sheet, make, source, nameOf }: SaveSheetProps) {
  const [paper, setPaper] = useState<SheetPaper>('A4');
  const [making, start] = useMaking();
  const store = useBenchStore();
  const save = async (onLacking: SheetOptions['onLacking']): Promise<void> => {
    const block = await sheetBlock(store, capital(sheet), { source });
    saveFile(nameOf(paper), await make({ paper, onLacking, block }), 'application/pdf');
  };
  return (
    <>
      <Choice
        title="Sheet"
        options={optionsOf(PAPERS)}
        chosen={paper}
        choose={(value) => setPaper(value as SheetPaper)}
      />
      <button type="button" className="main" disabled={making.status === 'making'} onClick={() => start(sheet, save)}>
        Save the {sheet} as PDF
      </button>
      <MakingNote making={making} />
    </>
  );
}
