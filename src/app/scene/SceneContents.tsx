import { useThree } from '@react-three/fiber';
import { type Ref, type RefObject, useEffect, useLayoutEffect, useMemo } from 'react';
import type { Plane } from 'three';
import {
  type FitMark,
  type FoldedCover,
  type MeshData,
  type PatternZone,
  type Pose,
  SEQUENCE_STAGES,
} from '../../core/index.ts';
import { type CameraHandle, CameraRig } from './camera/CameraRig.tsx';
import { benchMatrix, boundsOnBench } from './geometry/assembly.ts';
import { behindCut, type SlicePlane } from './geometry/slicePlane.ts';
import { useMeshGeometry } from './geometry/useMeshGeometry.ts';
import { FitMarkHatch } from './marks/FitMarkHatch.tsx';
import { FitMarkProjector } from './marks/FitMarkProjector.tsx';
import { type CoverMaterials, coverMaterials, materialsOf } from './material/coverMaterials.ts';
import { Lacing } from './parts/Lacing.tsx';
import { SectionCaps } from './parts/SectionCaps.tsx';
import { Stitching } from './parts/Stitching.tsx';
import { Bench } from './room/Bench.tsx';
import { Daylight } from './room/Daylight.tsx';
import type { CoverSceneProps } from './sceneProps.ts';

/** Depth behind a cut face that the camera keeps in the picture, mm. */
const SEEN_BEHIND_CUT = 40;

/** Opening from which the inside of the cover shows, radians. */
const SHOWS_INSIDE = 1;

interface SceneContentsProps extends CoverSceneProps {
  readonly cover: FoldedCover;
  readonly plane: SlicePlane | null;
  readonly marks: readonly FitMark[];
  readonly cameraRef: Ref<CameraHandle>;
  readonly overlay: RefObject<SVGSVGElement | null>;
  readonly wheelZooms: boolean;
}

/** The work on the bench, its light, its marks and the camera. */
export function SceneContents(props: SceneContentsProps) {
  const { cover, plane, marks, design, look, colourScheme, units, highlight } = props;
  const materials = useCoverMaterials(look);
  const bounds = useMemo(() => boundsOnBench(cover), [cover]);
  const matrix = useMemo(() => benchMatrix(cover.benchTurn), [cover]);
  const shown = useMemo(() => (plane ? behindCut(bounds, plane, SEEN_BEHIND_CUT) : bounds), [bounds, plane]);
  useClipping(materials, plane?.bench ?? null);
  useShadowsOnChange([cover, plane, colourScheme]);
  useBookPresence(materials, cover.bookPresence ?? 1);
  useZone(materials, highlight ?? null, design.pieces.outside.height);

  const Seam = design.job.seam.method === 'lacing' ? Lacing : Stitching;
  return (
    <>
      <Daylight bounds={bounds} look={look} scheme={colourScheme} />
      <group matrix={matrix} matrixAutoUpdate={false}>
        {cover.parts.map((mesh) => (
          <PartMesh key={mesh.part} mesh={mesh} materials={materials} />
        ))}
        <Seam seam={cover.seam} sewn={isSewn(props.pose)} job={design.job} look={look} materials={materials} />
        {plane && <SectionCaps cover={cover} plane={plane} />}
        {!plane && <FitMarkHatch marks={marks} />}
      </group>
      <Bench bounds={bounds} cut={plane} work={cover} units={units} look={look} scheme={colourScheme} />
      <FitMarkProjector
        svg={props.overlay}
        marks={marks}
        matrix={matrix}
        seenInto={plane !== null || cover.opening > SHOWS_INSIDE}
      />
      <CameraRig
        ref={props.cameraRef}
        box={shown}
        viewpoint={props.viewpoint}
        sliceAxis={props.slice?.axis ?? null}
        opening={cover.opening}
        wheelZooms={props.wheelZooms}
        glides={look === 'full'}
      />
    </>
  );
}

/** One solid of the assembly. */
function PartMesh({ mesh, materials }: { mesh: MeshData; materials: CoverMaterials }) {
  const geometry = useMeshGeometry(mesh);
  return (
    <mesh name={mesh.part} geometry={geometry} material={materialsOf(materials, mesh.part)} castShadow receiveShadow />
  );
}

/** Whether thread or lace is in: once the boards are in their pockets. Holes and slits show from the start. */
const isSewn = (pose: Pose): boolean =>
  pose.kind === 'opening' || pose.at >= SEQUENCE_STAGES.find(({ id }) => id === 'fold')!.from;

function useCoverMaterials(look: CoverSceneProps['look']): CoverMaterials {
  const materials = useMemo(() => coverMaterials(look), [look]);
  useEffect(() => () => materials.dispose(), [materials]);
  return materials;
}

function useClipping(materials: CoverMaterials, plane: Plane | null): void {
  const invalidate = useThree((state) => state.invalidate);
  useLayoutEffect(() => {
    for (const material of materials.all) material.clippingPlanes = plane ? [plane] : null;
    invalidate();
  }, [materials, plane, invalidate]);
}

/** Redraws shadows when something has moved, not for the camera alone. */
function useShadowsOnChange(changes: readonly unknown[]): void {
  const gl = useThree((state) => state.gl);
  useLayoutEffect(() => {
    gl.shadowMap.autoUpdate = false;
    gl.shadowMap.needsUpdate = true;
  }, [gl, ...changes]);
}

/** Fades the book in. */
function useBookPresence(materials: CoverMaterials, presence: number): void {
  const invalidate = useThree((state) => state.invalidate);
  useLayoutEffect(() => {
    for (const material of materials.book) {
      const fades = presence < 1;
      if (material.transparent !== fades) material.needsUpdate = true;
      material.transparent = fades;
      material.opacity = presence;
    }
    invalidate();
  }, [materials, presence, invalidate]);
}

/** Highlights a band of the outside; `height` is that of the outside, and its texture starts at the tail. */
function useZone(materials: CoverMaterials, zone: PatternZone | null, height: number): void {
  const invalidate = useThree((state) => state.invalidate);
  const isUpright = zone?.axis === 'height';
  const [from, to] = isUpright ? [height - zone.to, height - zone.from] : [zone?.from ?? 1, zone?.to ?? 0];
  useLayoutEffect(() => {
    materials.zone.value.set(from, to, isUpright ? 1 : 0);
    invalidate();
  }, [materials, from, to, isUpright, invalidate]);
}
