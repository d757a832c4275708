import { lazy } from 'react';
import { type Edge, isForeEdge } from '../../core/index.ts';
import { LatePart } from '../loading/LatePart.tsx';
import { useBench } from '../state/BenchContext.tsx';
import type { LoupePlace } from './Loupe.tsx';
import { RoomLeft } from './RoomLeft.tsx';

const Loupe = lazy(() => import('./Loupe.tsx'));

/** Where the loupe is put first: away from the corners, in the leather that the cover is sized for. */
const START: LoupePlace = { edge: 'frontForeEdge', at: 0.5, point: 'thick' };
/** Along head and tail within the pocket. */
const IN_POCKET = 0.85;

interface LookAtEdgesProps {
  readonly loupe: LoupePlace | null;
  readonly setLoupe: (place: LoupePlace | null) => void;
  /** Whether the loupe stands here, below the room left, and not over the picture. */
  readonly showsLoupe: boolean;
}

/** The room left at every edge, each row of which puts the loupe there. */
export function LookAtEdges({ loupe, setLoupe, showsLoupe }: LookAtEdgesProps) {
  const design = useBench(({ design }) => design);
  const look = (edge: Edge): void => setLoupe({ ...START, edge, at: isForeEdge(edge) ? START.at : IN_POCKET });
  return (
    <div className="look-at-edges">
      <RoomLeft onEdge={look} />
      {loupe === null && (
        <button type="button" className="quiet not-printed" onClick={() => setLoupe(START)}>
          Look at the edges
        </button>
      )}
      {loupe !== null && showsLoupe && (
        <LatePart name="loupe">
          <Loupe
            {...loupe}
            design={design}
            takesFocus
            onChange={(change) => setLoupe({ ...loupe, ...change })}
            onClose={() => setLoupe(null)}
          />
        </LatePart>
      )}
    </div>
  );
}
