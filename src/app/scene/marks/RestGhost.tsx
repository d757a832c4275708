import { useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, EdgesGeometry } from 'three';
import type { FoldedCover } from '../../../core/index.ts';
import { benchMatrix } from '../geometry/assembly.ts';
import { CHALK } from '../material/palette.ts';

/** Least angle between the faces at an edge that is drawn, degrees: rims are square, folds are round. */
const RIM_DEG = 50;

/** The outlines of the cover where it may come to rest, thin, for no one of them is it for certain. */
export function RestGhost({ ends }: { readonly ends: readonly FoldedCover[] }) {
  const outlines = useMemo(
    () => ends.map((end) => ({ matrix: benchMatrix(end.benchTurn), geometry: outline(end) })),
    [ends],
  );
  useEffect(
    () => () => {
      for (const { geometry } of outlines) geometry.dispose();
    },
    [outlines],
  );
  return outlines.map(({ matrix, geometry }) => (
    <lineSegments key={geometry.uuid} name="rest" geometry={geometry} matrix={matrix} matrixAutoUpdate={false}>
      <lineBasicMaterial color={CHALK.gapInk} transparent opacity={0.6} depthWrite={false} toneMapped={false} />
    </lineSegments>
  ));
}

function outline({ parts }: FoldedCover): EdgesGeometry {
  const { positions, indices } = parts.find(({ part }) => part === 'outside')!;
  const solid = new BufferGeometry();
  solid.setAttribute('position', new BufferAttribute(positions, 3));
  solid.setIndex(new BufferAttribute(indices, 1));
  return new EdgesGeometry(solid, RIM_DEG);
}
