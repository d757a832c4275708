import type { CoverColours, CoverDesign, RangePoint } from '../../core/index.ts';
import { directions, metres, mirroredTriangles } from '../model/metres.ts';
import { MODEL_ORIGIN, type ModelMesh, modelParts } from '../model/modelParts.ts';
import { type Surface, surfaceOf } from '../model/surface.ts';
import { thinnedMesh } from '../model/thinnedMesh.ts';
import { coloured, tilePicture, tileSide } from '../model/tilePicture.ts';
import { png } from '../png.ts';
import { type UsdMaterial, type UsdMesh, type UsdPart, usdLayer } from './usdLayer.ts';
import { usdzPackage } from './usdzPackage.ts';

export interface UsdzOptions {
  /** Name of the job, written as a remark. */
  readonly name: string;
  readonly colours: CoverColours;
  /** Thin end, middle or thick end of the leathers. */
  readonly point?: RangePoint;
}

/** Places of the layer are written to a thousandth of a millimetre; areas below its square are none. */
const STEP = 0.001;

/**
 * The closed cover on its book as USDZ (USDZ File Format Specification, OpenUSD): one layer in text, in metres, y up, with
 * its pictures as PNG. The book stands on its tail on the ground, in the middle of the scene.
 */
export function coverUsdz(
  design: CoverDesign,
  { name, colours, point = 'nominal' }: UsdzOptions,
): Uint8Array<ArrayBuffer> {
  const parts = modelParts(design, point)({ kind: 'opening', angle: 0 });
  const surfaces = new Map<string, Surface>();
  const meshes = parts.map((mesh): UsdPart => {
    const { vertices, indices, faces } = thinnedMesh(mesh, [mesh.positions], STEP);
    return {
      name: mesh.part,
      meshes: faces.map(({ face, start, count }): UsdMesh => {
        const surface = surfaceOf(colours, mesh.part, face);
        surfaces.set(surface.name, surface);
        return usdMesh(face, surface, mesh, vertices, indices.subarray(start, start + count));
      }),
    };
  });
  const pictures = new Map<string, Uint8Array>();
  const materials = [...surfaces.values()].map((surface) => material(surface, pictures));
  const layer = new TextEncoder().encode(
    usdLayer({ remark: `${name}, by the ${MODEL_ORIGIN}`, parts: meshes, materials }),
  );
  return usdzPackage([['cover.usda', layer], ...pictures]);
}

function usdMesh(
  name: string,
  surface: Surface,
  mesh: ModelMesh,
  vertices: Uint32Array,
  indices: Uint32Array<ArrayBuffer>,
): UsdMesh {
  const own = [...new Set(indices)];
  const number = new Map(own.map((vertex, i) => [vertex, i]));
  const taken = (values: Float32Array, size: number): Float32Array =>
    Float32Array.from(
      { length: own.length * size },
      (_, i) => values[vertices[own[Math.floor(i / size)]!]! * size + (i % size)]!,
    );
  const side = surface.tone === null ? 100 : tileSide(surface.tone);
  return {
    name,
    material: surface.name,
    points: metres(taken(mesh.positions, 3)),
    normals: directions(taken(mesh.normals, 3)),
    places: taken(mesh.uvs, 2).map((value) => value / side),
    indices: mirroredTriangles(indices.map((vertex) => number.get(vertex)!)),
  };
}

/** A material; its pictures go into `pictures`, by the name of their file. */
function material(
  { name, colour, roughness, metalness, tone, relief }: Surface,
  pictures: Map<string, Uint8Array>,
): UsdMaterial {
  const kept = (file: string, make: () => Uint8Array): string => {
    if (!pictures.has(file)) pictures.set(file, make());
    return file;
  };
  return {
    name,
    colour,
    roughness,
    metalness,
    tone: tone && kept(`${name.replaceAll(' ', '_')}.png`, () => png(coloured(tilePicture(tone), colour))),
    relief: relief && kept(`${relief}.png`, () => png(tilePicture(relief))),
  };
}
