import { type CSSProperties, type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { fieldNote, type JobPath, type PatternZone } from '../../core/index.ts';
import { useDispatch, useLengths } from '../state/BenchContext.tsx';
import { type Handle, handleValue, stepOf } from './handles.ts';

interface HandleButtonProps {
  readonly handle: Handle;
  readonly axis: PatternZone['axis'];
  /** px a millimetre in its drawing. */
  readonly scale: number;
  /** Which way along the axis is outward. */
  readonly outward: 1 | -1;
  /** The side of its line on which the tab hangs. */
  readonly tab: 'before' | 'after';
  /** px of the line in the drawing, and the stretch across the axis that it crosses. */
  readonly at: number;
  readonly across: readonly [number, number];
  /** A second handle of the same field is for the pointer alone, so that keys find each field once. */
  readonly isTwin?: boolean;
  readonly onGrab: () => void;
  readonly onRelease: () => void;
}

/** A drag: where it began, and the value that the pointer asks for and the one that the job has. */
interface Grab {
  readonly handle: Handle;
  readonly from: number;
  wanted: number;
  written: number;
  isMoved: boolean;
}

/** Key presses of ten steps. */
const LEAP = 10;

/** A line of the strip with a tab: dragged, or moved by the arrow keys, it changes a field of the job. */
export function HandleButton(props: HandleButtonProps) {
  const { handle, axis, scale, outward, tab, at, across, isTwin = false, onGrab, onRelease } = props;
  const dispatch = useDispatch();
  const lengths = useLengths();
  const grabbed = useRef<Grab | null>(null);
  const { path, name, value } = handle;
  const { min, max } = fieldNote(path);

  const write = (field: JobPath, next: number | undefined): void =>
    dispatch({ type: 'edit', key: `handle ${field}`, patches: [{ path: field, value: next }] });
  const along = ({ clientX, clientY }: PointerEvent): number => (axis === 'width' ? clientX : clientY);

  const grab = (event: PointerEvent<HTMLElement>): void => {
    if (event.button !== 0) return;
    // Ends the step of the arrow keys, so that cancelling the drag does not undo them.
    dispatch({ type: 'settle' });
    event.currentTarget.setPointerCapture(event.pointerId);
    const value = handleValue(handle, 0, lengths.units);
    grabbed.current = { handle, from: along(event), wanted: value, written: value, isMoved: false };
    onGrab();
  };
  const follow = (start: Grab): void => {
    if (start.wanted === start.written) return;
    start.written = start.wanted;
    start.isMoved = true;
    write(start.handle.path, start.wanted);
  };
  const drag = (event: PointerEvent): void => {
    const start = grabbed.current;
    if (start === null) return;
    start.wanted = handleValue(start.handle, (outward * (along(event) - start.from)) / scale, lengths.units);
    // The browser draws the frame in the task of the event: the job is worked out in a task of its own.
    setTimeout(() => grabbed.current === start && follow(start));
  };
  const release = (): void => {
    const start = grabbed.current;
    if (start === null) return;
    follow(start);
    grabbed.current = null;
    dispatch({ type: 'settle' });
    onRelease();
  };
  const letGo = (): void => {
    const start = grabbed.current;
    if (start === null) return;
    start.wanted = start.written;
    if (start.isMoved) dispatch({ type: 'cancel' });
    release();
  };

  const press = (event: KeyboardEvent): void => {
    const steps = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: LEAP, PageDown: -LEAP }[event.key];
    if (steps !== undefined) {
      const next = handleValue({ ...handle, rate: 1 }, steps * stepOf(handle, lengths.units), lengths.units);
      write(path, next);
    } else if (event.key === 'Delete' || event.key === 'Backspace') {
      dispatch({ type: 'edit', patches: [{ path, value: undefined }] });
    } else if (event.key === 'Escape' && grabbed.current !== null) {
      letGo();
    } else {
      return;
    }
    event.preventDefault();
  };

  const [start, size] = [across[0], across[1] - across[0]];
  const style: CSSProperties =
    axis === 'width'
      ? { insetInlineStart: at, insetBlockStart: start, blockSize: size }
      : { insetBlockStart: at, insetInlineStart: start, inlineSize: size };
  return (
    <div
      className="handle not-printed"
      data-axis={axis}
      data-tab={tab}
      data-end={outward < 0 ? 'first' : 'last'}
      role="slider"
      tabIndex={isTwin ? -1 : 0}
      aria-hidden={isTwin}
      aria-label={name}
      aria-orientation={axis === 'width' ? 'horizontal' : 'vertical'}
      aria-valuemin={min}
      aria-valuemax={max}
      aria-valuenow={value}
      aria-valuetext={lengths.size(value)}
      style={style}
      onPointerDown={grab}
      onPointerMove={drag}
      onPointerUp={release}
      onPointerCancel={letGo}
      onLostPointerCapture={release}
      onKeyDown={press}
      onBlur={() => dispatch({ type: 'settle' })}
    >
      <span className="handle-tab">
        <svg viewBox="0 0 20 20" aria-hidden="true" focusable="false">
          <path d="M3 10H17M6 6.5L2.5 10L6 13.5M14 6.5L17.5 10L14 13.5" />
        </svg>
      </span>
      <span className="handle-words" aria-hidden="true">
        {name} {lengths.size(value)}
      </span>
    </div>
  );
}
