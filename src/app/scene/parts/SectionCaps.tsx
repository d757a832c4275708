import { useEffect, useMemo } from 'react';
import {
  BufferGeometry,
  DoubleSide,
  Matrix4,
  MeshBasicMaterial,
  Shape,
  ShapeGeometry,
  type Vector2,
  Vector3,
} from 'three';
import type { FoldedCover, PartName } from '../../../core/index.ts';
import { planeAxes, section } from '../geometry/section.ts';
import type { SlicePlane } from '../geometry/slicePlane.ts';
import { type Hatch, hatchTexture } from '../material/hatchTexture.ts';
import { SECTION_TONE } from '../material/palette.ts';

type Kind = keyof typeof SECTION_TONE;

const KIND_OF_PART: Record<PartName, Kind> = {
  outside: 'outside',
  frontPocket: 'pocket',
  backPocket: 'pocket',
  lining: 'lining',
  frontBoard: 'board',
  backBoard: 'board',
  frontJoint: 'board',
  backJoint: 'board',
  spine: 'board',
  frontPages: 'pages',
  backPages: 'pages',
  leaves: 'pages',
  headBand: 'band',
  tailBand: 'band',
  strap: 'outside',
  buckleTab: 'outside',
  penLoop: 'outside',
  fastening: 'board',
  ribbons: 'band',
};

/** Hatching of each kind of cut face, and its pitch in mm: finer than the thinnest sheet it has to show on. */
const HATCHES: Record<Kind, readonly [Hatch, number]> = {
  outside: ['rising', 1.1],
  pocket: ['falling', 1.1],
  lining: ['dots', 0.6],
  board: ['dashes', 2.2],
  pages: ['leaves', 1.4],
  band: ['crossed', 0.8],
};

/** Each cap stands this much in front of the one before, mm, so that touching faces do not flicker. */
const STEP_MM = 0.004;
/** Outlines stand this many steps in front, so that they show from a distance. */
const OUTLINE_STEPS = 40;

function useCapMaterials(): Record<Kind, MeshBasicMaterial> {
  const materials = useMemo(() => {
    const entries = Object.entries(HATCHES).map(([kind, [hatch, pitch]]) => [
      kind,
      new MeshBasicMaterial({
        color: SECTION_TONE[kind as Kind],
        map: hatchTexture(hatch, pitch),
        side: DoubleSide,
        toneMapped: false,
      }),
    ]);
    return Object.fromEntries(entries) as Record<Kind, MeshBasicMaterial>;
  }, []);
  useEffect(
    () => () => {
      for (const material of Object.values(materials)) {
        material.map?.dispose();
        material.dispose();
      }
    },
    [materials],
  );
  return materials;
}

/** Faces where the slice cuts the parts, hatched by material and outlined. */
export function SectionCaps({ cover, plane }: { cover: FoldedCover; plane: SlicePlane }) {
  const materials = useCapMaterials();
  const faces = useMemo(() => {
    const axes = planeAxes(plane.assembly);
    return cover.parts.map((mesh) => capGeometry(section(mesh, plane.assembly, axes)));
  }, [cover, plane]);
  useEffect(
    () => () => {
      for (const { cap, outline } of faces) {
        cap.dispose();
        outline.dispose();
      }
    },
    [faces],
  );
  const { right, up, origin } = planeAxes(plane.assembly);
  const toward = plane.assembly.normal;
  const place = (steps: number): Matrix4 =>
    new Matrix4()
      .makeBasis(right, up, new Vector3().crossVectors(right, up))
      .setPosition(origin.clone().addScaledVector(toward, -STEP_MM * steps));
  return cover.parts.map((mesh, i) => (
    <group key={mesh.part}>
      <group matrix={place(i + 1)} matrixAutoUpdate={false}>
        <mesh geometry={faces[i]!.cap} material={materials[KIND_OF_PART[mesh.part]]} />
      </group>
      <group matrix={place(OUTLINE_STEPS)} matrixAutoUpdate={false}>
        <lineSegments geometry={faces[i]!.outline}>
          <lineBasicMaterial color="#2a1a10" toneMapped={false} />
        </lineSegments>
      </group>
    </group>
  ));
}

/** The sheets and blocks of a cover have no holes in their sections, so every loop is filled. */
function capGeometry(loops: readonly Vector2[][]): { cap: BufferGeometry; outline: BufferGeometry } {
  const outline = loops.flatMap((loop) => loop.flatMap((point, i) => [point, loop[(i + 1) % loop.length]!]));
  return {
    cap: new ShapeGeometry(loops.map((loop) => new Shape(loop))),
    outline: new BufferGeometry().setFromPoints(outline),
  };
}
