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
  strandSweep,
  strapCourse,
} from '../../../core/index.ts';
import { type CoverMaterials, FACES, type Look, materialsOf } from '../material/coverMaterials.ts';
import { StrandMesh } from './StrandMesh.tsx';

interface SeamProps {
  readonly cover: FoldedCover;
  readonly design: CoverDesign;
  readonly point: RangePoint;
  readonly course: SeamCourse;
  readonly look: Look;
  readonly materials: CoverMaterials;
}

/** Thread or lace along the edges as far as it is worked, and the strap's own seam. */
export function Seam({ cover, design, point, course, look, materials }: SeamProps) {
  const { seam, strapSeam, film } = cover;
  const { sewn, fitted } = film.movements;
  const strap = useMemo(() => strapCourse(design, point), [design, point]);
  return (
    <>
      <Strands name="strands" {...{ course, seam, look, materials }} share={sewn} />
      {strap && strapSeam.length > 0 && fitted === 1 && (
        <Strands name="strap strands" course={strap} seam={strapSeam} share={1} {...{ look, materials }} />
      )}
    </>
  );
}

/** Holes or slits along the edges once they are punched. */
export function SeamHoles({ cover, design, point, course, materials }: Omit<SeamProps, 'look'>) {
  const { seam, film } = cover;
  const { punched, joined } = film.movements;
  const stack = joined < 1 ? design.needs[point].leathers.outside.thickness : undefined;
  const isPunched = punched > 0;
  const holes = useMemo(() => (isPunched ? holeMesh(course, seam, stack) : null), [course, seam, stack, isPunched]);
  return holes && <StrandMesh name="holes" mesh={holes} material={materials.hole} />;
}

interface StrandsProps extends Pick<SeamProps, 'course' | 'look' | 'materials'> {
  readonly name: string;
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
