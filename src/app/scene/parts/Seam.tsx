import { useMemo } from 'react';
import {
  type CoverDesign,
  type FoldedCover,
  type FoldedHole,
  freeEnds,
  holeMesh,
  movesAt,
  type RangePoint,
  type SeamCourse,
  type SeamMesh,
  seamCourse,
  strandSweep,
  strapCourse,
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

/** Holes or slits along the edges once they are punched, and thread or lace as far as it is worked; the strap's own seam. */
export function Seam({ cover, design, point, look, materials }: SeamProps) {
  const { seam, strapSeam, film } = cover;
  const { punched, sewn, joined, fitted } = film.movements;
  const course = useMemo(() => seamCourse(design, point), [design, point]);
  const strap = useMemo(() => strapCourse(design, point), [design, point]);
  const stack = joined < 1 ? design.needs[point].leathers.outside.thickness : undefined;
  const isPunched = punched > 0;
  const holes = useMemo(() => (isPunched ? holeMesh(course, seam, stack) : null), [course, seam, stack, isPunched]);
  return (
    <>
      <Strands name="strands" {...{ course, seam, look, materials }} share={sewn} />
      {holes && <StrandMesh name="holes" mesh={holes} material={materials.hole} />}
      {strap && strapSeam.length > 0 && fitted === 1 && (
        <Strands name="strap strands" course={strap} seam={strapSeam} share={1} {...{ look, materials }} />
      )}
    </>
  );
}

interface StrandsProps extends Pick<SeamProps, 'look' | 'materials'> {
  readonly name: string;
  readonly course: SeamCourse;
  readonly seam: readonly FoldedHole[];
  /** How far the seam is worked. */
  readonly share: number;
}

/** Thread or lace as far as it is worked; in work, its free ends with their needles. */
function Strands({ name, course, seam, share, look, materials }: StrandsProps) {
  const sweep = useMemo(() => strandSweep(course, look === 'full' ? 'fine' : 'coarse'), [course, look]);
  const moves = movesAt(course, share);
  const isBegun = moves > 0;
  const strands = useMemo(
    (): SeamMesh | null => (isBegun ? { ...sweep.lay(seam), uvs: sweep.uvs, indices: sweep.indices } : null),
    [sweep, seam, isBegun],
  );
  const ends = useMemo(() => freeEnds(course, seam, share), [course, seam, share]);
  const material = course.slit === null ? materials.thread : materials.lace;
  const metal = materialsOf(materials, 'fastening')[FACES.indexOf('metal')]!;
  return (
    <>
      {strands && <StrandMesh name={name} mesh={strands} material={material} shown={sweep.shownAfter[moves]} />}
      {ends && (
        <>
          <StrandMesh name="free ends" mesh={ends.strands} material={material} />
          <StrandMesh name="needles" mesh={ends.needles} material={metal} />
        </>
      )}
    </>
  );
}
