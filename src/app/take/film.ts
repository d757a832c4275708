import { Box3, MathUtils, PerspectiveCamera, type Vector3 } from 'three';
import { type CoverDesign, filmSteps, foldedCover, type Pose, type RangePoint } from '../../core/index.ts';
import { CAMERA, frame, viewDirection } from '../scene/camera/framing.ts';
import { boundsOnBench } from '../scene/geometry/assembly.ts';
import { VIEWPOINTS } from '../scene/viewpoints.ts';
import type { FilmId } from './filmChoices.ts';
import { RATE } from './filmFile.ts';

/** A film: what each of its frames shows, and from where. Nothing in it depends on how fast it is drawn. */
export interface Film {
  readonly frames: number;
  /** One object while nothing moves but the camera. */
  poseAt(frame: number): Pose;
  lensAt(frame: number): PerspectiveCamera;
}

/** Time for which the making stands still at its end, seconds. */
const REST = 1.5;

/** Places of the making at which its size is measured. */
const MEASURED = 24;

/**
 * @param shown what the scene shows now: the one turn shows it from all sides
 * @param aspect width over height
 */
export function filmOf(
  id: FilmId,
  seconds: number,
  design: CoverDesign,
  point: RangePoint,
  shown: Pose,
  aspect: number,
): Film {
  const boundsIn = (pose: Pose): Box3 => boundsOnBench(foldedCover(design, pose, point));
  const lens = new PerspectiveCamera(CAMERA.fov, aspect, CAMERA.near, CAMERA.far);
  const lensOn = (box: Box3, from: Vector3, distance?: number): PerspectiveCamera => {
    const { position, target } = frame(box, from, { fov: MathUtils.degToRad(CAMERA.fov), aspect });
    lens.position.copy(distance === undefined ? position : target.clone().addScaledVector(from, distance));
    lens.lookAt(target);
    lens.updateMatrixWorld();
    return lens;
  };
  const from = viewDirection(VIEWPOINTS[0], 0);
  if (id === 'turn') {
    const frames = seconds * RATE;
    const box = boundsIn(shown);
    const at = (i: number): Vector3 => from.clone().applyAxisAngle(lens.up, (2 * Math.PI * i) / frames);
    const distances = Array.from({ length: frames }, (_, i) => lensOn(box, at(i)).position.distanceTo(middle(box)));
    const far = Math.max(...distances);
    return { frames, poseAt: () => shown, lensAt: (i) => lensOn(box, at(i), far) };
  }
  const end = filmSteps(design, point).find(({ jam }) => jam !== null)?.jam?.at ?? 1;
  const moving = seconds * RATE;
  const sizes = Array.from({ length: MEASURED + 1 }, (_, k) =>
    boundsIn({ kind: 'sequence', at: (end * k) / MEASURED }),
  );
  // Each with its neighbours, so that the camera has moved off before the work grows.
  const roomy = sizes.map((box, k) =>
    [sizes[k - 1], sizes[k + 1]].reduce<Box3>((sum, next) => (next ? sum.union(next) : sum), box.clone()),
  );
  const placeAt = (i: number): number => Math.min(1, i / (moving - 1));
  return {
    frames: moving + REST * RATE,
    poseAt: (i) => ({ kind: 'sequence', at: end * placeAt(i) }),
    lensAt(i) {
      const along = placeAt(i) * MEASURED;
      const k = Math.min(MEASURED - 1, Math.floor(along));
      const [before, after] = [roomy[k]!, roomy[k + 1]!];
      const box = new Box3(
        before.min.clone().lerp(after.min, along - k),
        before.max.clone().lerp(after.max, along - k),
      );
      return lensOn(box, from);
    },
  };
}

const middle = ({ min, max }: Box3): Vector3 => min.clone().add(max).multiplyScalar(0.5);
