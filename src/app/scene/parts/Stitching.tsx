import { useMemo } from 'react';
import { CapsuleGeometry, CylinderGeometry, Matrix4 } from 'three';
import type { FoldedHole } from '../../../core/index.ts';
import { Instances } from './Instances.tsx';
import { median } from './median.ts';
import { seamFrame } from './seamFrame.ts';
import type { SeamProps } from './seamProps.ts';
import { seamStretches } from './seamStretches.ts';

/** Radius of a thread of about 0.8 mm, usual for stitches of 3 to 5 mm, mm. Common practice, no source. */
const THREAD_RADIUS = 0.42;

/** Slant of a saddle stitch on the face, from the slanted slits of a pricking iron, radians. */
const SLANT = 0.17;

/** Saddle stitch: on both faces a thread from each hole to the next, drawn into the leather at its ends. */
export function Stitching({ seam, sewn, materials }: SeamProps) {
  const pitch = median(seam.map((hole) => hole.pitch));
  const thread = useMemo(
    () => new CapsuleGeometry(THREAD_RADIUS, Math.max(0.1, pitch - 2.6 * THREAD_RADIUS), 2, 7).rotateZ(Math.PI / 2),
    [pitch],
  );
  const hole = useMemo(() => new CylinderGeometry(0.55, 0.55, 0.1, 10), []);
  const stitches = useMemo(
    () => seamStretches(seam).flatMap((at) => [stitch(at, 0, pitch), stitch(at, -at.stack, pitch)]),
    [seam, pitch],
  );
  const holes = useMemo(
    () =>
      seam.flatMap((at) =>
        [0.01, -at.stack - 0.01].map((y) =>
          seamFrame({ ...at, pitch: 0 }).multiply(new Matrix4().makeTranslation(0, y, 0)),
        ),
      ),
    [seam],
  );
  return (
    <>
      {sewn && <Instances name="stitches" geometry={thread} material={materials.thread} places={stitches} />}
      <Instances name="holes" geometry={hole} material={materials.hole} places={holes} />
    </>
  );
}

/** A stitch midway between its holes at height `y` over the grain side; half of the thread's roundness shows. */
function stitch(at: FoldedHole, y: number, pitch: number): Matrix4 {
  return seamFrame(at)
    .multiply(new Matrix4().makeTranslation(at.pitch / 2, y + (y < 0 ? -0.1 : 0.1), 0))
    .multiply(new Matrix4().makeRotationY(y < 0 ? -SLANT : SLANT))
    .multiply(new Matrix4().makeScale(at.pitch / pitch, 1, 1));
}
