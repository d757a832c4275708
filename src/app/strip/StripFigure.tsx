import type { ReactNode } from 'react';
import type { SegmentId } from '../../core/index.ts';
import type { Tick } from './rulerTicks.ts';
import { SegmentBar } from './SegmentBar.tsx';
import { BAR, type StripLayout } from './stripLayout.ts';
import { cutEdge, type Track } from './track.ts';
import './strip.css';

interface StripFigureProps {
  readonly tracks: readonly Track[];
  readonly layout: StripLayout;
  readonly ticks: readonly Tick[];
  readonly isLit?: (id: SegmentId) => boolean;
  readonly onHighlight?: (id: SegmentId | null) => void;
  /** Further lines, drawn over the stretches and under the words. */
  readonly children?: ReactNode;
}

/** Tracks of stretches to one scale with their ruler and the leaders of their labels. */
export function StripFigure(props: StripFigureProps) {
  const { tracks, layout, ticks, isLit = () => false, onHighlight, children } = props;
  const { place, rows, ruler } = layout;
  const first = tracks[0]!;
  return (
    <svg
      viewBox={`0 0 ${layout.width} ${layout.height}`}
      width={layout.width}
      height={layout.height}
      aria-hidden="true"
    >
      {tracks.map((track, index) => (
        <SegmentBar
          key={track.title}
          segments={track.segments}
          place={(at) => place(at - track.origin)}
          top={rows[index]!}
          height={BAR}
          isLit={isLit}
          {...(onHighlight && { onHighlight })}
        />
      ))}
      {children}
      {tracks.map(({ title, segments, origin }, index) => {
        const board = segments.find(({ id }) => id === 'frontBoard' || id === 'height')!;
        return (
          <text
            key={title}
            className="row-title"
            x={place((board.from + board.to) / 2 - origin)}
            y={rows[index]! + BAR / 2 + 4}
          >
            {title}
          </text>
        );
      })}
      {layout.labels.map(({ id, leader: { from, to } }) => (
        <path
          key={id}
          className="label-leader"
          data-lit={isLit(id) || undefined}
          d={`M${from.join(' ')}L${to.join(' ')}`}
        />
      ))}
      <path className="ruler" d={`M${place(cutEdge(first, 'first'))} ${ruler}H${place(cutEdge(first, 'last'))}`} />
      {ticks.map(({ at, text }) => (
        <g key={at} className="ruler">
          <path d={`M${place(at - first.origin)} ${ruler}v${text === null ? 4 : 7}`} />
          {text !== null && (
            <text x={place(at - first.origin)} y={ruler + 17} textAnchor="middle">
              {text}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}
