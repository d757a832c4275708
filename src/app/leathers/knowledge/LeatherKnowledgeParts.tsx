import { useDeferredValue, useMemo } from 'react';
import { type StockLeather, shopKnowledge } from '../../../core/index.ts';
import { useOpenLeathers } from '../../shelf/useOpenLeathers.ts';
import { KnownFigures } from './KnownFigures.tsx';
import { LeatherCovers } from './LeatherCovers.tsx';

interface LeatherKnowledgePartsProps {
  readonly id: string;
  /** As it stands on the page, saved or not. */
  readonly leather: StockLeather;
  readonly change: (covers: StockLeather['covers']) => void;
}

/** What is known of a leather by its tests, its covers and the maker's others, and the covers made of it. */
export default function LeatherKnowledgeParts({ id, leather, change }: LeatherKnowledgePartsProps) {
  const { leathers } = useOpenLeathers(id);
  const now = useDeferredValue(leather);
  const shop = useMemo(
    () =>
      leathers &&
      shopKnowledge([...leathers.filter(({ record }) => record.id !== id).map((each) => each.leather), now]),
    [leathers, id, now],
  );
  return (
    <>
      {shop !== null && <KnownFigures leather={now} shop={shop} />}
      <LeatherCovers leather={leather} change={change} />
    </>
  );
}
