import { type KeyboardEvent, type PointerEvent, type ReactNode, useId, useLayoutEffect, useRef, useState } from 'react';
import type { Vec2 } from '../../core/index.ts';
import { PointLoupe } from './PointLoupe.tsx';
import type { CloseUp, DrawnPicture, Preview } from './photographQuestions.ts';
import './photographDrawing.css';

interface DrawnPoint {
  readonly name: string;
  readonly at: Vec2;
}

interface PhotographDrawingProps {
  /** What it shows, for those who hear it. */
  readonly label: string;
  readonly picture: DrawnPicture;
  /** Points that can be moved. */
  readonly points: readonly DrawnPoint[];
  /** Lines between points, by their places in the list. */
  readonly lines: readonly (readonly [number, number])[];
  /** Outlines of what was found. */
  readonly outlines: readonly (readonly Vec2[])[];
  /** Takes a point to its new place: when it is let go, and at each key. */
  readonly move: (point: number, at: Vec2) => void;
  readonly undo: () => void;
  readonly closeUp: (at: Vec2) => Promise<CloseUp>;
  /** What stands under the picture and follows its points while they are dragged; it can bring the focus to one. */
  readonly below?: (placeOf: (point: number) => Vec2, choose: (point: number) => void) => ReactNode;
}

/** Pixels of the picture that an arrow key moves a point by. */
const STEP = { plain: 1, shift: 10 } as const;
const WAYS: Readonly<Record<string, Vec2>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/**
 * A photograph with points that are dragged by pointer or finger, or moved by keys, each under a loupe that shows the file's own
 * pixels beside it. The loupe is dragged too, for a finger's breadth of the picture is many pixels.
 */
export function PhotographDrawing(props: PhotographDrawingProps) {
  const { label, picture, points, lines, outlines, move, undo, closeUp, below } = props;
  const id = useId();
  const frame = useRef<HTMLDivElement>(null);
  const [chosen, setChosen] = useState<number | null>(null);
  const [held, setHeld] = useState<{ readonly point: number; readonly at: Vec2 } | null>(null);
  // Beside the state, which may not be drawn yet when the point is let go.
  const grip = useRef<{ readonly from: Vec2; readonly at: Vec2; to: Vec2 } | null>(null);
  const placeOf = (point: number): Vec2 => (held?.point === point ? held.at : points[point]!.at);
  const within = ([x, y]: Vec2): Vec2 => [
    Math.max(0, Math.min(picture.width, x)),
    Math.max(0, Math.min(picture.height, y)),
  ];

  const take = (event: PointerEvent<HTMLElement>, point: number): void => {
    if (event.button !== 0) return;
    event.preventDefault();
    event.currentTarget.focus({ preventScroll: true });
    event.currentTarget.setPointerCapture(event.pointerId);
    grip.current = { from: [event.clientX, event.clientY], at: points[point]!.at, to: points[point]!.at };
    setHeld({ point, at: points[point]!.at });
  };
  const drag = (event: PointerEvent<HTMLElement>, point: number): void => {
    if (grip.current === null) return;
    const scale = picture.width / frame.current!.getBoundingClientRect().width;
    const { from, at } = grip.current;
    const to = within([at[0] + scale * (event.clientX - from[0]), at[1] + scale * (event.clientY - from[1])]);
    grip.current.to = to;
    setHeld({ point, at: to });
  };
  const drop = (): void => {
    grip.current = null;
    setHeld(null);
  };
  const letGo = (point: number): void => {
    const gripped = grip.current;
    drop();
    if (gripped !== null && gripped.to !== gripped.at) move(point, gripped.to);
  };
  const press = (event: KeyboardEvent, point: number): void => {
    if (event.key === 'Escape' && held !== null) drop();
    const way = WAYS[event.key];
    if (way === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const step = event.shiftKey ? STEP.shift : STEP.plain;
    const [x, y] = points[point]!.at;
    move(point, within([x + step * way[0], y + step * way[1]]));
  };
  const undoHere = (event: KeyboardEvent): void => {
    if (event.key.toLowerCase() !== 'z' || !(event.ctrlKey || event.metaKey) || event.shiftKey) return;
    event.preventDefault();
    // The job has an undo of its own.
    event.stopPropagation();
    undo();
  };

  const choose = (point: number): void => frame.current!.querySelectorAll<HTMLElement>('.placed-point')[point]?.focus();
  const path = (corners: readonly Vec2[]): string => corners.map(([x, y]) => `${x},${y}`).join(' ');
  const shown = held?.point ?? chosen;
  return (
    <>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys are those of the buttons within */}
      <div className="photograph-drawing" ref={frame} onKeyDown={undoHere}>
        <PreviewCanvas preview={picture.preview} label={label} />
        <svg viewBox={`0 0 ${picture.width} ${picture.height}`} aria-hidden="true">
          {outlines.map((outline) => (
            <polygon key={path(outline)} className="found-outline" points={path(outline)} />
          ))}
          {lines.map(([a, b]) => {
            const [from, to] = [placeOf(a), placeOf(b)];
            return <line key={`${a} ${b}`} className="placed-line" x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />;
          })}
        </svg>
        {points.map(({ name }, point) => {
          const [x, y] = placeOf(point);
          return (
            <button
              key={name}
              type="button"
              className="placed-point"
              data-held={held?.point === point ? '' : undefined}
              style={{ left: `${(100 * x) / picture.width}%`, top: `${(100 * y) / picture.height}%` }}
              aria-label={`${name}: ${Math.round(x)} across, ${Math.round(y)} down`}
              aria-describedby={`${id}-keys`}
              onPointerDown={(event) => take(event, point)}
              onPointerMove={(event) => drag(event, point)}
              onPointerUp={() => letGo(point)}
              onPointerCancel={drop}
              onLostPointerCapture={() => letGo(point)}
              onKeyDown={(event) => press(event, point)}
              onFocus={() => setChosen(point)}
              onBlur={() => setChosen(null)}
            />
          );
        })}
        <p className="only-heard" id={`${id}-keys`}>
          Arrow keys move it by one pixel, with Shift by ten. Control and Z undo the last move.
        </p>
        {shown !== null && points[shown] !== undefined && (
          <PointLoupe
            key={shown}
            picture={picture}
            name={points[shown].name}
            at={placeOf(shown)}
            toward={endsFrom(lines, shown).map(placeOf)}
            others={points.flatMap((_, i) => (i === shown ? [] : [placeOf(i)]))}
            closeUp={closeUp}
            hold={(at) => setHeld({ point: shown, at: within(at) })}
            letGo={(at) => {
              setHeld(null);
              move(shown, within(at));
            }}
          />
        )}
      </div>
      {below?.(placeOf, choose)}
    </>
  );
}

/** The other ends of the lines that end in a point. */
export const endsFrom = (lines: PhotographDrawingProps['lines'], point: number): number[] =>
  lines.flatMap(([a, b]) => (a === point ? [b] : b === point ? [a] : []));

function PreviewCanvas({ preview, label }: { readonly preview: Preview; readonly label: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const { width, height, rgba } = preview;
    canvas.current!.getContext('2d')!.putImageData(new ImageData(rgba, width, height), 0, 0);
  }, [preview]);
  return <canvas ref={canvas} width={preview.width} height={preview.height} role="img" aria-label={label} />;
}

/** A small picture of a photograph. */
export const PhotographPreview = PreviewCanvas;
