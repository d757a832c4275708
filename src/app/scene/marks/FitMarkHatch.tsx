import { useEffect, useMemo } from 'react';
import { BufferGeometry, Float32BufferAttribute, Vector3 } from 'three';
import type { FitMark } from '../../../core/index.ts';
import { hatchedZone } from '../material/hatchedZone.ts';
import { CHALK } from '../material/palette.ts';

/** Hatched zones of the fit marks: single hatching for a gap, crossed hatching for an overrun. */
export function FitMarkHatch({ marks }: { marks: readonly FitMark[] }) {
  const materials = useMemo(
    () => ({
      gap: hatchedZone({ ...CHALK.gap, pitch_mm: 1.6, isCrossed: false }),
      overrun: hatchedZone({ ...CHALK.overrun, pitch_mm: 1.4, isCrossed: true }),
    }),
    [],
  );
  useEffect(
    () => () => {
      for (const material of Object.values(materials)) material.dispose();
    },
    [materials],
  );
  const zones = useMemo(
    () => marks.filter(({ hatch }) => hatch.length > 1).map((mark) => ({ mark, geometry: ladder(mark) })),
    [marks],
  );
  useEffect(
    () => () => {
      for (const { geometry } of zones) geometry.dispose();
    },
    [zones],
  );
  return zones.map(({ mark, geometry }, i) => (
    <mesh
      // biome-ignore lint/suspicious/noArrayIndexKey: head and tail are marked twice, always in one order
      key={i}
      name={`hatch ${mark.edge}`}
      geometry={geometry}
      material={mark.value < 0 ? materials.overrun : materials.gap}
      renderOrder={2}
    />
  ));
}

/** Surface between the rungs; `place` is in mm along the edge and across it, `opposite` the other end of the rung. */
function ladder({ hatch }: FitMark): BufferGeometry {
  const rungs = hatch.map((rung) => rung.map((end) => new Vector3(...end)) as [Vector3, Vector3]);
  let along = 0;
  const vertices = rungs.flatMap(([a, b], i) => {
    along += i === 0 ? 0 : a.distanceTo(rungs[i - 1]![0]);
    const across = a.distanceTo(b);
    return [
      { at: a, opposite: b, place: [along, 0, across] },
      { at: b, opposite: a, place: [along, across, across] },
    ];
  });
  const geometry = new BufferGeometry();
  const set = (name: string, values: readonly number[]): void => {
    geometry.setAttribute(name, new Float32BufferAttribute(values, 3));
  };
  set(
    'position',
    vertices.flatMap(({ at }) => at.toArray()),
  );
  set(
    'opposite',
    vertices.flatMap(({ opposite }) => opposite.toArray()),
  );
  set(
    'place',
    vertices.flatMap(({ place }) => place),
  );
  geometry.setIndex(rungs.slice(1).flatMap((_, i) => [2 * i, 2 * i + 1, 2 * i + 3, 2 * i, 2 * i + 3, 2 * i + 2]));
  return geometry;
}
