import { useMemo } from 'react';
import { leastWrap } from '../../core/index.ts';
import { OPENINGS } from '../../output/customerSheet/customerSheet.ts';
import { customerFragment } from '../../output/shareLink/customerLink.ts';
import { MeasuringSheetButton } from '../form/MeasuringSheetButton.tsx';
import { MakingNote } from '../making/MakingNote.tsx';
import { useMaking } from '../making/useMaking.ts';
import { useBench, useBenchStore } from '../state/BenchContext.tsx';
import { addressOf } from '../state/place.ts';
import { sheetBlock } from '../state/sheetBlock.ts';
import { PhotographSheetButton } from '../take/PhotographSheetButton.tsx';
import TakeAway from '../take/TakeAway.tsx';
import type { TakenView } from '../take/takenView.ts';
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

/** What can be done with the customer's sheet; none of it is printed. */
export function CustomerTools(props: CustomerToolsProps) {
  const { shown, isTurning, setTurning, choices } = props;
  const { design, good } = useBench(({ design, history }) => ({ design, good: history.good }));
  const store = useBenchStore();
  const [making, make] = useMaking();
  const { document, job } = good;

  // A customer is not sent the rates: the square code opens the customer's page.
  const block = () => sheetBlock(store, 'Customer sheet', { fragment: customerFragment(document, job, choices.offer) });

  const { closed, open } = shown;
  const views = useMemo<readonly TakenView[]>(
    () =>
      (['closed', 'open'] as const).map((name) => {
        const { settled, scene } = { closed, open }[name];
        return {
          name,
          pose: { kind: 'opening', angle: OPENINGS[name] },
          point: leastWrap(design),
          scene: () => settled.then(() => scene.current),
        };
      }),
    [design, closed, open],
  );

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
        <PaperButtons shown={{ ...shown, block }} make={make} />
        <TakeAway views={views} scheme="light" />
      </div>
      <MeasuringSheetButton />
      <PhotographSheetButton />
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
