import { useState } from 'react';
import type { LeatherName } from '../../../core/index.ts';
import { LASER_CAUTION } from '../../../output/laserCaution.ts';
import { layoutName } from '../../../output/layout/layoutQuestions.ts';
import type { SheetOptions } from '../../../output/pdf/sheetFile.ts';
import { Choice } from '../../fields/Choice.tsx';
import { optionsOf } from '../../fields/optionsOf.ts';
import { useBenchStore } from '../../state/BenchContext.tsx';
import { saveFile } from '../../state/saveFile.ts';
import { sheetBlock } from '../../state/sheetBlock.ts';
import { MakingNote } from '../MakingNote.tsx';
import { useMaking } from '../useMaking.ts';
import { LEATHER_TITLES } from './leatherTitles.ts';
import type { LaidOut } from './useLayout.ts';

const PAPERS = ['A4', 'Letter', 'A3', 'Tabloid'] as const;

const SIDES = [
  { value: 'flesh', label: 'flesh side' },
  { value: 'grain', label: 'grain side, mirrored' },
];

interface LayoutFilesProps {
  readonly leather: LeatherName;
  readonly laid: LaidOut;
  /** Whether the leather is the maker's own. */
  readonly isOwned: boolean;
  /** Whether a newer layout is on its way. */
  readonly isBusy: boolean;
}

/** The layout as files: a page to scale, and true size for a cutter or a drawing program. */
export function LayoutFiles({ leather, laid: { layout, question }, isOwned, isBusy }: LayoutFilesProps) {
  const store = useBenchStore();
  const [paper, setPaper] = useState<(typeof PAPERS)[number]>('A4');
  const [side, setSide] = useState('flesh');
  const [making, make] = useMaking();
  const isIdle = making.status !== 'making' && !isBusy;
  const isMirrored = side === 'grain';
  const { name } = store.getState().design.job;
  const sheet = async () => {
    const { layoutSheet } = await import('../../../output/layout/layoutSheet.ts');
    const { units } = store.getState().lengths;
    return layoutSheet({ name, leather, units, hide: question.hide, layout, isAssumed: !isOwned, isMirrored });
  };
  const savePdf = async (onLacking: SheetOptions['onLacking']): Promise<void> => {
    const [{ layoutPdf }, block] = await Promise.all([
      import('../../../output/layout/layoutPdf.ts'),
      sheetBlock(store, 'Leather layout'),
    ]);
    saveFile(
      layoutName(name, 'pdf', { leather, isMirrored, paper }),
      await layoutPdf(await sheet(), { paper, block, onLacking }),
      'application/pdf',
    );
  };
  const saveSvg = async (): Promise<void> => {
    const { layoutSvg } = await import('../../../output/layout/layoutSvg.ts');
    saveFile(layoutName(name, 'svg', { leather, isMirrored }), layoutSvg(await sheet()), 'image/svg+xml');
  };
  const saveDxf = async (): Promise<void> => {
    const { layoutDxf } = await import('../../../output/layout/layoutDxf.ts');
    saveFile(layoutName(name, 'dxf', { leather, isMirrored }), layoutDxf(await sheet()), 'image/vnd.dxf');
  };
  return (
    <details className="not-printed">
      <summary>
        Save this layout<span className="only-heard"> of the {LEATHER_TITLES[leather].toLowerCase()}</span>
      </summary>
      <Choice title="Seen from" options={SIDES} chosen={side} choose={setSide} />
      <Choice
        title="Sheet of the PDF"
        options={optionsOf(PAPERS)}
        chosen={paper}
        choose={(value) => setPaper(value as (typeof PAPERS)[number])}
        notes={['One page to scale, with a scale bar. SVG and DXF are in true size.']}
      />
      <p className="help">
        Four crosses stand outside the leather, in the same places on both sides. Mark them on the table, and the
        mirrored file fits the leather turned over.
      </p>
      {LASER_CAUTION.map((caution) => (
        <p key={caution} className="caution">
          {caution}
        </p>
      ))}
      <div className="row">
        <button type="button" disabled={!isIdle} onClick={() => make('layout as PDF', savePdf)}>
          Save as PDF
        </button>
        <button type="button" disabled={!isIdle} onClick={() => make('layout as SVG', saveSvg)}>
          Save as SVG
        </button>
        <button type="button" disabled={!isIdle} onClick={() => make('layout as DXF', saveDxf)}>
          Save as DXF
        </button>
      </div>
      <MakingNote making={making} />
    </details>
  );
}
