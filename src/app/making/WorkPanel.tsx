import { useMemo, useState } from 'react';
import { benchSheetContent } from '../../output/benchSheet/benchSheetContent.ts';
import { fileName } from '../../output/fileName.ts';
import type { SheetOptions } from '../../output/pdf/sheetFile.ts';
import { Choice } from '../fields/Choice.tsx';
import type { Bench } from '../state/bench.ts';
import { lagging } from '../state/lagging.tsx';
import { saveFile } from '../state/saveFile.ts';
import { Blocks } from './Blocks.tsx';
import { MakingNote } from './MakingNote.tsx';
import { Notes, Panel } from './PanelParts.tsx';
import { useMaking } from './useMaking.ts';

const PAPERS = [
  { value: 'A4', label: 'A4' },
  { value: 'Letter', label: 'Letter' },
];

/** The order of work with each caution at its step, and the bench sheet. */
function WorkPanel({ design }: Pick<Bench, 'design'>) {
  const [paper, setPaper] = useState<'A4' | 'Letter'>('A4');
  const [making, make] = useMaking();
  const blocks = useMemo(() => benchSheetContent(design).blocks, [design]);
  const from = blocks.findIndex((block) => block.kind === 'heading' && block.startsPage);
  const further = blocks.findIndex((block, i) => i > from && block.kind === 'heading');
  const end = further < 0 ? blocks.length : further;
  const save = async (onLacking: SheetOptions['onLacking']): Promise<void> => {
    const { benchSheetPdf } = await import('../../output/benchSheet/benchSheetPdf.ts');
    const file = await benchSheetPdf(design, { paper, onLacking });
    saveFile(fileName(design.job.name, 'bench-sheet.pdf', [paper]), file, 'application/pdf');
  };
  return (
    <Panel
      name="Bench sheet"
      fields={
        <section aria-labelledby="bench-sheet">
          <h3 id="bench-sheet">Bench sheet</h3>
          <p className="help">
            One or two pages: sizes with their sums, seam, layers, supplies, and the order of work with its cautions.
          </p>
          <Choice
            title="Sheet"
            options={PAPERS}
            chosen={paper}
            choose={(value) => setPaper(value as 'A4' | 'Letter')}
          />
          <button
            type="button"
            className="main"
            disabled={making.status === 'making'}
            onClick={() => make('bench sheet', save)}
          >
            Save the bench sheet as PDF
          </button>
          <MakingNote making={making} />
        </section>
      }
    >
      <h3>Order of work</h3>
      <Blocks blocks={blocks.slice(from, end)} />
      {end < blocks.length && <h3>{blocks[end]!.text}</h3>}
      <Notes notes={blocks.slice(end + 1).map(({ text }) => text)} />
    </Panel>
  );
}

export default lagging(({ design }) => ({ design }), WorkPanel);
