import { type EndFrame, shownSegments } from './endFrame.ts';
import { GripHandle } from './GripHandle.tsx';
import type { Grip } from './grips.ts';
import { boardEdge, cutEdge, type Lane, seamLine } from './lane.ts';
import type { PatternZone } from './patternZone.ts';
import { SegmentBar } from './SegmentBar.tsx';
import type { Segment } from './segments.ts';
import type { ZoneChoice } from './useZoneChoice.ts';

interface EndDetailProps {
  readonly axis: PatternZone['axis'];
  readonly lanes: readonly Lane[];
  readonly ghost: Lane | null;
  readonly frame: EndFrame;
  /** px along the axis. */
  readonly room: number;
  readonly grips: { readonly cut: Grip; readonly seam: Grip };
  readonly zones: ZoneChoice;
  /** The gap of a lane in words, written on the board; without it there are none. */
  readonly say?: (gap: Segment) => string;
  readonly isTwin?: boolean;
  readonly onGrab: () => void;
  readonly onRelease: () => void;
}

const LANE = 24;
const BAR = 18;
const TOP = 4;
/** Room for the tabs, beside the lanes. */
const TABS = 22;

/** px that the detail takes across the axis. */
export const detailDepth = (lanes: number): number => TOP + lanes * LANE + TABS;

/** One end of the cover drawn larger, so that gap and overrun can be seen for what they are and the end be tuned. */
export function EndDetail(props: EndDetailProps) {
  const { axis, lanes, ghost, frame, room, grips, zones, say, isTwin = false, onGrab, onRelease } = props;
  const { end, place, scale } = frame;
  const depth = detailDepth(lanes.length);
  const [width, height] = axis === 'width' ? [room, depth] : [depth, room];
  const outward = end === 'first' ? -1 : 1;
  const first = lanes[0]!;
  const handle = { axis, scale, outward, isTwin, across: [TOP - 2, depth], onGrab, onRelease } as const;
  return (
    <div className="end-detail" style={{ inlineSize: width, blockSize: height }}>
      <svg width={width} height={height} aria-hidden="true">
        {/* Drawn along x, and for an upright strip reflected on the diagonal. */}
        <g transform={axis === 'width' ? undefined : 'matrix(0 1 1 0 0 0)'}>
          {lanes.map((lane, i) => (
            <SegmentBar
              key={lane.title}
              segments={shownSegments(lane, frame)}
              place={place}
              top={TOP + i * LANE}
              height={BAR}
              isLit={(id) => id === zones.lit}
              onHighlight={zones.light}
            />
          ))}
          {ghost !== null && (
            <path
              className="ghost"
              d={[cutEdge(ghost, end), seamLine(ghost, end)]
                .map((at) => `M${place(at)} 0V${TOP + lanes.length * LANE}`)
                .join('')}
            />
          )}
        </g>
        {say !== undefined &&
          lanes.map((lane, i) => (
            <text
              key={lane.title}
              className="row-title"
              x={place(boardEdge(lane, end)) - 8 * outward}
              y={TOP + i * LANE + BAR - 5}
              style={{ textAnchor: end === 'first' ? 'start' : 'end' }}
            >
              {say(
                lane.segments.filter(({ kind, id }) => kind === 'gap' && id !== 'spineGap').at(outward < 0 ? 0 : -1)!,
              )}
            </text>
          ))}
      </svg>
      <GripHandle
        {...handle}
        grip={grips.cut}
        at={place(cutEdge(first, end))}
        tab={end === 'first' ? 'before' : 'after'}
      />
      <GripHandle
        {...handle}
        grip={grips.seam}
        at={place(seamLine(first, end))}
        tab={end === 'first' ? 'after' : 'before'}
      />
    </div>
  );
}
