import { useState } from 'react';
import type { CoverDesign } from '../../core/index.ts';
import { HandleButton } from './HandleButton.tsx';
import { mouthHandle, sizeHandle } from './handles.ts';
import { isLit, LabelButton } from './LabelButton.tsx';
import type { Tick } from './rulerTicks.ts';
import { StripFigure } from './StripFigure.tsx';
import { BAR, type StripLabel, stripLayout } from './stripLayout.ts';
import { cutEdge, type End, mouth, type Track } from './track.ts';
import type { ZoneChoice } from './useZoneChoice.ts';

interface StripDrawingProps {
  readonly design: CoverDesign;
  /** The track that the labels belong to comes first. */
  readonly tracks: readonly Track[];
  readonly untuned: Track | null;
  readonly untunedCover: CoverDesign | null;
  readonly labels: readonly StripLabel[];
  readonly ticks: readonly Tick[];
  /** px to draw in. */
  readonly room: number;
  readonly zones: ZoneChoice;
}

const ENDS: readonly End[] = ['first', 'last'];

/** Tracks of stretches to one scale over a ruler; the labels carry names and lengths and can be reached by key. */
export function StripDrawing(props: StripDrawingProps) {
  const { design, tracks, untuned, untunedCover, labels, ticks, room, zones } = props;
  const first = tracks[0]!;
  const now = Math.max(first.span, untuned?.span ?? 0);
  // While a tab is dragged the scale stands still, so that the line stays under the pointer.
  const [held, setHeld] = useState<number | null>(null);
  const layout = stripLayout(first, labels, tracks.length, room, held ?? now);
  const { place, scale, rows } = layout;
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
      <StripFigure
        tracks={tracks}
        layout={layout}
        ticks={ticks}
        isLit={(id) => isLit(zones, id)}
        onHighlight={zones.light}
      >
        {mouths !== null && (
          <path
            className="mouth"
            d={`M${place(-mouths)} ${across[0]}V${across[1]}M${place(mouths)} ${across[0]}V${across[1]}`}
          />
        )}
        {untuned !== null && (
          <path
            className="untuned"
            d={untunedPath(untuned, untunedCover === null ? null : mouth(untunedCover), place, across)}
          />
        )}
      </StripFigure>
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
        <HandleButton
          {...handle}
          key={end}
          handle={sizeHandle(design, 'width')}
          outward={end === 'first' ? -1 : 1}
          tab={end === 'first' ? 'before' : 'after'}
          at={place(cutEdge(first, end))}
          isTwin={end === 'last'}
        />
      ))}
      {/* The tracks' titles stand on the front board, so the tab of the mouth is on the back one. */}
      {mouths !== null && (
        <HandleButton {...handle} handle={mouthHandle(design)} outward={1} tab="before" at={place(mouths)} />
      )}
    </div>
  );
}

function untunedPath(
  untuned: Track,
  mouths: number | null,
  place: (at: number) => number,
  [top, bottom]: readonly [number, number],
) {
  const [left, right] = [place(cutEdge(untuned, 'first')), place(cutEdge(untuned, 'last'))];
  const lines = mouths === null ? [] : [place(-mouths), place(mouths)];
  return `M${left} ${top}H${right}V${bottom}H${left}Z${lines.map((x) => `M${x} ${top}V${bottom}`).join('')}`;
}
