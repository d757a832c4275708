import type { PatternZone, StripSegment } from '../../core/index.ts';
import { type EndFrame, shownSegments } from './endFrame.ts';
import { HandleButton } from './HandleButton.tsx';
import type { Handle } from './handles.ts';
import { SegmentBar } from './SegmentBar.tsx';
import { boardEdge, cutEdge, seamLine, type Track } from './track.ts';
import type { ZoneChoice } from './useZoneChoice.ts';

interface EndDetailProps {
  readonly axis: PatternZone['axis'];
  readonly tracks: readonly Track[];
  readonly untuned: Track | null;
  readonly frame: EndFrame;
  /** px along the axis. */
  readonly room: number;
  readonly handles: { readonly cut: Handle; readonly seam: Handle };
  readonly zones: ZoneChoice;
  /** The gap of a track in words, written on the board; without it there are none. */
  readonly say?: (gap: StripSegment) => string;
  readonly isTwin?: boolean;
  readonly onGrab: () => void;
  readonly onRelease: () => void;
}

const TRACK = 24;
const BAR = 18;
const TOP = 4;
/** Room for the tabs, beside the tracks. */
const TABS = 22;

/** px that the detail takes across the axis. */
export const detailDepth = (tracks: number): number => TOP + tracks * TRACK + TABS;

/** One end of the cover drawn larger, to show gap and overrun and to tune the end. */
export function EndDetail(props: EndDetailProps) {
  const { axis, tracks, untuned, frame, room, handles, zones, say, isTwin = false, onGrab, onRelease } = props;
  const { end, place, scale } = frame;
  const depth = detailDepth(tracks.length);
  const [width, height] = axis === 'width' ? [room, depth] : [depth, room];
  const outward = end === 'first' ? -1 : 1;
  const first = tracks[0]!;
  const handle = { axis, scale, outward, isTwin, across: [TOP - 2, depth], onGrab, onRelease } as const;
  return (
    <div className="end-detail" style={{ inlineSize: width, blockSize: height }}>
      <svg width={width} height={height} aria-hidden="true">
        {/* Drawn along x, and for an upright strip reflected on the diagonal. */}
        <g transform={axis === 'width' ? undefined : 'matrix(0 1 1 0 0 0)'}>
          {tracks.map((track, i) => (
            <SegmentBar
              key={track.title}
              segments={shownSegments(track, frame)}
              place={place}
              top={TOP + i * TRACK}
              height={BAR}
              isLit={(id) => id === zones.lit}
              onHighlight={zones.light}
            />
          ))}
          {untuned !== null && (
            <path
              className="untuned"
              d={[cutEdge(untuned, end), seamLine(untuned, end)]
                .map((at) => `M${place(at)} 0V${TOP + tracks.length * TRACK}`)
                .join('')}
            />
          )}
        </g>
        {say !== undefined &&
          tracks.map((track, i) => (
            <text
              key={track.title}
              className="row-title"
              x={place(boardEdge(track, end)) - 8 * outward}
              y={TOP + i * TRACK + BAR - 5}
              style={{ textAnchor: end === 'first' ? 'start' : 'end' }}
            >
              {say(
                track.segments.filter(({ kind, id }) => kind === 'gap' && id !== 'spineGap').at(outward < 0 ? 0 : -1)!,
              )}
            </text>
          ))}
      </svg>
      <HandleButton
        {...handle}
        handle={handles.cut}
        at={place(cutEdge(first, end))}
        tab={end === 'first' ? 'before' : 'after'}
      />
      <HandleButton
        {...handle}
        handle={handles.seam}
        at={place(seamLine(first, end))}
        tab={end === 'first' ? 'after' : 'before'}
      />
    </div>
  );
}
