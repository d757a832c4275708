import { useId, useState } from 'react';
import { fileName } from '../../output/fileName.ts';
import { MeasuringSheetButton } from '../form/MeasuringSheetButton.tsx';
import { MakingNote } from '../making/MakingNote.tsx';
import { useMaking } from '../making/useMaking.ts';
import { useBench } from '../state/BenchContext.tsx';
import { addressOf } from '../state/place.ts';
import { saveFile } from '../state/saveFile.ts';
import { CustomerLink } from './CustomerLink.tsx';
import { MakersMark } from './MakersMark.tsx';
import { OnTheTable } from './OnTheTable.tsx';
import { PaperButtons, TurnButton } from './SheetTools.tsx';
import type { ShownSheet } from './saveSheet.ts';
import type { OfferChoices } from './useOfferChoices.ts';
import { WeightsShown } from './WeightsShown.tsx';

interface CustomerToolsProps {
  readonly shown: ShownSheet;
  readonly isTurning: boolean;
  readonly setTurning: (isTurning: boolean) => void;
  readonly choices: OfferChoices;
}

/** Widths that a picture may have, pixels; its height is three quarters of it. */
const WIDTHS = [1024, 2048, 4096] as const;

/** What lies behind the bench, as on the screen. */
const AIR = '#f6f1e6';

const NO_SCENE = 'This browser draws no 3D view to take a picture of.';

/** What can be done with the customer's sheet; none of it is printed. */
export function CustomerTools(props: CustomerToolsProps) {
  const { shown, isTurning, setTurning, choices } = props;
  const { closed, open } = shown;
  const good = useBench(({ history }) => history.good);
  const [making, make] = useMaking();
  const [width, setWidth] = useState<number>(WIDTHS[1]);
  const [shownCover, setShownCover] = useState<'closed' | 'open'>('closed');
  const id = useId();
  const { document, job } = good;

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
      <TurnButton isTurning={isTurning} setTurning={setTurning} />
      {choices.hasPrice && (
        <label className="tick">
          <input
            type="checkbox"
            checked={choices.showsPrice}
            onChange={(event) => choices.change({ showsPrice: event.target.checked })}
          />
          <span>Show the price</span>
        </label>
      )}
      <div className="row">
        <PaperButtons shown={shown} make={make} />
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
      <CustomerLink document={document} job={job} offer={choices.offer} hasPrice={choices.hasPrice} />
      <OnTheTable />
      <details>
        <summary>Weights and mark</summary>
        <WeightsShown onWeight={choices.change} />
        <MakersMark mark={shown.mark} setMark={(mark) => choices.change({ mark })} />
      </details>
      <MakingNote making={making} />
    </header>
  );
}
