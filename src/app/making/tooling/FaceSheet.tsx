import { type PointerEvent, type ReactNode, useEffect, useMemo, useRef } from 'react';
import {
  type Box2,
  type DesignWarning,
  type Drawing,
  type Layer,
  SIDES,
  type ToolingArea,
  type Vec2,
} from '../../../core/index.ts';
import { Dimension } from '../../sheet/PieceMarks.tsx';
import { PieceShapes } from '../../sheet/PieceShapes.tsx';
import { useLengths } from '../../state/BenchContext.tsx';
import type { Snapped } from './snapping.ts';

/** Layers of the piece that are drawn round its face. */
const ROUND: readonly Layer[] = ['cut', 'fold', 'seam', 'hole', 'book'];

/** What is shown of the piece beyond the flat part of its face, mm; to the end of the piece where that is not much more. */
const BEYOND = 10;
const TO_END = 30;

/** Height of the figures, px. */
const LETTERING = 11;

/** Room for the sizes at the left and over the head, px. */
const [SIDE, OVER] = [3 * LETTERING, 2.5 * LETTERING];

/** Part of a sheet that is shown, mm, y down, and the size of a px. */
export interface SheetView {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** px a millimetre. */
  readonly scale: number;
}

/** The flat part of a face with what is round it and room for its sizes, as large as it fits. */
export function sheetView({ whole, size }: ToolingArea, wide: number, highest: number): SheetView {
  const shown = (place: number, toEnd: number, way: 1 | -1): number =>
    place + way * (toEnd < TO_END ? toEnd + 1 : BEYOND);
  const [left, right] = [shown(whole.x[0], whole.x[0], -1), shown(whole.x[1], size[0] - whole.x[1], 1)];
  const [low, high] = [shown(whole.y[0], whole.y[0], -1), shown(whole.y[1], size[1] - whole.y[1], 1)];
  const scale = Math.max(0.1, Math.min((wide - SIDE) / (right - left), (highest - OVER) / (high - low)));
  return {
    x: left - SIDE / scale,
    y: size[1] - high - OVER / scale,
    width: right - left + SIDE / scale,
    height: high - low + OVER / scale,
    scale,
  };
}

interface FaceSheetProps {
  readonly area: ToolingArea;
  readonly drawing: Drawing;
  readonly view: SheetView;
  readonly label: string;
  /** Lines that the design in hand has come to. */
  readonly lit: Snapped['lines'];
  readonly warnings: readonly DesignWarning[];
  readonly children: ReactNode;
}

/** One face of the finished cover as its reader sees it, in true proportion, with its piece in light lines round it. */
export function FaceSheet({ area, drawing, view, label, lit, warnings, children }: FaceSheetProps) {
  const lengths = useLengths();
  const { size, flat, clear, centre, growth, isTurned } = area;
  const piece = drawing.pieces.find(({ id }) => id === area.piece);
  const round = useMemo(() => piece && <PieceShapes piece={piece} layers={ROUND} hasWords={false} />, [piece]);
  const text = LETTERING / view.scale;
  const [side, over] = [SIDE / view.scale, OVER / view.scale];
  const shown = { x: view.x + side, y: view.y + over, width: view.width - side, height: view.height - over };
  const down = (y: number): number => size[1] - y;
  const placed = isTurned
    ? `translate(${size[0]} ${size[1]}) scale(${-growth[0]} ${-growth[1]})`
    : `scale(${growth[0]} ${growth[1]})`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing with what can be chosen in it is no set of fields
    <svg
      className="drawing flat-pattern face-sheet"
      viewBox={`${view.x} ${view.y} ${view.width} ${view.height}`}
      style={{ inlineSize: view.width * view.scale }}
      role="group"
      aria-label={label}
      fontSize={text}
    >
      <svg {...shown} aria-hidden="true" viewBox={`${shown.x} ${shown.y} ${shown.width} ${shown.height}`}>
        <g className="face-piece" transform={placed}>
          {round}
        </g>
      </svg>
      <path
        className="centre-line"
        data-lit={lit[0] === 'centre' || undefined}
        d={`M${centre[0]} ${down(flat.y[0])}V${down(flat.y[1])}`}
      />
      <path
        className="centre-line"
        data-lit={lit[1] === 'centre' || undefined}
        d={`M${flat.x[0]} ${down(centre[1])}H${flat.x[1]}`}
      />
      {clear !== null && (
        <>
          <path className="clear-part" d={boxData(clear, size)} />
          {SIDES.map((side) => {
            const isWarned = warnings.some((warning) => warning.side === side);
            const isLit =
              lit[side === 'left' || side === 'right' ? 0 : 1] ===
              (side === 'left' || side === 'bottom' ? 'low' : 'high');
            return (
              (isWarned || isLit) && (
                <path
                  key={side}
                  className="clear-side"
                  data-kind={isWarned ? 'warned' : 'lit'}
                  d={sideData(clear, size, side)}
                />
              )
            );
          })}
        </>
      )}
      <Distances span={flat.x} middle={centre[0]} at={view.y + 2 * text} text={text} print={lengths.length} />
      <g transform={`translate(${view.x + 2 * text} 0) rotate(-90)`}>
        <Distances
          span={[-down(flat.y[0]), -down(flat.y[1])]}
          middle={-down(centre[1])}
          at={0}
          text={text}
          print={lengths.length}
        />
      </g>
      {children}
    </svg>
  );
}

const boxData = ({ x, y }: Box2, size: Vec2): string => `M${x[0]} ${size[1] - y[0]}H${x[1]}V${size[1] - y[1]}H${x[0]}Z`;

function sideData({ x, y }: Box2, size: Vec2, side: (typeof SIDES)[number]): string {
  const down = y.map((each) => size[1] - each);
  if (side === 'left' || side === 'right') return `M${x[side === 'left' ? 0 : 1]} ${down[0]}V${down[1]}`;
  return `M${x[0]} ${down[side === 'bottom' ? 0 : 1]}H${x[1]}`;
}

interface DistancesProps {
  readonly span: readonly [number, number];
  readonly middle: number;
  readonly at: number;
  readonly text: number;
  readonly print: (length: number) => string;
}

/** How far the centre line is from both ends of the flat part; where that has no room, the whole width. */
function Distances({ span: [from, to], middle, at, text, print }: DistancesProps) {
  const parts = [
    [from, middle],
    [middle, to],
  ] as const;
  const hasRoom = parts.every(([low, high]) => high - low > 0.62 * text * print(high - low).length);
  return (hasRoom ? parts : ([[from, to]] as const)).map(([low, high]) => (
    <Dimension key={low} from={low} to={high} at={at} text={print(high - low)} size={text} />
  ));
}

/** Where a pointer is on a face, mm, by its sheet on the screen. */
export function useFaceAt({ size }: ToolingArea, view: SheetView) {
  const ref = useRef<HTMLDivElement>(null);
  // Chromium scrolls the page under the finger whatever the `touch-action` of a shape within a drawing.
  useEffect(() => {
    const sheet = ref.current!;
    const hold = (event: TouchEvent): void => {
      if ((event.target as Element).closest('.design-mark, .design-grips') !== null) event.preventDefault();
    };
    sheet.addEventListener('touchstart', hold, { passive: false });
    return () => sheet.removeEventListener('touchstart', hold);
  }, []);
  const faceAt = ({ clientX, clientY }: PointerEvent): Vec2 => {
    const { left, top, width, height } = ref.current!.querySelector('svg')!.getBoundingClientRect();
    const x = view.x + ((clientX - left) / width) * view.width;
    const y = view.y + ((clientY - top) / height) * view.height;
    return [x, size[1] - y];
  };
  return [ref, faceAt] as const;
}
