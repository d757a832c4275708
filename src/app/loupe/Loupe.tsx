import { type CSSProperties, type KeyboardEvent, type PointerEvent, useEffect, useId, useRef } from 'react';
import {
  type CoverDesign,
  EDGE_NAMES,
  EDGES,
  type Edge,
  edgeSection,
  gapAt,
  hasOneThickness,
  isForeEdge,
  RANGE_POINTS,
  type RangePoint,
  type Vec2,
} from '../../core/index.ts';
import { gapWords } from '../sheet/gapWords.ts';
import { useWidth } from '../sheet/useExtent.ts';
import { useLengths } from '../state/BenchContext.tsx';
import { POINT_NAMES, sectionNote } from './edgeWords.ts';
import { isSmallGlass, loupeView } from './loupeView.ts';
import { SectionGlass } from './SectionGlass.tsx';
import './loupe.css';

/** Where the loupe lies, and on which leather. */
export interface LoupePlace {
  readonly edge: Edge;
  /** 0 to 1: along a fore-edge from tail to head, along head and tail from the spine to the fore-edge. */
  readonly at: number;
  readonly point: RangePoint;
}

interface LoupeProps extends LoupePlace {
  readonly design: CoverDesign;
  readonly onChange: (change: Partial<LoupePlace>) => void;
  readonly onClose: () => void;
  /** px on the page from the end of the edge where `at` is 0 to the other; without a picture of the edge, a usual way. */
  readonly way?: Vec2;
  /** What the loupe is held over, px from the middle of the glass; left out, no line leads there. */
  readonly over?: Vec2;
  /** Takes the focus while it is open and gives it back, as when a key opened it. */
  readonly takesFocus?: boolean;
  /** Puts it in its place on the picture. */
  readonly style?: CSSProperties;
}

/** Share of the edge that an arrow key moves the loupe by. */
const KEY_STEP = 0.05;
/** px that a drag takes along an edge which is not in the picture. */
const USUAL_WAY = 200;

const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: KEY_STEP,
  ArrowUp: KEY_STEP,
  ArrowLeft: -KEY_STEP,
  ArrowDown: -KEY_STEP,
  Home: -1,
  End: 1,
};

const edgeBy = (edge: Edge, step: 1 | -1): Edge => EDGES.at((EDGES.indexOf(edge) + step) % EDGES.length)!;

/**
 * A round glass with the section of the cover under it, to scale. Dragged along its edge, or moved by the arrow keys; Page Up and
 * Page Down go from edge to edge, Escape closes it. Everything in it is computed from the design.
 */
export default function Loupe({
  design,
  edge,
  at,
  point,
  onChange,
  onClose,
  way,
  over,
  takesFocus = false,
  style,
}: LoupeProps) {
  const lengths = useLengths();
  const [ref, size] = useWidth<HTMLDivElement>();
  const grip = useRef<{ readonly pointer: Vec2; readonly at: number } | null>(null);
  const noteId = useId();
  useEffect(() => {
    if (!takesFocus) return;
    const before = document.activeElement;
    ref.current?.focus();
    return () => {
      if (before instanceof HTMLElement) before.focus();
    };
  }, [takesFocus, ref]);
  const section = edgeSection(design, edge, point, at);
  const view = loupeView(design, edge, size);
  const gap = gapAt(design.fits[point], edge);
  const said = section.gap === null ? null : gapWords(gap, lengths);
  const note = sectionNote(design, edge, section);
  const along = `${lengths.share(at)} of the way from the ${isForeEdge(edge) ? 'tail' : 'spine'}`;

  const moveTo = (place: number): void => {
    const next = Math.max(0, Math.min(1, place));
    if (next !== at) onChange({ at: next });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = STEPS[event.key];
    if (step !== undefined) moveTo(Math.round((at + step) / KEY_STEP) * KEY_STEP);
    else if (event.key === 'PageDown') onChange({ edge: edgeBy(edge, 1) });
    else if (event.key === 'PageUp') onChange({ edge: edgeBy(edge, -1) });
    else return;
    event.preventDefault();
  };
  const onPointerDown = (event: PointerEvent<HTMLElement>): void => {
    event.currentTarget.setPointerCapture(event.pointerId);
    grip.current = { pointer: [event.clientX, event.clientY], at };
  };
  const onPointerMove = ({ clientX, clientY }: PointerEvent): void => {
    if (grip.current === null) return;
    const [x, y] = way ?? (isForeEdge(edge) ? [0, -USUAL_WAY] : [USUAL_WAY, 0]);
    const [fromX, fromY] = grip.current.pointer;
    const moved = ((clientX - fromX) * x + (clientY - fromY) * y) / Math.max(1, x * x + y * y);
    moveTo(grip.current.at + moved);
  };
  const release = (): void => {
    grip.current = null;
  };

  return (
    <figure className="loupe not-printed" style={style} onKeyDown={({ key }) => key === 'Escape' && onClose()}>
      {over !== undefined && <Leader over={over} radius={size / 2} />}
      <div
        ref={ref}
        className="loupe-glass"
        role="slider"
        tabIndex={0}
        aria-label={`Loupe on the ${EDGE_NAMES[edge]}`}
        aria-orientation={isForeEdge(edge) ? 'vertical' : 'horizontal'}
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round(100 * at)}
        aria-valuetext={`${said ?? 'no pocket'}, ${POINT_NAMES[point]} leather, ${along}`}
        aria-describedby={noteId}
        onKeyDown={onKeyDown}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={release}
        onPointerCancel={release}
      >
        {size > 0 && (
          <SectionGlass
            section={section}
            view={view}
            size={size}
            said={said === null || !isSmallGlass(size) ? said : lengths.gap(gap)}
          />
        )}
      </div>
      <figcaption>
        <p className="loupe-name">
          <b>{EDGE_NAMES[edge]}</b> <span className="magnification">× {view.magnification}</span>
        </p>
        <p className="help">
          <span id={noteId}>{note}</span>
          <br />
          {along}
        </p>
        <Ends design={design} edge={edge} point={point} choose={(chosen) => onChange({ point: chosen })} />
        <div className="row loupe-buttons">
          <button type="button" className="quiet" onClick={() => onChange({ edge: edgeBy(edge, 1) })}>
            Next edge
          </button>
          <button type="button" className="quiet" onClick={onClose}>
            Close
          </button>
        </div>
      </figcaption>
    </figure>
  );
}

interface EndsProps {
  readonly design: CoverDesign;
  readonly edge: Edge;
  readonly point: RangePoint;
  readonly choose: (point: RangePoint) => void;
}

/** The switch between thin, middle and thick leather, each with its figure; none where every leather has one thickness. */
function Ends({ design: { needs, fits }, edge, point, choose }: EndsProps) {
  const lengths = useLengths();
  const name = useId();
  if (hasOneThickness(needs)) return null;
  return (
    <fieldset className="loupe-ends">
      <legend className="only-heard">Leather</legend>
      {RANGE_POINTS.map((each) => {
        const gap = gapAt(fits[each], edge);
        return (
          <label key={each} data-overrun={gap < 0 || undefined}>
            <input type="radio" name={name} checked={each === point} onChange={() => choose(each)} />
            <span>{POINT_NAMES[each]}</span> <b>{lengths.signedGap(gap)}</b>
          </label>
        );
      })}
    </fieldset>
  );
}

/** A line from the rim of the glass to what it is held over. */
function Leader({ over: [x, y], radius }: { readonly over: Vec2; readonly radius: number }) {
  const reach = Math.hypot(x, y);
  if (reach <= radius) return null;
  const rim = radius / reach;
  return (
    <svg className="loupe-leader" aria-hidden="true">
      <path d={`M${x * rim} ${radius + y * rim}L${x} ${radius + y}`} />
      <circle cx={x} cy={radius + y} r="3" />
    </svg>
  );
}
