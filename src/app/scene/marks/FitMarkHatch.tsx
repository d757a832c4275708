import { useEffect, useMemo } from 'react';
import { BufferGeometry, DoubleSide, Float32BufferAttribute, MeshBasicMaterial, Vector3 } from 'three';
import type { FitMark } from '../../../core/fold/mesh/meshData.ts';
import { hatchInk } from '../material/hatchTexture.ts';
import { CHALK } from '../material/palette.ts';

/** Hatched strips of the fit marks: single hatching where there is room, crossed where the board would overrun. */
export function FitMarkHatch({ marks }: { marks: readonly FitMark[] }) {
  const materials = useMemo(
    () => ({
      gap: ink(CHALK.gap, hatchInk('rising', 3)),
      overrun: ink(CHALK.overrun, hatchInk('crossed', 2.4)),
    }),
    [],
  );
  useEffect(
    () => () => {
      for (const material of Object.values(materials)) {
        material.alphaMap?.dispose();
        material.dispose();
      }
    },
    [materials],
  );
  const strips = useMemo(
    () => marks.filter(({ hatch }) => hatch.length > 2).map((mark) => ({ mark, geometry: strip(mark) })),
    [marks],
  );
  useEffect(
    () => () => {
      for (const { geometry } of strips) geometry.dispose();
    },
    [strips],
  );
  return strips.map(({ mark, geometry }) => (
    <mesh
      key={mark.edge}
      name={`hatch ${mark.edge}`}
      geometry={geometry}
      material={mark.value < 0 ? materials.overrun : materials.gap}
      renderOrder={2}
    />
  ));
}

const ink = (color: string, alphaMap: MeshBasicMaterial['alphaMap']): MeshBasicMaterial =>
  new MeshBasicMaterial({
    color,
    alphaMap,
    transparent: true,
    side: DoubleSide,
    depthWrite: false,
    toneMapped: false,
    polygonOffset: true,
    polygonOffsetFactor: -3,
    polygonOffsetUnits: -12,
  });

/** The strip as a fan, with uv in mm along its first side and square to it. */
function strip({ hatch }: FitMark): BufferGeometry {
  const corners = hatch.map((corner) => new Vector3(...corner));
  const origin = corners[0]!;
  const along = corners[1]!.clone().sub(origin).normalize();
  const normal = along.clone().cross(corners.at(-1)!.clone().sub(origin)).normalize();
  const across = normal.cross(along);
  const uvs = corners.flatMap((corner) => {
    const from = corner.clone().sub(origin);
    return [from.dot(along), from.dot(across)];
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute(
    'position',
    new Float32BufferAttribute(
      corners.flatMap((corner) => corner.toArray()),
      3,
    ),
  );
  geometry.setAttribute('uv', new Float32BufferAttribute(uvs, 2));
  geometry.setIndex(corners.slice(2).flatMap((_, i) => [0, i + 1, i + 2]));
  return geometry;
}
