import { useState } from 'react';
import { gapWords } from '../sheet/gapWords.ts';
import { useBench } from '../state/BenchContext.tsx';
import { EndDetail } from './EndDetail.tsx';
import { endFrames } from './endFrame.ts';
import { endHandles } from './handles.ts';
import type { Track } from './track.ts';
import type { ZoneChoice } from './useZoneChoice.ts';

interface ForeEdgeDetailProps {
  readonly tracks: readonly Track[];
  readonly untuned: Track | null;
  /** px to draw in. */
  readonly room: number;
  /** px a millimetre in the strip above, to say how many times larger this is. */
  readonly stripScale: number;
  readonly zones: ZoneChoice;
}

/** px between the two ends. */
const BETWEEN = 16;
/** px for a tab beyond the cut edge, and for the gap in words on the board. */
const FREE = { tab: 26, board: 84 };

/** Both ends of the wrap drawn larger, side by side. */
export function ForeEdgeDetail({ tracks, untuned, room, stripScale, zones }: ForeEdgeDetailProps) {
  const { design, lengths } = useBench(({ design, lengths }) => ({ design, lengths }));
  const width = (room - BETWEEN) / 2;
  const now = endFrames(untuned === null ? tracks : [...tracks, untuned], width, FREE);
  // While a tab is dragged the frame stands still, so that the line stays under the pointer.
  const [held, setHeld] = useState<typeof now | null>(null);
  const frames = held ?? now;
  return (
    <div className="fore-edge-detail">
      <p className="help">
        Both fore-edges, {lengths.number(frames.first.scale / stripScale, 1)} times as large. Drag a tab, or move it by
        the arrow keys.
      </p>
      <div className="ends">
        {(['first', 'last'] as const).map((end) => (
          <EndDetail
            key={end}
            axis="width"
            tracks={tracks}
            untuned={untuned}
            frame={frames[end]}
            room={width}
            handles={endHandles(design, 'width', end)}
            zones={zones}
            isTwin={end === 'last'}
            say={({ length }) => gapWords(length, lengths)}
            onGrab={() => setHeld(now)}
            onRelease={() => setHeld(null)}
          />
        ))}
      </div>
    </div>
  );
}
