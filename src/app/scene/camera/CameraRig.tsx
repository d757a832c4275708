import { CameraControls, CameraControlsImpl } from '@react-three/drei/core/CameraControls';
import { useFrame, useThree } from '@react-three/fiber';
import { type Ref, useEffect, useImperativeHandle, useLayoutEffect, useMemo, useRef } from 'react';
import { type Box3, type PerspectiveCamera, Vector3 } from 'three';
import type { Insets } from '../insets.ts';
import type { Slice } from '../slice.ts';
import type { Viewpoint } from '../viewpoints.ts';
import { type FreeView, frame, freeView, sliceDirection, viewDirection } from './framing.ts';
import { useReducedMotion } from './useReducedMotion.ts';

/** Longest step of a transition in one frame, s: with frames on demand, the clock also counts idle time. */
const LONGEST_STEP = 1 / 20;

class PacedControls extends CameraControlsImpl {
  override update(delta: number): boolean {
    return super.update(Math.min(delta, LONGEST_STEP));
  }
}

/** What the keyboard can do with the camera. */
export interface CameraHandle {
  turn(azimuth: number, polar: number): void;
  zoom(factor: number): void;
  /** Goes back to the chosen viewpoint. */
  home(): void;
}

interface CameraRigProps {
  readonly ref: Ref<CameraHandle>;
  /** What to keep in the picture. */
  readonly box: Box3;
  readonly viewpoint: Viewpoint;
  readonly sliceAxis: Slice['axis'] | null;
  readonly opening: number;
  readonly wheelZooms: boolean;
  /** Sides of the picture to keep free of the work. */
  readonly insets: Insets;
  /** False where frames are slow: the camera then moves without a transition. */
  readonly glides: boolean;
}

/** Orbits, follows the work as its size changes, and goes to viewpoints and cut faces. */
export function CameraRig({ ref, box, viewpoint, sliceAxis, opening, wheelZooms, insets, glides }: CameraRigProps) {
  const controls = useRef<CameraControlsImpl>(null);
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const size = useThree((state) => state.size);
  const { top, right, bottom, left } = insets;
  const { lens, shift } = useMemo(
    () => freeView((camera.fov * Math.PI) / 180, size, { top, right, bottom, left }),
    [camera, size, top, right, bottom, left],
  );
  const invalidate = useThree((state) => state.invalidate);
  const wantsStill = useReducedMotion();
  const still = wantsStill || !glides;
  const placed = useRef(false);
  const reach = useRef(1);

  /** Asks for a frame. A camera that does not glide is there before it: moved by the frame, it would ask for a second one. */
  const moved = (): void => {
    if (still) controls.current?.update(0);
    invalidate();
  };

  const go = (animate: boolean): void => {
    const from = sliceAxis ? sliceDirection(sliceAxis) : viewDirection(viewpoint, opening);
    const { position, target } = frame(box, from, lens);
    reach.current = position.distanceTo(target);
    void controls.current?.setLookAt(...position.toArray(), ...target.toArray(), animate && !still);
    moved();
  };

  /** Keeps the direction and the zoom that the maker has chosen, about the new centre. */
  const follow = (): void => {
    const rig = controls.current;
    if (!rig) return;
    const from = rig.getPosition(new Vector3()).sub(rig.getTarget(new Vector3()));
    const zoom = from.length() / reach.current;
    const { position, target } = frame(box, from.normalize(), lens);
    reach.current = position.distanceTo(target);
    const eye = target.clone().addScaledVector(from, reach.current * zoom);
    void rig.setLookAt(...eye.toArray(), ...target.toArray(), !still);
    moved();
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: a viewpoint is applied when it is chosen, not when the book moves
  useEffect(() => {
    go(placed.current);
    placed.current = true;
  }, [viewpoint, sliceAxis]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: follows the work and the window only
  useEffect(follow, [box, lens]);
  useViewShift(shift, still);
  useImperativeHandle(ref, () => ({
    turn: (azimuth, polar) => {
      void controls.current?.rotate(azimuth, polar, !still);
      moved();
    },
    zoom: (factor) => {
      const rig = controls.current;
      void rig?.dollyTo(rig.distance * factor, !still);
      moved();
    },
    home: () => go(true),
  }));

  const { ACTION } = CameraControlsImpl;
  return (
    <CameraControls
      ref={controls}
      impl={PacedControls}
      makeDefault
      smoothTime={0.22}
      draggingSmoothTime={0.08}
      minDistance={40}
      maxDistance={4000}
      mouseButtons={{
        left: ACTION.ROTATE,
        middle: ACTION.DOLLY,
        right: ACTION.TRUCK,
        wheel: wheelZooms ? ACTION.DOLLY : ACTION.NONE,
      }}
    />
  );
}

/** Time in which a shift of the view comes to a third of what it was, s, and what is left out as too small, px. */
const SHIFT_TIME = 0.07;
const NO_SHIFT = 0.25;

/** Moves the middle of the view to the middle of its free part, at once when the scene starts. */
function useViewShift(shift: FreeView['shift'], still: boolean): void {
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const size = useThree((state) => state.size);
  const invalidate = useThree((state) => state.invalidate);
  const now = useRef<[number, number] | null>(null);
  const apply = (): void => {
    const [x, y] = now.current!;
    const { width, height } = size;
    if (x === 0 && y === 0) camera.clearViewOffset();
    else camera.setViewOffset(width, height, -x, -y, width, height);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: another size of the picture wants its own offset
  useLayoutEffect(() => {
    if (still || now.current === null) now.current = [...shift];
    apply();
    invalidate();
  }, [shift, still, camera, size, invalidate]);
  useFrame((_, delta) => {
    const [x, y] = now.current ?? shift;
    const [right, down] = [shift[0] - x, shift[1] - y];
    if (right === 0 && down === 0) return;
    const left = Math.hypot(right, down) < NO_SHIFT ? 0 : Math.exp(-Math.min(delta, LONGEST_STEP) / SHIFT_TIME);
    now.current = [shift[0] - left * right, shift[1] - left * down];
    apply();
    invalidate();
  });
}
