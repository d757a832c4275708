import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import { distance, onGrid, type Vec2 } from '../../../core/index.ts';
import { LEAP } from '../tooling/snapping.ts';
import { drawnOn, type HideDraft, withCorner } from './hideDraft.ts';
import { type ShapeName, sideMiddle, under } from './hideShape.ts';
import { carried, onPlane, type SurfaceSize, type SurfaceView } from './surfaceView.ts';

/** A pointer that moves less presses, px. */
const PRESS_PX = 4;

/** How far from a line it is still meant, px: of a mouse or pen, of a finger. */
const REACH_PX = { fine: 10, touch: 22 } as const;

/** What a key or a button enlarges by. */
export const ZOOM = 1.5;

export interface HandShape {
  readonly name: ShapeName;
  readonly corners: readonly Vec2[];
}

export interface Chosen {
  readonly name: ShapeName;
  readonly corner: number | null;
}

interface HandOptions {
  readonly view: SurfaceView;
  readonly size: SurfaceSize;
  readonly setView: (view: SurfaceView | null) => void;
  /** Closed shapes that can be chosen, the lowest first. */
  readonly shapes: readonly HandShape[];
  /** What is being drawn and is not closed. */
  readonly drawing: HideDraft | null;
  readonly setDrawing: (draft: HideDraft) => void;
  readonly chosen: Chosen | null;
  readonly choose: (chosen: Chosen | null) => void;
  /** Takes a changed shape; changes in a row with the same key are one step. */
  readonly put: (name: ShapeName, corners: readonly Vec2[], key?: string) => void;
  /** Takes out what is chosen. */
  readonly takeOut: () => void;
  /** Length of a step, mm. */
  readonly step: number;
}

type Gesture =
  | { readonly kind: 'draw'; readonly from: Vec2; readonly line: Vec2[]; isMoved: boolean }
  | {
      readonly kind: 'corner';
      readonly from: Vec2;
      readonly shape: HandShape;
      readonly corner: number;
      isMoved: boolean;
    }
  | {
      readonly kind: 'pan';
      readonly from: Vec2;
      readonly view: SurfaceView;
      readonly then: () => void;
      isMoved: boolean;
    }
  | { readonly kind: 'pinch'; readonly from: readonly [Vec2, Vec2]; readonly view: SurfaceView };

/** Something as it is held by the pointer, before it is let go. */
export type Held =
  | { readonly kind: 'line'; readonly line: readonly Vec2[] }
  | { readonly kind: 'shape'; readonly shape: HandShape; readonly corner: number };

/**
 * Drawing, moving and looking closer by pointer and keys. Let go, a gesture is one change; Escape forgets it. Two fingers move and
 * enlarge what is shown, and drop what one of them had begun.
 */
export function useHideHand(options: HandOptions) {
  const { view, size, setView, shapes, drawing, chosen, choose, put, step } = options;
  const pointers = useRef(new Map<number, Vec2>());
  const gesture = useRef<Gesture | null>(null);
  const surface = useRef<SVGSVGElement>(null);
  const [held, setHeld] = useState<Held | null>(null);
  const latest = useRef(options);
  useEffect(() => {
    latest.current = options;
  });

  const screenAt = (event: Pointed): Vec2 => placeIn(surface.current!, event);
  const shapeOf = (name: ShapeName): HandShape | undefined => shapes.find((shape) => shape.name === name);
  const found = (at: Vec2, kind: keyof typeof REACH_PX) => {
    const shape = chosen === null ? undefined : shapeOf(chosen.name);
    const own = shape && { corners: shape.corners, isClosed: shape.name !== 'scale' };
    return { shape, what: under(onPlane(view, size, at), own ?? null, shapes, REACH_PX[kind] / view.scale) };
  };

  const [drop] = useState(() => (): void => {
    gesture.current = null;
    setHeld(null);
  });
  const isHeld = held !== null;
  useEffect(() => {
    if (!isHeld) return;
    // Wherever the focus is.
    const onKey = ({ key }: globalThis.KeyboardEvent): void => void (key === 'Escape' && drop());
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [isHeld, drop]);

  useEffect(() => {
    const drawn = surface.current!;
    // React listens to these passively, and a passive listener cannot keep the page from moving.
    const zoom = (event: WheelEvent): void => {
      if (!(event.ctrlKey || event.metaKey)) return;
      event.preventDefault();
      const { view, size, setView } = latest.current;
      const at = placeIn(drawn, event);
      setView(carried(view, size, at, at, Math.exp(-event.deltaY / 200)));
    };
    const hold = (event: TouchEvent): void => {
      const [touch] = event.changedTouches;
      const { drawing, chosen, shapes, view, size } = latest.current;
      if (drawing !== null) {
        event.preventDefault();
        return;
      }
      const shape = shapes.find(({ name }) => name === chosen?.name);
      if (shape === undefined || touch === undefined) return;
      const own = { corners: shape.corners, isClosed: shape.name !== 'scale' };
      const what = under(onPlane(view, size, placeIn(drawn, touch)), own, [], REACH_PX.touch / view.scale);
      if (what !== null) event.preventDefault();
    };
    drawn.addEventListener('wheel', zoom, { passive: false });
    drawn.addEventListener('touchstart', hold, { passive: false });
    return () => {
      drawn.removeEventListener('wheel', zoom);
      drawn.removeEventListener('touchstart', hold);
    };
  }, []);

  const begin = (event: PointerEvent, at: Vec2): Gesture => {
    const pan = (then: () => void): Gesture => ({ kind: 'pan', from: at, view, then, isMoved: false });
    if (event.button === 1) return pan(() => {});
    if (drawing !== null) return { kind: 'draw', from: at, line: [onPlane(view, size, at)], isMoved: false };
    const { shape, what } = found(at, event.pointerType === 'touch' ? 'touch' : 'fine');
    if (what === null || shape === undefined || what.kind === 'shape')
      return pan(() => choose(what?.kind === 'shape' ? { name: what.name, corner: null } : null));
    if (what.kind === 'corner') return { kind: 'corner', from: at, shape, corner: what.index, isMoved: false };
    const corner = what.index + 1;
    const corners = shape.corners.toSpliced(corner, 0, onGrid(onPlane(view, size, at), step));
    return { kind: 'corner', from: at, shape: { name: shape.name, corners }, corner, isMoved: false };
  };

  const down = (event: PointerEvent<SVGSVGElement>): void => {
    const at = screenAt(event);
    pointers.current.set(event.pointerId, at);
    event.currentTarget.setPointerCapture(event.pointerId);
    const [first, second] = [...pointers.current.values()];
    if (first !== undefined && second !== undefined) {
      drop();
      gesture.current = { kind: 'pinch', from: [first, second], view };
    } else if (event.button <= 1) {
      const now = begin(event, at);
      gesture.current = now;
      if (now.kind === 'corner') setHeld({ kind: 'shape', shape: now.shape, corner: now.corner });
    }
  };

  const move = (event: PointerEvent<SVGSVGElement>): void => {
    const now = gesture.current;
    if (!pointers.current.has(event.pointerId)) return;
    const at = screenAt(event);
    pointers.current.set(event.pointerId, at);
    if (now === null) return;
    if (now.kind === 'pinch') {
      const [first, second] = [...pointers.current.values()];
      if (first !== undefined && second !== undefined) pinch(now, [first, second]);
      return;
    }
    if (!now.isMoved && distance(now.from, at) < PRESS_PX) return;
    now.isMoved = true;
    if (now.kind === 'pan') setView(carried(now.view, size, now.from, at));
    else if (now.kind === 'corner') setHeld({ kind: 'shape', shape: movedTo(now, at), corner: now.corner });
    else {
      const points = event.nativeEvent.getCoalescedEvents?.() ?? [];
      for (const point of points.length > 0 ? points : [event]) {
        const next = onPlane(view, size, screenAt(point));
        if (distance(next, now.line.at(-1)!) * view.scale >= 1) now.line.push(next);
      }
      setHeld({ kind: 'line', line: [...now.line] });
    }
  };

  const pinch = ({ from, view: before }: Extract<Gesture, { kind: 'pinch' }>, to: readonly [Vec2, Vec2]): void => {
    const middle = ([a, b]: readonly [Vec2, Vec2]): Vec2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    setView(carried(before, size, middle(from), middle(to), distance(...to) / Math.max(1, distance(...from))));
  };

  const movedTo = ({ shape, corner }: Extract<Gesture, { kind: 'corner' }>, at: Vec2): HandShape => {
    const to = onPlane(view, size, at);
    const { name, corners } = shape;
    return { name, corners: name === 'scale' ? corners.with(corner, to) : withCorner(corners, corner, to, step) };
  };

  const up = (event: PointerEvent<SVGSVGElement>): void => {
    const at = screenAt(event);
    const now = gesture.current;
    pointers.current.delete(event.pointerId);
    // The finger that is left of two does nothing more.
    drop();
    if (now?.kind === 'pan' && !now.isMoved) now.then();
    if (now?.kind === 'draw') options.setDrawing(drawnOn(drawing!, now.line, { scale: view.scale, step }));
    if (now?.kind !== 'corner') return;
    const { name, corners } = now.isMoved ? movedTo(now, at) : now.shape;
    if (now.isMoved || corners.length !== shapeOf(name)?.corners.length) put(name, corners);
    choose({ name, corner: now.corner });
  };

  const cancel = ({ pointerId }: PointerEvent): void => {
    pointers.current.delete(pointerId);
    drop();
  };

  const zoomBy = (times: number): void => {
    const middle: Vec2 = [size.width / 2, size.height / 2];
    setView(carried(view, size, middle, middle, times));
  };

  /** Chooses the next corner of the chosen shape, or the one before. */
  const goRound = (by: 1 | -1): void => {
    const shape = (chosen && shapeOf(chosen.name)) ?? shapes[0];
    if (shape === undefined) return;
    const { length } = shape.corners;
    const from = chosen?.corner ?? (by === 1 ? -1 : 0);
    choose({ name: shape.name, corner: (from + by + length) % length });
  };

  /** Adds a corner in the middle of the side that leaves the chosen one. */
  const addCorner = (): void => {
    const shape = chosen && shapeOf(chosen.name);
    if (!shape || chosen.corner === null || shape.name === 'scale') return;
    const corner = chosen.corner + 1;
    put(shape.name, shape.corners.toSpliced(corner, 0, onGrid(sideMiddle(shape.corners, chosen.corner), step)));
    choose({ name: shape.name, corner });
  };

  const moveBy = (dx: number, dy: number): void => {
    const shape = chosen && shapeOf(chosen.name);
    if (!shape || chosen.corner === null) return;
    const { name, corners } = shape;
    const isScale = name === 'scale';
    const by = isScale ? 1 / view.scale : step;
    const [x, y] = corners[chosen.corner]!;
    const to: Vec2 = [x + dx * by, y + dy * by];
    const key = `hide ${name} corner ${chosen.corner}`;
    put(name, isScale ? corners.with(chosen.corner, to) : withCorner(corners, chosen.corner, to, step), key);
  };

  const press = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const leap = event.shiftKey ? LEAP : 1;
    const ways = new Map<string, () => void>([
      ['ArrowLeft', () => moveBy(-leap, 0)],
      ['ArrowRight', () => moveBy(leap, 0)],
      ['ArrowUp', () => moveBy(0, leap)],
      ['ArrowDown', () => moveBy(0, -leap)],
      ['PageDown', () => goRound(1)],
      ['PageUp', () => goRound(-1)],
      ['Insert', addCorner],
      ['Enter', addCorner],
      ['Delete', options.takeOut],
      ['Backspace', options.takeOut],
      ['+', () => zoomBy(ZOOM)],
      ['-', () => zoomBy(1 / ZOOM)],
      ['0', () => setView(null)],
    ]);
    const act = ways.get(event.key);
    if (act === undefined) return;
    event.preventDefault();
    act();
  };

  return { surface, held, down, move, up, cancel, press, zoomBy, goRound, addCorner };
}

type Pointed = { readonly clientX: number; readonly clientY: number };

function placeIn(surface: Element, { clientX, clientY }: Pointed): Vec2 {
  // Its border is no part of what is drawn.
  const { left, top } = surface.getBoundingClientRect();
  return [clientX - left - surface.clientLeft, clientY - top - surface.clientTop];
}
