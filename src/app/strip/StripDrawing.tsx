import { useState } from 'react';
import type { CoverDesign } from '../../core/fold/coverDesign.ts';
import { GripHandle } from './GripHandle.tsx';
import { mouthGrip, sizeGrip } from './grips.ts';
import { isLit, LabelButton } from './LabelButton.tsx';
import { cutEdge, type End, type Lane, mouth } from './lane.ts';
import type { Tick } from './rulerTicks.ts';
import { SegmentBar } from './SegmentBar.tsx';
import { BAR, type StripLabel, stripLayout } from './stripLayout.ts';
import type { ZoneChoice } from './useZoneChoice.ts';

interface StripDrawingProps {
  readonly design: CoverDesign;
  /** The lane that the labels belong to comes first. */
  readonly lanes: readonly Lane[];
  readonly ghost: Lane | null;
  readonly ghostDesign: CoverDesign | null;
  readonly labels: readonly StripLabel[];
  readonly ticks: readonly Tick[];
  /** px to draw in. */
  readonly room: number;
  readonly zones: ZoneChoice;
}

const ENDS: readonly End[] = ['first', 'last'];

/** Lanes of stretches to one scale over a ruler; the labels carry names and lengths and can be reached by key. */
export function StripDrawing(props: StripDrawingProps) {
  const { design, lanes, ghost, ghostDesign, labels, ticks, room, zones } = props;
  const first = lanes[0]!;
  const now = Math.max(first.span, ghost?.span ?? 0);
  // While a tab is dragged the scale stands still, so that the line stays under the pointer.
  const [held, setHeld] = useState<number | null>(null);
  const layout = stripLayout(first, labels, lanes.length, room, held ?? now);
  const { place, scale, rows, ruler } = layout;
  const across = [rows[0]! - 5, rows.at(-1)! + BAR + 5] as const;
  const mouths = mouth(design);
  const handle = {
    axis: 'width',
    scale,
    across,
    onGrab: () => setHeld(now),
    onRelease: () => setHeld(null),
  } as const;
  return (
    <div className="strip-drawing" style={{ height: layout.height, width: layout.width }}>
      <svg width={layout.width} height={layout.height} aria-hidden="true">
        {lanes.map((lane, index) => (
          <SegmentBar
            key={lane.title}
            segments={lane.segments}
            place={(at) => place(at - lane.origin)}
            top={rows[index]!}
            height={BAR}
            isLit={(id) => isLit(zones, id)}
            onHighlight={zones.light}
          />
        ))}
        {mouths !== null && (
          <path
            className="mouth"
            d={`M${place(-mouths)} ${across[0]}V${across[1]}M${place(mouths)} ${across[0]}V${across[1]}`}
          />
        )}
        {ghost !== null && (
          <path
            className="ghost"
            d={ghostPath(ghost, ghostDesign === null ? null : mouth(ghostDesign), place, across)}
          />
        )}
        {lanes.map(({ title, segments, origin }, index) => {
          const board = segments.find(({ id }) => id === 'frontBoard')!;
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
            className={isLit(zones, id) ? 'leader lit' : 'leader'}
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
      {layout.labels.map((label) => (
        <LabelButton
          key={label.id}
          label={label}
          zones={zones}
          side={label.top > 0 ? 'below' : 'above'}
          style={{
            left: label.centre - label.width / 2,
            top: label.top,
            width: label.width,
            height: layout.labelHeight,
          }}
        />
      ))}
      {ENDS.map((end) => (
        <GripHandle
          {...handle}
          key={end}
          grip={sizeGrip(design, 'width')}
          outward={end === 'first' ? -1 : 1}
          tab={end === 'first' ? 'before' : 'after'}
          at={place(cutEdge(first, end))}
          isTwin={end === 'last'}
        />
      ))}
      {/* The lanes' titles stand on the front board, so the tab of the mouth is on the back one. */}
      {mouths !== null && (
        <GripHandle {...handle} grip={mouthGrip(design)} outward={1} tab="before" at={place(mouths)} />
      )}
    </div>
  );
}

function ghostPath(
  ghost: Lane,
  mouths: number | null,
  place: (at: number) => number,
  [top, bottom]: readonly [number, number],
) {
  const [left, right] = [place(cutEdge(ghost, 'first')), place(cutEdge(ghost, 'last'))];
  const lines = mouths === null ? [] : [place(-mouths), place(mouths)];
  return `M${left} ${top}H${right}V${bottom}H${left}Z${lines.map((x) => `M${x} ${top}V${bottom}`).join('')}`;
}
