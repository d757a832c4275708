import { useState } from 'react';
import { isForeEdge } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import { Loupe, type LoupePlace } from './Loupe.tsx';
import { RoomLeft } from './RoomLeft.tsx';

/** Where the loupe is put first: away from the corners, in the leather that the cover is sized for. */
const START: LoupePlace = { edge: 'frontForeEdge', at: 0.5, point: 'thick' };
/** Along head and tail within the pocket. */
const IN_POCKET = 0.85;

/** The room left at every edge, and the loupe without a picture to hold it over: it stands below. */
export function LookAtEdges() {
  const design = useBench(({ design }) => design);
  const [place, setPlace] = useState<LoupePlace | null>(null);
  return (
    <div className="look-at-edges">
      <RoomLeft onEdge={(edge) => setPlace({ ...START, edge, at: isForeEdge(edge) ? START.at : IN_POCKET })} />
      {place === null ? (
        <button type="button" className="quiet not-printed" onClick={() => setPlace(START)}>
          Look at the edges
        </button>
      ) : (
        <Loupe
          {...place}
          design={design}
          takesFocus
          onChange={(change) => setPlace({ ...place, ...change })}
          onClose={() => setPlace(null)}
        />
      )}
    </div>
  );
}
