import { useState } from 'react';
import { useHeight } from '../sheet/useExtent.ts';
import { useBench } from '../state/BenchContext.tsx';
import { detailDepth, EndDetail } from './EndDetail.tsx';
import { endFrames } from './endFrame.ts';
import { HandleButton } from './HandleButton.tsx';
import { endHandles, sizeHandle } from './handles.ts';
import { isLit, LabelButton } from './LabelButton.tsx';
import { rulerTicks } from './rulerTicks.ts';
import { SegmentBar } from './SegmentBar.tsx';
import { spreadLabels } from './spreadLabels.ts';
import { outsideWords, stripLabels } from './stripLabels.ts';
import { Tuner } from './Tuner.tsx';
import { cutEdge, type End, rangeTracks, track } from './track.ts';
import { useUntuned } from './untunedDesign.ts';
import type { ZoneChoice } from './useZoneChoice.ts';

/** px, from the left: the ruler, the tracks, the enlarged ends, the labels. */
const RULER = 30;
const BAR = 14;
const TRACK = 17;
const DETAIL = 12;
/** px kept free beyond the cut edges, for their tabs. */
const PAD = 22;
/** px of the board in an enlarged end. */
const BOARD = 40;
const LINE = 14;

const ENDS: readonly End[] = ['first', 'last'];

/** The outside from head to tail over a board in its pocket, as an upright ruler, with both ends enlarged beside it. */
export default function UprightStrip({ zones }: { readonly zones: ZoneChoice }) {
  const { design, lengths } = useBench(({ design, lengths }) => ({ design, lengths }));
  const untunedCover = useUntuned();
  const [ref, room] = useHeight<HTMLDivElement>();
  const tracks = rangeTracks(design, 'height', lengths);
  const untuned = untunedCover && track(untunedCover, 'height', 'thick', 'untuned');
  const segment = tracks[0]!.segments.find(({ id }) => id === zones.chosen);
  return (
    <section className="upright" aria-labelledby="upright-title">
      <header>
        <h2 id="upright-title">Head to tail</h2>
        <p>{outsideWords(design, 'height', lengths)}</p>
      </header>
      <div ref={ref} className="upright-frame">
        {room > 0 && <UprightDrawing tracks={tracks} untuned={untuned} room={room} zones={zones} />}
      </div>
      {segment !== undefined && <Tuner segment={segment} />}
    </section>
  );
}

interface UprightDrawingProps {
  readonly tracks: ReturnType<typeof rangeTracks>;
  readonly untuned: ReturnType<typeof track> | null;
  /** px of height to draw in. */
  readonly room: number;
  readonly zones: ZoneChoice;
}

function UprightDrawing({ tracks, untuned, room, zones }: UprightDrawingProps) {
  const { design, lengths } = useBench(({ design, lengths }) => ({ design, lengths }));
  const first = tracks[0]!;
  const allTracks = untuned === null ? tracks : [...tracks, untuned];
  const spanNow = 2 * Math.max(...allTracks.flatMap((each) => ENDS.map((end) => Math.abs(cutEdge(each, end)))));
  const detailRoom = room / 2 - 1.5 * LINE;
  const framesNow = endFrames(allTracks, detailRoom, { tab: PAD, board: BOARD });
  // While a tab is dragged both scales stand still, so that the line stays under the pointer.
  const [held, setHeld] = useState<{ readonly span: number; readonly frames: typeof framesNow } | null>(null);
  const { span, frames } = held ?? { span: spanNow, frames: framesNow };
  const scale = (room - 2 * PAD) / span;
  const place = (at: number): number => room / 2 + at * scale;
  const barsTo = RULER + tracks.length * TRACK;
  const labelsFrom = barsTo + DETAIL + detailDepth(tracks.length);
  const hold = {
    onGrab: () => setHeld({ span: spanNow, frames: framesNow }),
    onRelease: () => setHeld(null),
  };
  const labels = stripLabels(first.segments, tracks[1]?.segments ?? null, lengths);
  const placed = placedLabels();
  return (
    <>
      <svg width={labelsFrom} height={room} aria-hidden="true">
        <g transform="matrix(0 1 1 0 0 0)">
          {tracks.map((each, i) => (
            <SegmentBar
              key={each.title}
              segments={each.segments}
              place={(at) => place(at - each.origin)}
              top={RULER + i * TRACK}
              height={BAR}
              isLit={(id) => isLit(zones, id)}
              onHighlight={zones.light}
            />
          ))}
          {untuned !== null && (
            <path
              className="untuned"
              d={`M${place(cutEdge(untuned, 'first'))} ${RULER - 3}H${place(cutEdge(untuned, 'last'))}V${barsTo}H${place(cutEdge(untuned, 'first'))}Z`}
            />
          )}
          <path
            className="ruler"
            d={`M${place(cutEdge(first, 'first'))} ${RULER - 4}H${place(cutEdge(first, 'last'))}`}
          />
        </g>
        {tracks.map(({ title }, i) => (
          <text
            key={title}
            className="row-title"
            transform={`translate(${RULER + i * TRACK + BAR / 2 + 4} ${room / 2}) rotate(-90)`}
          >
            {title}
          </text>
        ))}
        {rulerTicks(first.span, lengths.units).map(({ at, text }) => (
          <g key={at} className="ruler">
            <path d={`M${RULER - 4} ${place(at - first.origin)}h${text === null ? -4 : -7}`} />
            {text !== null && (
              <text x={RULER - 13} y={place(at - first.origin) + 3} textAnchor="end">
                {text}
              </text>
            )}
          </g>
        ))}
        {ENDS.map((end) => {
          const { shown } = frames[end];
          const top = end === 'first' ? 0 : room - detailRoom;
          return (
            <path
              key={end}
              className="enlarged"
              d={shown
                .map((at) => `M${barsTo} ${place(at)}L${barsTo + DETAIL} ${top + frames[end].place(at)}`)
                .join('')}
            />
          );
        })}
        {placed.map(({ id, from, middle }) => (
          <path
            key={id}
            className="label-leader"
            data-lit={isLit(zones, id) || undefined}
            d={`M${labelsFrom - 22} ${from}L${labelsFrom} ${middle}`}
          />
        ))}
      </svg>
      {ENDS.map((end) => (
        <div
          key={end}
          className="upright-end"
          style={{ insetInlineStart: barsTo + DETAIL, insetBlockStart: end === 'first' ? 0 : room - detailRoom }}
        >
          <EndDetail
            axis="height"
            tracks={tracks}
            untuned={untuned}
            frame={frames[end]}
            room={detailRoom}
            handles={endHandles(design, 'height', end)}
            zones={zones}
            {...hold}
          />
        </div>
      ))}
      {ENDS.map((end) => (
        <HandleButton
          {...hold}
          key={end}
          handle={sizeHandle(design, 'height')}
          axis="height"
          scale={scale}
          outward={end === 'first' ? -1 : 1}
          tab={end === 'first' ? 'before' : 'after'}
          at={place(cutEdge(first, end))}
          across={[RULER - 4, barsTo]}
          isTwin={end === 'last'}
        />
      ))}
      {placed.map(({ middle, height, ...label }) => (
        <LabelButton
          key={label.id}
          label={label}
          zones={zones}
          side="beside"
          style={{ insetInlineStart: labelsFrom, insetBlockStart: middle - height / 2, blockSize: height }}
        />
      ))}
    </>
  );

  /** Labels beside their stretches in the enlarged ends; the board's between them. */
  function placedLabels() {
    const middles = first.segments.map(({ id, from, to }) => {
      if (id === 'height') return room / 2;
      const end = id.startsWith('head') ? 'first' : 'last';
      return (end === 'first' ? 0 : room - detailRoom) + frames[end].place((from + to) / 2 - first.origin);
    });
    const heights = labels.map(({ lines }) => lines.length * LINE + 4);
    const centres = spreadLabels(middles, heights, room);
    return labels.map((label, i) => ({ ...label, from: middles[i]!, middle: centres[i]!, height: heights[i]! }));
  }
}
