import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import {
  designCopies,
  designNote,
  distance,
  type LengthUnit,
  type MovableDesign,
  mm,
  type ToolingArea,
  type ToolingDesign,
  type Vec2,
} from '../../../core/index.ts';
import type { DesignShape } from './designShape.ts';
import { designReach, isMovable } from './designShape.ts';
import { inRange, LEAP, MOVE_STEP, onStep, type Snapped, snapped, snappedTurn } from './snapping.ts';
import { useToolingEdits } from './useTooling.ts';

/** A design as it is while it is dragged, before the job has it, and the lines that it has come to. */
export interface HeldDesign {
  readonly index: number;
  readonly design: ToolingDesign;
  readonly lines: Snapped['lines'];
}

/** What is dragged: the design itself, the corner that scales it, the grip that turns it. */
type Grip = 'move' | 'scale' | 'turn';

interface Grab {
  readonly pointer: number;
  readonly grip: Grip;
  readonly index: number;
  readonly from: Vec2;
  readonly design: ToolingDesign;
  readonly shape: DesignShape | null;
  /** The design as the pointer has it now; null until it has moved. */
  held: HeldDesign | null;
}

/** A pointer that moves less presses, px. */
const PRESS_PX = 3;

/** How near a line a design is drawn to it, px. */
const SNAP_PX = 8;

const NO_LINES: Snapped['lines'] = [null, null];

interface DragOptions {
  readonly area: ToolingArea;
  readonly units: LengthUnit;
  /** px a millimetre. */
  readonly scale: number;
  /** Where a pointer is on the finished face. */
  readonly faceAt: (event: PointerEvent) => Vec2;
}

/**
 * Moving, scaling and turning of designs by pointer and arrow keys. While it is dragged a design is held apart from the job;
 * let go, it is one edit, and Escape forgets it. Arrow keys edit at once, a run of them in one step of undo.
 */
export function useDesignDrag({ area, units, scale, faceAt }: DragOptions) {
  const { change } = useToolingEdits();
  const grabbed = useRef<Grab | null>(null);
  const [held, setHeld] = useState<HeldDesign | null>(null);

  const [letGo] = useState(() => (): void => {
    grabbed.current = null;
    setHeld(null);
  });
  const isHeld = held !== null;
  useEffect(() => {
    if (!isHeld) return;
    // Wherever the focus is.
    const onKey = ({ key }: globalThis.KeyboardEvent): void => void (key === 'Escape' && letGo());
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [isHeld, letGo]);

  const grab = (
    event: PointerEvent<Element>,
    index: number,
    design: ToolingDesign,
    shape: DesignShape | null,
  ): void => {
    if (event.button !== 0 || grabbed.current !== null) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const grip = ((event.target as Element).getAttribute('data-grip') ?? 'move') as Grip;
    grabbed.current = { pointer: event.pointerId, grip, index, from: faceAt(event), design, shape, held: null };
  };
  const drag = (event: PointerEvent): void => {
    const start = grabbed.current;
    if (start === null || start.pointer !== event.pointerId) return;
    const to = faceAt(event);
    if (start.held === null && distance(start.from, to) * scale < PRESS_PX) return;
    start.held = { index: start.index, ...follow(start, to) };
    setHeld(start.held);
  };
  const follow = ({ grip, design, shape, from }: Grab, to: Vec2): Omit<HeldDesign, 'index'> => {
    const step = MOVE_STEP[units];
    if (!isMovable(design) || shape === null) {
      if (design.kind !== 'border' || area.clear === null) return { design, lines: NO_LINES };
      const value = onStep(design.inset_mm + inward(area.clear, from, to), step, designNote('inset_mm'));
      return { design: { ...design, inset_mm: mm(value) }, lines: NO_LINES };
    }
    if (grip !== 'move') return { design: aboutCentre(design, grip, from, to, area.centre, units), lines: NO_LINES };
    const place: Vec2 = [design.x_mm + to[0] - from[0], design.y_mm + to[1] - from[1]];
    const options = { within: SNAP_PX / scale, step, range: designNote('x_mm') };
    const { place: at, lines } = snapped(place, designReach(design, shape), area, options);
    return { design: { ...design, x_mm: mm(at[0]), y_mm: mm(at[1]) }, lines };
  };
  const release = (): void => {
    const start = grabbed.current;
    letGo();
    if (start?.held == null) return;
    const changes = Object.entries(start.held.design).filter(([name, value]) => value !== start.design[name as 'kind']);
    if (changes.length > 0) change(start.index, Object.fromEntries(changes));
  };

  const press = (event: KeyboardEvent, index: number, design: ToolingDesign): void => {
    const way = { ArrowUp: [0, 1], ArrowDown: [0, -1], ArrowRight: [1, 0], ArrowLeft: [-1, 0] }[event.key];
    const key = `tooling.designs.${index} moved`;
    if (way !== undefined) {
      const step = MOVE_STEP[units] * (event.shiftKey ? LEAP : 1);
      const [right, up] = [way[0]! * step, way[1]! * step];
      // A border has one way to go: up and right outward, down and left inward.
      change(
        index,
        isMovable(design)
          ? { x_mm: moved(design.x_mm, right, 'x_mm'), y_mm: moved(design.y_mm, up, 'y_mm') }
          : { inset_mm: moved(design.inset_mm, -right - up, 'inset_mm') },
        key,
      );
    } else if (event.key === 'Delete' || event.key === 'Backspace') {
      change(index, null);
    } else {
      return;
    }
    event.preventDefault();
  };

  return { held, grab, drag, release, letGo, press };
}

export type DesignHand = ReturnType<typeof useDesignDrag>;

/** A length after a step, within what its field allows. */
const moved = (value: number, by: number, field: 'x_mm' | 'y_mm' | 'inset_mm'): number =>
  inRange(value + by, designNote(field));

/** How far inward a border is dragged, mm: square to the side of the clear part that it was taken by. */
function inward({ x, y }: NonNullable<ToolingArea['clear']>, from: Vec2, to: Vec2): number {
  const [right, up] = [to[0] - from[0], to[1] - from[1]];
  const sides = [
    { away: Math.abs(from[0] - x[0]), by: right },
    { away: Math.abs(x[1] - from[0]), by: -right },
    { away: Math.abs(from[1] - y[0]), by: up },
    { away: Math.abs(y[1] - from[1]), by: -up },
  ];
  return sides.reduce((nearest, next) => (next.away < nearest.away ? next : nearest)).by;
}

/** A step of the size of a letter or a drawing that is dragged larger, mm. */
const SIZE_STEP: Readonly<Record<LengthUnit, number>> = { mm: 0.5, in: MOVE_STEP.in };

/** A design scaled or turned about the centre of its first copy, which has the grips. */
function aboutCentre(
  design: MovableDesign,
  grip: 'scale' | 'turn',
  from: Vec2,
  to: Vec2,
  middle: Vec2,
  units: LengthUnit,
): MovableDesign {
  const { at } = designCopies(design, middle)[0]!;
  const arm = ([x, y]: Vec2): Vec2 => [x - at[0], y - at[1]];
  const [before, after] = [arm(from), arm(to)];
  if (grip === 'turn') {
    const angle = ([x, y]: Vec2): number => (Math.atan2(y, x) * 180) / Math.PI;
    return { ...design, turn_deg: snappedTurn(design.turn_deg + angle(after) - angle(before)) };
  }
  const times = Math.hypot(...after) / Math.max(1e-6, Math.hypot(...before));
  const sized = (value: number, field: 'height_mm' | 'width_mm') =>
    mm(onStep(value * times, SIZE_STEP[units], designNote(field)));
  return design.kind === 'title'
    ? { ...design, height_mm: sized(design.height_mm, 'height_mm') }
    : { ...design, width_mm: sized(design.width_mm, 'width_mm') };
}
