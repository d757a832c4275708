import { useFrame, useThree } from '@react-three/fiber';
import { type Ref, useEffect, useImperativeHandle, useMemo, useRef } from 'react';
import type { Matrix4, PerspectiveCamera } from 'three';
import type { FitMark } from '../../../core/index.ts';
import type { IsHidden } from '../geometry/occlusion.ts';
import { type EdgeHit, type EdgePlace, edgeLines, edgePixel, nearestOnEdges } from './edgeLines.ts';
import { viewOf } from './view.ts';

/** Finds the edges of the boards in the picture. */
export interface EdgeHandle {
  /** Where a place of an edge is, CSS px in the picture; null where that edge is not drawn. */
  place(place: EdgePlace): { readonly x: number; readonly y: number; readonly isHidden: boolean } | null;
}

export type OnEdge = (hit: EdgeHit | null, how: 'hover' | 'press') => void;

/** How near to an edge counts, px, and how far a press may move until it is a drag. */
const REACH = 28;
const STILL = 4;

interface EdgePickerProps {
  readonly ref?: Ref<EdgeHandle> | undefined;
  readonly marks: readonly FitMark[];
  readonly matrix: Matrix4;
  readonly isHidden: IsHidden;
  readonly onEdge?: OnEdge | undefined;
  readonly onLook?: (() => void) | undefined;
}

/** Reports the edge under the pointer. It draws nothing, and a hover draws no frame. */
export function EdgePicker({ ref, marks, matrix, isHidden, onEdge, onLook }: EdgePickerProps) {
  const get = useThree((state) => state.get);
  const canvas = useThree((state) => state.gl.domElement);
  const lines = useMemo(() => edgeLines(marks), [marks]);
  const view = () => {
    const { camera, size } = get();
    return viewOf(camera as PerspectiveCamera, size, matrix);
  };
  useImperativeHandle(ref, () => ({ place: (place) => edgePixel(lines, place, view(), isHidden) }));

  const latest = useRef({ onEdge, find: (_: PointerEvent): EdgeHit | null => null });
  latest.current = {
    onEdge,
    find: ({ clientX, clientY }) => {
      const { left, top } = canvas.getBoundingClientRect();
      return nearestOnEdges(lines, [clientX - left, clientY - top], REACH, view(), isHidden);
    },
  };
  useEffect(() => {
    /** Where the pointer went down, until it moves or comes up. */
    let pressed: readonly [number, number] | null = null;
    let wasHit = false;
    const hover = (hit: EdgeHit | null): void => {
      if (hit || wasHit) latest.current.onEdge?.(hit, 'hover');
      wasHit = hit !== null;
      canvas.style.cursor = hit && latest.current.onEdge ? 'zoom-in' : '';
    };
    const listeners: { readonly [name: string]: (event: PointerEvent) => void } = {
      pointerdown: ({ clientX, clientY, isPrimary, button }) => {
        pressed = isPrimary && button === 0 ? [clientX, clientY] : null;
      },
      pointermove: (event) => {
        const [x, y] = pressed ?? [event.clientX, event.clientY];
        if (Math.hypot(event.clientX - x, event.clientY - y) > STILL) pressed = null;
        // A finger does not hover, and a drag turns the picture.
        if (event.buttons === 0 && event.pointerType !== 'touch') hover(latest.current.find(event));
      },
      pointerup: (event) => {
        if (pressed) latest.current.onEdge?.(latest.current.find(event), 'press');
        pressed = null;
      },
      pointercancel: () => {
        pressed = null;
      },
      pointerleave: () => hover(null),
    };
    for (const [name, act] of Object.entries(listeners)) canvas.addEventListener(name, act as EventListener);
    return () => {
      for (const [name, act] of Object.entries(listeners)) canvas.removeEventListener(name, act as EventListener);
    };
  }, [canvas]);

  useFrame(() => onLook?.());
  return null;
}
