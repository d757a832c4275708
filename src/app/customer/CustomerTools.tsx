import { useId, useState } from 'react';
import type { CustomerSheet } from '../../output/customerSheet/customerSheet.ts';
import { fileName } from '../../output/fileName.ts';
import type { SheetOptions } from '../../output/pdf/sheetFile.ts';
import { MeasuringSheetButton } from '../form/MeasuringSheetButton.tsx';
import { MakingNote } from '../making/MakingNote.tsx';
import { useMaking } from '../making/useMaking.ts';
import type { CoverPicture } from '../stage/coverPicture.ts';
import { openingWords } from '../stage/stageState.ts';
import { PRINTED } from '../stage/usePrintedPictures.ts';
import { useBench } from '../state/BenchContext.tsx';
import { addressOf } from '../state/place.ts';
import { saveFile } from '../state/saveFile.ts';
import { OPENINGS } from './TurningCover.tsx';

interface CustomerToolsProps {
  readonly sheet: CustomerSheet;
  readonly closed: CoverPicture;
  readonly open: CoverPicture;
  readonly isTurning: boolean;
  readonly setTurning: (isTurning: boolean) => void;
  readonly showsPrice: boolean;
  readonly setShowsPrice: (shows: boolean) => void;
}

/** Widths that a picture may have, pixels; its height is three quarters of it. */
const WIDTHS = [1024, 2048, 4096] as const;

/** What lies behind the bench, as on the screen. */
const AIR = '#f6f1e6';

const NO_SCENE = 'This browser draws no 3D view to take a picture of.';

/** What can be done with the customer's sheet; none of it is printed. */
export function CustomerTools(props: CustomerToolsProps) {
  const { sheet, closed, open, isTurning, setTurning, showsPrice, setShowsPrice } = props;
  const { design, good, lengths } = useBench(({ design, history, lengths }) => ({
    design,
    good: history.good,
    lengths,
  }));
  const [making, make] = useMaking();
  const [width, setWidth] = useState<number>(WIDTHS[1]);
  const [shownCover, setShownCover] = useState<'closed' | 'open'>('closed');
  const id = useId();
  const { document, job } = good;
  const paper = lengths.units === 'in' ? 'Letter' : 'A4';

  const savePdf = async (onLacking: SheetOptions['onLacking']): Promise<void> => {
    const { customerSheetPdf } = await import('../../output/customerSheet/customerSheetPdf.ts');
    await Promise.all([closed.settled, open.settled]);
    const pictures = [];
    for (const [angle, { scene }] of [
      [OPENINGS.closed, closed],
      [OPENINGS.open, open],
    ] as const) {
      const blob = await scene.current?.take(PRINTED, 'image/jpeg', '#ffffff');
      // A cover that does not go on is neither closed nor open.
      const words = openingWords({ kind: 'opening', angle }, design.fits.nominal);
      const caption = words.charAt(0).toUpperCase() + words.slice(1);
      if (blob) pictures.push({ caption, jpeg: new Uint8Array(await blob.arrayBuffer()) });
    }
    const bytes = await customerSheetPdf(sheet, { paper, withPrice: showsPrice, pictures, onLacking });
    saveFile(fileName(document.name, 'sheet.pdf', [paper, showsPrice ? 'with price' : '']), bytes, 'application/pdf');
  };
  const savePicture = async (): Promise<void> => {
    const { settled, scene } = shownCover === 'closed' ? closed : open;
    await settled;
    if (scene.current === null) throw new Error(NO_SCENE);
    const blob = await scene.current.take({ width, height: (width * 3) / 4 }, 'image/png', AIR);
    saveFile(fileName(document.name, 'png', [`${width}`, shownCover]), blob, 'image/png');
  };
  const saveModel = async (): Promise<void> => {
    const { makeGlb } = await import('./makeGlb.ts');
    saveFile(fileName(document.name, 'glb'), await makeGlb(job), 'model/gltf-binary');
  };

  return (
    <header className="row customer-tools not-printed">
      <a className="link" href={addressOf('cover')}>
        Back to the cover
      </a>
      <button type="button" onClick={() => setTurning(!isTurning)}>
        {isTurning ? 'Stop turning' : 'Turn slowly'}
      </button>
      {sheet.price !== null && (
        <label className="tick">
          <input type="checkbox" checked={showsPrice} onChange={(event) => setShowsPrice(event.target.checked)} />
          <span>Show the price</span>
        </label>
      )}
      <div className="row">
        <button
          type="button"
          onClick={() => void Promise.all([closed.settled, open.settled]).then(() => window.print())}
        >
          Print
        </button>
        <button type="button" onClick={() => void make('sheet', savePdf)}>
          Save as PDF
        </button>
        <button
          type="button"
          title="glTF binary, with the making as an animation"
          onClick={() => void make('3D model', saveModel)}
        >
          Save 3D model
        </button>
      </div>
      <div className="row">
        <label className="bar-word" htmlFor={`${id}-cover`}>
          Picture
        </label>
        <select
          id={`${id}-cover`}
          value={shownCover}
          onChange={(event) => setShownCover(event.target.value as 'closed' | 'open')}
        >
          <option value="closed">closed</option>
          <option value="open">open</option>
        </select>
        <select
          aria-label="Size of the picture"
          value={width}
          onChange={(event) => setWidth(Number(event.target.value))}
        >
          {WIDTHS.map((each) => (
            <option key={each} value={each}>{`${each} × ${(each * 3) / 4}`}</option>
          ))}
        </select>
        <button type="button" onClick={() => void make('picture', savePicture)}>
          Save picture
        </button>
      </div>
      <MeasuringSheetButton />
      <MakingNote making={making} />
    </header>
  );
}
