import { useMemo, useState } from 'react';
import { shopKnowledge, type TakenLeather } from '../../../core/index.ts';
import { customerSheet } from '../../../output/customerSheet/customerSheet.ts';
import { PLAIN_OFFER } from '../../../output/customerSheet/offer.ts';
import { fileName } from '../../../output/fileName.ts';
import { leatherChoice } from '../../../output/leatherChoice/leatherChoice.ts';
import { customerFragment } from '../../../output/shareLink/customerLink.ts';
import { today } from '../../../output/today.ts';
import { MakingNote } from '../../making/MakingNote.tsx';
import { useMaking } from '../../making/useMaking.ts';
import { useOwnLeathers } from '../../shelf/ownLeathers.ts';
import { TroubleNote } from '../../shelf/TroubleNote.tsx';
import { useBench, useBenchStore } from '../../state/BenchContext.tsx';
import { addressOf } from '../../state/place.ts';
import { saveFile } from '../../state/saveFile.ts';
import { sheetBlock } from '../../state/sheetBlock.ts';
import { keptMark, markBytes } from '../mark.ts';
import { WeightsTable } from '../WeightsTable.tsx';
import { useLeatherOptions } from './useLeatherOptions.ts';
import '../../leathers/leathers.css';
import '../customer.css';
import './choice.css';

/** Leathers that are compared at most: more columns no page holds. */
const PLACES = ['First', 'Second', 'Third'] as const;

/** Two or three of the maker's leathers side by side for the open job, and the same as a page for the customer. */
export default function LeatherChoicePlace() {
  const { leathers: taken, trouble } = useOwnLeathers();
  return (
    <section className="leathers-place leather-choice" aria-labelledby="choice-title">
      <header className="row">
        <h2 id="choice-title">Which leather for this book</h2>
        <a className="link" href={addressOf('leathers')}>
          All leathers
        </a>
      </header>
      <TroubleNote trouble={trouble} />
      {taken === null ? (
        trouble === null && <p role="status">Your leathers are being read.</p>
      ) : taken.length < 2 ? (
        <p>
          Here two or three of your leathers stand side by side for this book. You see how each is cut, how surely it
          fits, how it opens and rests, its weight and price. Put at least two among{' '}
          <a className="link" href={addressOf('leathers')}>
            your leathers
          </a>
          .
        </p>
      ) : (
        <Compared taken={taken} />
      )}
    </section>
  );
}

function Compared({ taken }: { readonly taken: readonly TakenLeather[] }) {
  const store = useBenchStore();
  const { good, lengths } = useBench(({ history, lengths }) => ({ good: history.good, lengths }));
  const [making, make] = useMaking();
  const own = good.job.leather.outside.taken?.id;
  const [chosen, choose] = useState<readonly string[]>(() => {
    const first = taken.filter(({ id }) => id === own);
    return [...first, ...taken.filter(({ id }) => id !== own)].slice(0, PLACES.length).map(({ id }) => id);
  });
  const shop = useMemo(() => shopKnowledge(taken.map(({ leather }) => leather)), [taken]);
  const leathers = useMemo(
    () => [...new Set(chosen)].flatMap((id) => taken.find((each) => each.id === id) ?? []),
    [chosen, taken],
  );
  const options = useLeatherOptions(good, leathers, shop);
  const choice = useMemo(() => (options.length === 0 ? null : leatherChoice(options, lengths)), [options, lengths]);

  const save = async (onLacking: (characters: readonly string[]) => void): Promise<void> => {
    if (choice === null) return;
    const best = options.find(({ id }) =>
      choice.customer.columns.some((column) => column.id === id && column.isChosen),
    );
    const { design, report } = best ?? options[0]!;
    const offer = { ...PLAIN_OFFER, date: today() };
    const sheet = customerSheet(design, report, offer, choice.customer);
    const { customerSheetPdf } = await import('../../../output/customerSheet/customerSheetPdf.ts');
    const paper = lengths.units === 'in' ? 'Letter' : 'A4';
    const mark = keptMark();
    const block = await sheetBlock(store, 'Which leather', {
      fragment: customerFragment(good.document, good.job, offer),
    });
    const bytes = await customerSheetPdf(sheet, {
      paper,
      mark: mark === null ? null : markBytes(mark),
      block,
      onLacking,
    });
    saveFile(fileName(good.job.name, 'leathers.pdf', [paper]), bytes, 'application/pdf');
  };

  return (
    <>
      <fieldset className="row choice-of-leathers not-printed">
        <legend>Side by side</legend>
        {PLACES.map((place, i) => (
          <label key={place}>
            {place}{' '}
            <select
              value={chosen[i] ?? ''}
              onChange={({ target: { value } }) => choose(PLACES.map((_, k) => (k === i ? value : (chosen[k] ?? ''))))}
            >
              {i > 0 && <option value="">none</option>}
              {taken.map(({ id, leather }) => (
                <option key={id} value={id}>
                  {leather.name}
                </option>
              ))}
            </select>
          </label>
        ))}
      </fieldset>
      {choice === null ? (
        <p role="status">This job cannot be worked out in these leathers.</p>
      ) : (
        <>
          <WeightsTable {...choice.maker} />
          <p className="row not-printed">
            <button type="button" onClick={() => void make('customer’s page', save)}>
              Save the customer’s page as PDF
            </button>
          </p>
          <MakingNote making={making} />
          <p className="help">
            Each cover is cut for its own leather, by its tests and finished covers, or else by what is usual. The one
            that fits most surely is marked.
          </p>
        </>
      )}
    </>
  );
}
