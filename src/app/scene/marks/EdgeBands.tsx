import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import { BufferGeometry, DoubleSide, Float32BufferAttribute, FrontSide, Vector3 } from 'three';
import type { EdgeBand, FitMark, Vec3 } from '../../../core/index.ts';
import { type BandCut, bandCut } from '../geometry/bandCut.ts';
import type { SlicePlane } from '../geometry/slicePlane.ts';
import { edgeBandMaterial } from '../material/edgeBandMaterial.ts';

/** After the veils of the leather that they are seen through. */
const OVER_VEILS = 3;

interface EdgeBandsProps {
  readonly marks: readonly FitMark[];
  /** Whether they show from inside the book too. */
  readonly seenInto: boolean;
  /** Cuts the bands off, and shows the gap on the cut face too. */
  readonly cut: SlicePlane | null;
}

/** The bands along the edges of the boards, each with what is drawn in it, and where a slice cuts them. */
export function EdgeBands({ marks, seenInto, cut }: EdgeBandsProps) {
  const invalidate = useThree((state) => state.invalidate);
  const material = useMemo(edgeBandMaterial, []);
  useEffect(() => () => material.dispose(), [material]);
  useLayoutEffect(() => {
    material.clippingPlanes = cut ? [cut.bench] : null;
    material.side = seenInto ? DoubleSide : FrontSide;
    material.needsUpdate = true;
    invalidate();
  }, [material, seenInto, cut, invalidate]);
  const bands = useMemo(
    () =>
      marks.flatMap((mark) => {
        if (!mark.band) return [];
        const face = cut ? bandCut(mark, mark.band, cut.assembly) : null;
        return [
          { name: `band ${mark.edge}`, geometry: bandGeometry(mark, mark.band) },
          ...(face ? [{ name: `cut ${mark.edge}`, geometry: cutGeometry(mark, face) }] : []),
        ];
      }),
    [marks, cut],
  );
  useEffect(
    () => () => {
      for (const { geometry } of bands) geometry.dispose();
    },
    [bands],
  );
  return bands.map(({ name, geometry }, i) => (
    <mesh
      // biome-ignore lint/suspicious/noArrayIndexKey: head and tail are marked twice, always in one order
      key={i}
      name={name}
      geometry={geometry}
      material={material}
      renderOrder={OVER_VEILS}
    />
  ));
}

/** Surface between the rungs, its front where the mark is seen from. */
function bandGeometry({ value, out }: FitMark, { rungs, across }: EdgeBand): BufferGeometry {
  const edge = across.indexOf(0);
  let along = 0;
  const places = rungs.flatMap((rung, i) => {
    const before = rungs[i - 1] ?? rung;
    along += new Vector3(...rung[edge]!).distanceTo(new Vector3(...before[edge]!));
    return across.map((by) => [along, by]);
  });
  const geometry = markGeometry(rungs.flat(), places, value);
  const corner = (rung: number, point: number): Vector3 => new Vector3(...rungs[rung]![point]!).sub(origin);
  const origin = new Vector3(...rungs[0]![0]!);
  const isFront =
    corner(0, 1)
      .cross(corner(1, 0))
      .dot(new Vector3(...out)) > 0;
  const columns = across.length;
  geometry.setIndex(
    rungs.slice(1).flatMap((_, i) =>
      across.slice(1).flatMap((_, k) => {
        const [a, b] = [i * columns + k, i * columns + k + 1];
        const [c, d] = [b + columns, a + columns];
        return isFront ? [a, b, c, a, c, d] : [a, c, b, a, d, c];
      }),
    ),
  );
  return geometry;
}

/** The gap or overrun on a cut face. */
function cutGeometry({ value }: FitMark, { corners, places }: BandCut): BufferGeometry {
  const geometry = markGeometry(corners, places, value);
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  return geometry;
}

/** Points with what the material of the bands needs. */
function markGeometry(points: readonly Vec3[], places: readonly (readonly number[])[], stop: number): BufferGeometry {
  const geometry = new BufferGeometry();
  const set = (name: string, values: readonly (readonly number[])[]): void => {
    geometry.setAttribute(name, new Float32BufferAttribute(values.flat(), values[0]!.length));
  };
  set('position', points);
  set('place', places);
  set(
    'stop',
    points.map(() => [stop]),
  );
  return geometry;
}
