import { SegmentBar } from './SegmentBar.tsx';
import type { Segment } from './segments.ts';

interface ForeEdgeDetailProps {
  readonly rows: readonly { readonly title: string; readonly segments: readonly Segment[] }[];
  /** px to draw in. */
  readonly room: number;
  /** px a millimetre in the strip above, to say how many times larger this is. */
  readonly stripScale: number;
  /** The gap of a row in words. */
  readonly say: (gap: Segment) => string;
}

/** Of the board, this much is shown beyond its edge, mm; the rest of the drawing is the end of the cover. */
const BOARD_SHOWN = 14;
const ROW = 24;
const BAR = 18;

/** Both ends of the wrap drawn larger, so that gap and overrun can be seen for what they are. */
export function ForeEdgeDetail({ rows, room, stripScale, say }: ForeEdgeDetailProps) {
  const space = 16;
  const width = (room - space) / 2;
  const reach = Math.max(
    ...rows.flatMap(({ segments }) => [boardFrom(segments), spanOf(segments) - boardTo(segments)]),
  );
  const scale = width / (reach + BOARD_SHOWN);
  const height = rows.length * ROW + 2;
  return (
    <div className="fore-edge-detail">
      <p className="help">Both fore-edges, {(scale / stripScale).toFixed(1)} times as large as the strip</p>
      <svg width={room} height={height} aria-hidden="true">
        {(['front', 'back'] as const).map((side) => (
          <g key={side} transform={`translate(${side === 'front' ? 0 : width + space} 0)`}>
            {rows.map(({ title, segments }, index) => {
              const span = spanOf(segments);
              const place = (at: number): number => (side === 'front' ? at * scale : width - (span - at) * scale);
              const gap = segments.find(({ id }) => id === `${side}Gap`);
              return (
                <g key={title}>
                  <SegmentBar
                    segments={endOf(segments, side, reach + BOARD_SHOWN)}
                    place={place}
                    top={index * ROW + 4}
                    height={BAR}
                    isLit={() => false}
                  />
                  {gap && (
                    <text
                      className="row-title"
                      x={side === 'front' ? place(boardFrom(segments)) + 8 : place(boardTo(segments)) - 8}
                      y={index * ROW + 17}
                      style={{ textAnchor: side === 'front' ? 'start' : 'end' }}
                    >
                      {say(gap)}
                    </text>
                  )}
                </g>
              );
            })}
          </g>
        ))}
      </svg>
    </div>
  );
}

/** The stretches of one end, those cut off that go further than `reach` mm from the cut edge. */
function endOf(segments: readonly Segment[], side: 'front' | 'back', reach: number): readonly Segment[] {
  const [low, high] = side === 'front' ? [0, reach] : [spanOf(segments) - reach, spanOf(segments)];
  const within = (at: number): number => Math.max(low, Math.min(high, at));
  return segments
    .filter(({ id, from, to }) => id.startsWith(side) && Math.max(from, to) > low && Math.min(from, to) < high)
    .map((segment) => ({ ...segment, from: within(segment.from), to: within(segment.to) }));
}

const spanOf = (segments: readonly Segment[]): number => segments.at(-1)!.to;

/** Where the board can be written on: behind its edge and behind an overrun's hatch. */
const boardFrom = (segments: readonly Segment[]): number =>
  Math.max(...segments.filter(({ id }) => id === 'frontGap').flatMap(({ from, to }) => [from, to]));

const boardTo = (segments: readonly Segment[]): number =>
  Math.min(...segments.filter(({ id }) => id === 'backGap').flatMap(({ from, to }) => [from, to]));
