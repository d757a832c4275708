import { useThree } from '@react-three/fiber';
import { type ReactNode, type Ref, type RefObject, useEffect, useLayoutEffect, useMemo } from 'react';
import type { Plane } from 'three';
import {
  type CoverDesign,
  type FitMark,
  type FoldedCover,
  foldedCover,
  type Job,
  type MeshData,
  type PartName,
  type PartRelief,
  type PatternZone,
  partOf,
  pieceCorner,
  type RangePoint,
  seamCourse,
  strapOf,
  TOOLED_PARTS,
  type ToolingArea,
} from '../../core/index.ts';
import { type CameraHandle, CameraRig } from './camera/CameraRig.tsx';
import { benchMatrix, boundsOnBench } from './geometry/assembly.ts';
import { occlusion } from './geometry/occlusion.ts';
import { behindCut, type SlicePlane } from './geometry/slicePlane.ts';
import { useMeshGeometry } from './geometry/useMeshGeometry.ts';
import { InTurn } from './InTurn.tsx';
import { NO_INSETS } from './insets.ts';
import type { AreaLabel } from './marks/areaLabels.ts';
import { EdgeBands } from './marks/EdgeBands.tsx';
import { EdgePicker } from './marks/EdgePicker.tsx';
import { FitMarkProjector } from './marks/FitMarkProjector.tsx';
import { JamMark } from './marks/JamMark.tsx';
import { RestGhost } from './marks/RestGhost.tsx';
import { setAreas } from './material/areaLines.ts';
import { type CoverMaterials, coverMaterials, isLeatherPart, materialsOf } from './material/coverMaterials.ts';
import { reliefTexture, setRelief } from './material/relief.ts';
import { setFrames } from './material/seeThroughMaterial.ts';
import { Seam, SeamHoles } from './parts/Seam.tsx';
import { SectionCaps } from './parts/SectionCaps.tsx';
import { Bench } from './room/Bench.tsx';
import { Daylight } from './room/Daylight.tsx';
import type { CoverSceneProps } from './sceneProps.ts';
import { type Spot, spotZones } from './spot.ts';

/** Veils are drawn after everything solid, and before the bands under them. */
const VEIL_ORDER = 2;

const isPocket = (part: PartName): boolean => part === 'frontPocket' || part === 'backPocket';

/** Depth behind a cut face that the camera keeps in the picture, mm. */
const SEEN_BEHIND_CUT = 40;

/** Opening from which the inside of the cover shows, radians. */
const SHOWS_INSIDE = 1;

interface SceneContentsProps extends CoverSceneProps {
  readonly cover: FoldedCover;
  readonly plane: SlicePlane | null;
  readonly marks: readonly FitMark[];
  readonly reliefs: readonly PartRelief[];
  /** The areas that can be tooled, and what is written about them; empty where they are not shown. */
  readonly areas: readonly ToolingArea[];
  readonly areaLabels: readonly AreaLabel[];
  readonly cameraRef: Ref<CameraHandle>;
  readonly overlay: RefObject<SVGSVGElement | null>;
  readonly wheelZooms: boolean;
  /** What comes after all else. */
  readonly children: ReactNode;
}

/** The work on the bench, its light, its marks and the camera. */
export function SceneContents(props: SceneContentsProps) {
  const { cover, plane, marks, design, look, colourScheme, units, highlight, marked: isMarked = true } = props;
  const materials = useCoverMaterials(look, design.job);
  const bounds = useMemo(() => boundsOnBench(cover), [cover]);
  const matrix = useMemo(() => benchMatrix(cover.benchTurn), [cover]);
  const ends = useRestEnds(props, cover);
  const shown = useMemo(() => {
    if (plane) return behindCut(bounds, plane, SEEN_BEHIND_CUT);
    return ends.reduce((all, end) => all.union(boundsOnBench(end)), bounds.clone());
  }, [bounds, plane, ends]);
  const course = useMemo(() => seamCourse(design, props.point), [design, props.point]);
  const sewn = { cover, design, point: props.point, course, materials };
  const seenInto = plane !== null || cover.opening > SHOWS_INSIDE;
  const isHidden = useMemo(() => occlusion(cover, seenInto, plane?.assembly ?? null), [cover, seenInto, plane]);
  const { top, right, bottom, left } = props.insets ?? NO_INSETS;
  const insets = useMemo(() => ({ top, right, bottom, left }), [top, right, bottom, left]);
  useClipping(materials, plane?.bench ?? null);
  useShadowsOnChange([cover, plane, colourScheme]);
  useBookPresence(materials, cover.bookPresence ?? 1);
  const seeThrough = useMemo(
    () => cover.seeThrough.filter(({ part }) => isMarked && (seenInto || !isPocket(part))),
    [cover, isMarked, seenInto],
  );
  useFrames(materials, seeThrough);
  useCuts(materials, design, cover.film);
  useReliefTextures(materials, props.reliefs, design.job.tooling.depth_mm);
  useAreas(materials, props.areas);
  useZones(materials, design, props.point, highlight ?? null, props.spot ?? null);

  return (
    <InTurn>
      <Daylight bounds={bounds} look={look} scheme={colourScheme} />
      <group matrix={matrix} matrixAutoUpdate={false}>
        {cover.parts.map((mesh) => (
          <PartMesh
            key={mesh.part}
            mesh={mesh}
            materials={materials}
            isSeenThrough={seeThrough.some(({ part }) => part === mesh.part)}
            // Not both ways, or light would fall through the cover onto the bench.
            isLitThrough={isPocket(mesh.part) === seenInto}
          />
        ))}
      </group>
      <group matrix={matrix} matrixAutoUpdate={false}>
        <Seam {...sewn} look={look} />
      </group>
      <group matrix={matrix} matrixAutoUpdate={false}>
        <SeamHoles {...sewn} />
        {plane && <SectionCaps cover={cover} plane={plane} />}
        {cover.film.jam && <JamMark jam={cover.film.jam} />}
        {isMarked && <EdgeBands marks={cover.marks} seenInto={seenInto} cut={plane} />}
      </group>
      <RestGhost ends={ends} />
      <Bench bounds={bounds} cut={plane} work={cover} units={units} look={look} scheme={colourScheme} />
      <FitMarkProjector
        svg={props.overlay}
        marks={marks}
        areas={props.areaLabels}
        matrix={matrix}
        isHidden={isHidden}
        insets={insets}
      />
      {isMarked && (
        <EdgePicker
          ref={props.edgesRef}
          marks={cover.marks}
          matrix={matrix}
          isHidden={isHidden}
          onEdge={props.onEdge}
          onLook={props.onLook}
        />
      )}
      <CameraRig
        ref={props.cameraRef}
        box={shown}
        viewpoint={props.viewpoint}
        sliceAxis={props.slice?.axis ?? null}
        opening={cover.opening}
        wheelZooms={props.wheelZooms}
        insets={insets}
        glides={look === 'full'}
      />
      {props.children}
    </InTurn>
  );
}

interface PartMeshProps {
  readonly mesh: MeshData;
  readonly materials: CoverMaterials;
  readonly isSeenThrough: boolean;
  /** Whether light falls in where the leather is seen through. */
  readonly isLitThrough: boolean;
}

/** One solid of the assembly, and the veil over what is seen through it. */
function PartMesh({ mesh, materials, isSeenThrough, isLitThrough }: PartMeshProps) {
  const geometry = useMeshGeometry(mesh);
  const { part } = mesh;
  const leather = isLeatherPart(part) ? materials.leather[part] : null;
  return (
    <>
      <mesh
        name={part}
        geometry={geometry}
        material={materialsOf(materials, part)}
        customDepthMaterial={(isLitThrough && leather?.depth) || undefined}
        castShadow
        receiveShadow
      />
      {leather && isSeenThrough && (
        <mesh
          name={`veil ${part}`}
          geometry={geometry}
          material={[...leather.veils]}
          renderOrder={VEIL_ORDER}
          receiveShadow
        />
      )}
    </>
  );
}

/** The cover at both ends of where it may come to rest, once it is let go; none where it lies there already. */
function useRestEnds({ design, point, pose }: CoverSceneProps, { opening, film }: FoldedCover): readonly FoldedCover[] {
  const rest = pose.kind === 'sequence' && film.movements.rested > 0 ? pose.rest : undefined;
  const [least, most] = [rest?.least, rest?.most];
  const ends = useMemo(
    () =>
      [least, most].flatMap((angle) =>
        angle === undefined ? [] : foldedCover(design, { kind: 'opening', angle }, point),
      ),
    [design, point, least, most],
  );
  return useMemo(() => ends.filter((end) => Math.abs(end.opening - opening) > APART), [ends, opening]);
}

/** Openings that look alike, radians. */
const APART = 0.02;

function useCoverMaterials(look: CoverSceneProps['look'], { finish }: Job): CoverMaterials {
  // Another design of the same finish keeps its materials: they are compiled at the graphics card.
  const key = JSON.stringify(finish);
  const materials = useMemo(() => coverMaterials(look, JSON.parse(key)), [look, key]);
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

/** Least share of a worked edge's line that a strap has. Judged by eye. */
const LEAST_RUN = 0.5;

/** Works the cut edges as far as the making has come. */
function useCuts({ leather }: CoverMaterials, design: CoverDesign, { movements }: FoldedCover['film']): void {
  const invalidate = useThree((state) => state.invalidate);
  const { bevelled, burnished } = movements;
  const { edge } = design.job.finish;
  useLayoutEffect(() => {
    // A raw cut stays as it is.
    const worked = edge === 'raw' ? 0 : burnished;
    for (const { cut, grain } of Object.values(leather)) {
      cut.bevelled.value = bevelled;
      cut.burnished.value = worked;
      grain.run.value = worked;
    }
    const { job, pieces } = design;
    const { width, height } = pieces.outside;
    const { style, size } = pieceCorner(job, pieces).corner;
    const corner = style === 'rounded' ? size : -size;
    leather.outside.grain.piece.value.set(width, height);
    leather.outside.grain.corners.value.set(corner, corner);
    for (const part of ['frontPocket', 'backPocket'] as const) {
      leather[part].grain.piece.value.set(pieces.pocket.width, height);
      leather[part].grain.corners.value.set(corner, 0);
    }
    const strap = strapOf(design);
    if (strap !== null) {
      leather.strap.grain.piece.value.set(strap.sum.total, strap.width);
      leather.strap.grain.corners.value.set(0, strap.corner);
      // Leather on leather of one colour is told apart by its edge, raw or not.
      leather.strap.grain.run.value = Math.max(LEAST_RUN, worked);
    }
    invalidate();
  }, [leather, design, edge, bevelled, burnished, invalidate]);
}

/** Sets the frames in which leather is seen through. */
function useFrames({ leather }: CoverMaterials, seeThrough: FoldedCover['seeThrough']): void {
  const invalidate = useThree((state) => state.invalidate);
  useLayoutEffect(() => {
    for (const [name, { frames }] of Object.entries(leather))
      setFrames(frames, seeThrough.find(({ part }) => part === name)?.frames ?? []);
    invalidate();
  }, [leather, seeThrough, invalidate]);
}

/** Lays the reliefs on their parts. */
function useReliefTextures({ leather }: CoverMaterials, reliefs: readonly PartRelief[], depth: number): void {
  const invalidate = useThree((state) => state.invalidate);
  const textures = useMemo(() => new Map(reliefs.map((relief) => [relief, reliefTexture(relief)])), [reliefs]);
  useEffect(
    () => () => {
      for (const texture of textures.values()) texture.dispose();
    },
    [textures],
  );
  useLayoutEffect(() => {
    for (const part of TOOLED_PARTS) {
      const of = reliefs.find((relief) => relief.part === part);
      const texture = of && textures.get(of);
      setRelief(leather[part].relief, of && texture ? { of, texture, depth } : null);
    }
    invalidate();
  }, [leather, reliefs, textures, depth, invalidate]);
}

/** Draws areas that can be tooled on their parts. */
function useAreas({ leather }: CoverMaterials, areas: readonly ToolingArea[]): void {
  const invalidate = useThree((state) => state.invalidate);
  useLayoutEffect(() => {
    for (const part of TOOLED_PARTS)
      setAreas(
        leather[part].areas,
        part,
        areas.filter((area) => partOf(area) === part),
      );
    invalidate();
  }, [leather, areas, invalidate]);
}

/** Lights bands of the outside, and the pockets. A spot comes before a stretch of the strip. */
function useZones(
  { leather }: CoverMaterials,
  design: CoverDesign,
  point: RangePoint,
  highlight: PatternZone | null,
  spot: Spot | null,
): void {
  const invalidate = useThree((state) => state.invalidate);
  const { height } = design.pieces.outside;
  useLayoutEffect(() => {
    const lit = spot ? spotZones(design, point, spot) : highlight ? [highlight] : [];
    // The texture starts at the tail, a zone along the height at the head.
    for (const [i, value] of leather.outside.zones.value.entries()) {
      const zone = lit[i];
      if (zone?.axis === 'height') value.set(height - zone.to, height - zone.from, 1);
      else value.set(zone?.from ?? 1, zone?.to ?? 0, 0);
    }
    for (const part of ['frontPocket', 'backPocket'] as const)
      leather[part].zones.value[0].set(
        spot === 'pockets' ? -1 : 1,
        spot === 'pockets' ? design.pieces.pocket.width + 1 : 0,
        0,
      );
    invalidate();
  }, [leather, design, point, height, highlight, spot, invalidate]);
}
