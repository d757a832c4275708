import { useMemo, useState } from 'react';
import {
  type LeatherName,
  newerFigures,
  type Shop,
  shopKnowledge,
  type TakenLeather,
  takeLeather,
} from '../../core/index.ts';
import { keepLeatherOfJob } from '../shelf/newLeather.ts';
import { useOwnLeathers } from '../shelf/ownLeathers.ts';
import type { ShelfTrouble } from '../shelf/shelfTrouble.ts';
import { TroubleNote } from '../shelf/TroubleNote.tsx';
import { useBench, useBenchStore, useDispatch, useLengths } from '../state/BenchContext.tsx';
import { addressOf, usePlace } from '../state/place.ts';
import { LeatherPicker } from './LeatherPicker.tsx';
import { newerWords } from './newerFigureWords.ts';
import { OwnLeatherHead } from './OwnLeatherHead.tsx';

interface OwnLeatherProps {
  readonly piece: LeatherName;
  /** What the piece is called. */
  readonly name: string;
}

/** The leather of the maker's own that a piece takes its figures from: taking one, and what is better known of it since. */
export default function OwnLeather({ piece, name }: OwnLeatherProps) {
  const store = useBenchStore();
  const dispatch = useDispatch();
  const lengths = useLengths();
  const path = `leather.${piece}.taken` as const;
  const job = useBench(({ history }) => history.good.job);
  const taken = job.leather[piece]?.taken ?? null;
  // The cards stay while the maker is elsewhere, as among the leathers.
  const { leathers, trouble } = useOwnLeathers(usePlace().id === 'cover');
  const [isPicking, setPicking] = useState(false);
  const [refused, setRefused] = useState<ShelfTrouble | null>(null);
  const own = leathers?.find(({ id }) => id === taken?.id);
  const isLater = own !== undefined && own.revision !== taken?.revision;
  const shop = useMemo(() => (isLater && leathers !== null ? shopOf(leathers) : null), [isLater, leathers]);
  const newer = isLater && shop !== null ? newerFigures(takeLeather(piece, own, shop, job), job) : [];
  const put = (value: unknown): void => dispatch({ type: 'edit', patches: [{ path, value }] });
  const take = (leather: TakenLeather): void => {
    setPicking(false);
    dispatch({ type: 'edit', patches: takeLeather(piece, leather, shopOf(leathers ?? []), job) });
  };
  const keep = async (): Promise<void> => {
    const kept = await keepLeatherOfJob(store);
    setRefused(kept.ok ? null : kept.trouble);
  };
  return (
    <section className="own-leather" aria-label={`${name} from your leathers`} data-path={path}>
      <OwnLeatherHead
        name={name}
        taken={taken?.name ?? null}
        mayKeep={piece === 'outside'}
        link={
          own && (
            <a className="link" href={addressOf('leathers', own.id)}>
              {own.leather.name}
            </a>
          )
        }
        isPicking={isPicking}
        on={{ pick: () => setPicking(!isPicking), keep: () => void keep(), release: () => put(undefined) }}
      />
      {taken !== null && leathers !== null && own === undefined && (
        <p className="help">It is no longer among your leathers. The job keeps the figures that it took.</p>
      )}
      <TroubleNote trouble={refused ?? trouble} />
      {isPicking && <LeatherPicker leathers={leathers} take={take} />}
      {newer.length > 0 && own !== undefined && (
        <div className="noted" role="status">
          <p>{own.leather.name} is better known now than when this job took it:</p>
          <ul>
            {newerWords(newer, piece, job, lengths).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <p className="row">
            <button type="button" onClick={() => take(own)}>
              Take the newer figures
            </button>
            <button type="button" onClick={() => put({ ...taken, revision: own.revision })}>
              Keep these
            </button>
          </p>
        </div>
      )}
    </section>
  );
}

const shopOf = (leathers: readonly TakenLeather[]): Shop => shopKnowledge(leathers.map(({ leather }) => leather));
