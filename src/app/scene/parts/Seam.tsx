import { useMemo } from 'react';
import {
  type CoverDesign,
  type FoldedCover,
  freeEnds,
  holeMesh,
  movesAt,
  type RangePoint,
  type SeamMesh,
  seamCourse,
  strandSweep,
} from '../../../core/index.ts';
import { type CoverMaterials, FACES, type Look, materialsOf } from '../material/coverMaterials.ts';
import { StrandMesh } from './StrandMesh.tsx';

interface SeamProps {
  readonly cover: FoldedCover;
  readonly design: CoverDesign;
  readonly point: RangePoint;
  readonly look: Look;
  readonly materials: CoverMaterials;
}

/** Holes or slits along the edges once they are punched, and thread or lace as far as it is worked. */
export function Seam({ cover, design, point, look, materials }: SeamProps) {
  const { seam, film } = cover;
  const { punched, sewn, joined } = film.movements;
  const course = useMemo(() => seamCourse(design, point), [design, point]);
  const sweep = useMemo(() => strandSweep(course, look === 'full' ? 'fine' : 'coarse'), [course, look]);
  const moves = movesAt(course, sewn);
  const isBegun = moves > 0;
  const strands = useMemo(
    (): SeamMesh | null => (isBegun ? { ...sweep.lay(seam), uvs: sweep.uvs, indices: sweep.indices } : null),
    [sweep, seam, isBegun],
  );
  const stack = joined < 1 ? design.needs[point].leathers.outside.thickness : undefined;
  const isPunched = punched > 0;
  const holes = useMemo(() => (isPunched ? holeMesh(course, seam, stack) : null), [course, seam, stack, isPunched]);
  const ends = useMemo(() => freeEnds(course, seam, sewn), [course, seam, sewn]);
  const material = course.slit === null ? materials.thread : materials.lace;
  const metal = materialsOf(materials, 'fastening')[FACES.indexOf('metal')]!;
  return (
    <>
      {strands && <StrandMesh name="strands" mesh={strands} material={material} shown={sweep.shownAfter[moves]} />}
      {holes && <StrandMesh name="holes" mesh={holes} material={materials.hole} />}
      {ends && (
        <>
          <StrandMesh name="free ends" mesh={ends.strands} material={material} />
          <StrandMesh name="needles" mesh={ends.needles} material={metal} />
        </>
      )}
    </>
  );
}
