import { useMemo } from 'react';
import { BoxGeometry, Matrix4 } from 'three';
import { Instances } from './Instances.tsx';
import { laceStrands } from './laceStrands.ts';
import { median } from './median.ts';
import { seamFrame } from './seamFrame.ts';
import type { SeamProps } from './seamProps.ts';
import { seamStretches } from './seamStretches.ts';
import { strandGeometry } from './strandGeometry.ts';

/** Lace is cut a little narrower than the slits are apart, and about 0.9 mm thick. Common practice, no source. */
const LACE_SHARE = 0.62;
const LACE_THICKNESS = 0.9;

/** Segments of one strand; there are some hundreds of strands. */
const STEPS = { full: 18, light: 9 } as const;

/** Slits along the edges and the lace through them, over the cut edge. */
export function Lacing({ seam, sewn, job, look, materials }: SeamProps) {
  const { style, edgeMargin_mm: margin } = job.seam;
  const pitch = median(seam.map((hole) => hole.pitch));
  const stack = median(seam.map((hole) => hole.stack));
  const strands = useMemo(
    () =>
      laceStrands(style, { margin, stack, pitch }, LACE_THICKNESS).map(({ name, points, outward, every }) => ({
        name,
        geometry: strandGeometry(
          points,
          outward,
          { width: LACE_SHARE * pitch, thickness: LACE_THICKNESS },
          STEPS[look],
        ),
        every,
      })),
    [style, margin, stack, pitch, look],
  );
  const slit = useMemo(() => new BoxGeometry(LACE_SHARE * pitch + 0.5, 0.12, 0.7), [pitch]);
  const places = useMemo(
    () =>
      seamStretches(seam).map((hole) =>
        seamFrame(hole).multiply(new Matrix4().makeScale(1, stack > 0 ? Math.max(0.4, hole.stack / stack) : 1, 1)),
      ),
    [seam, stack],
  );
  const alternate = useMemo(() => places.filter((_, i) => i % 2 === 0), [places]);
  return (
    <>
      {sewn &&
        strands.map(({ name, geometry, every }) => (
          <Instances
            key={name}
            name={name}
            geometry={geometry}
            material={materials.lace}
            places={every === 1 ? places : alternate}
          />
        ))}
      <Instances name="slits" geometry={slit} material={materials.hole} places={places} />
    </>
  );
}
