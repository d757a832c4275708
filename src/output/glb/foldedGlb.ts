import { type Accessor, type Animation, Document, type Node, type PrimitiveTarget, WebIO } from '@gltf-transform/core';
import type { CoverColours, MeshData, PartName, PartRelief } from '../../core/index.ts';
import { difference, directions, metres, mirroredTriangles } from '../model/metres.ts';
import { materialsOf } from './glbMaterials.ts';
import { type PartTakes, partTakes, type Take } from './partTakes.ts';
import { type ReliefPictures, reliefPictures } from './reliefPictures.ts';

export interface GlbOptions {
  /** Name of the scene, usually the job's. */
  readonly name: string;
  readonly colours: CoverColours;
  /** What is tooled into the parts. */
  readonly reliefs?: readonly PartRelief[];
  /** How deep, mm. */
  readonly reliefDepth?: number;
  /** Length of the animation, seconds. */
  readonly seconds?: number;
}

export interface FoldedGlb {
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Parts shown at rest in every take because their vertices do not match from take to take. */
  readonly still: readonly PartName[];
}

const DEFAULT_SECONDS = 8;

/**
 * Writes cover and book as binary glTF 2.0 (Khronos Group), in metres, y up, one named node a part, one material a kind
 * of surface; what is tooled has pictures of its normals and tone on the grain side. At rest it shows the last take; several takes make an animation named `making`, which bends each part
 * from take to take and hides it (scale 0) until its first take.
 * @param takes the scene at increasing places of the sequence; one or more
 */
export async function foldedGlb(
  takes: readonly Take[],
  { name, colours, reliefs = [], reliefDepth = 0, seconds = DEFAULT_SECONDS }: GlbOptions,
): Promise<FoldedGlb> {
  const document = new Document();
  const buffer = document.createBuffer();
  const accessor = (
    type: 'SCALAR' | 'VEC2' | 'VEC3',
    array: Float32Array<ArrayBuffer> | Uint32Array<ArrayBuffer>,
  ): Accessor => document.createAccessor().setType(type).setArray(array).setBuffer(buffer);
  const root = document.createNode(name);
  const scene = document.createScene(name).addChild(root);
  document.getRoot().setDefaultScene(scene);
  const pictures = new Map(reliefs.map((relief) => [relief.part as PartName, reliefPictures(relief, reliefDepth)]));
  const materialOf = materialsOf(document, colours, pictures);

  const addPart = ({ part, rest }: PartTakes, targets: readonly PrimitiveTarget[]): Node => {
    const mesh = document.createMesh(part);
    const position = accessor('VEC3', metres(rest.positions));
    const normal = accessor('VEC3', directions(rest.normals));
    const relief = pictures.get(part);
    const place = relief && accessor('VEC2', texturePlaces(rest.uvs, relief));
    for (const { face, start, count } of rest.faces) {
      const primitive = document
        .createPrimitive()
        .setAttribute('POSITION', position)
        .setAttribute('NORMAL', normal)
        .setIndices(accessor('SCALAR', mirroredTriangles(rest.indices.subarray(start, start + count))))
        .setMaterial(materialOf(rest, face));
      if (face === 'grain' && place) primitive.setAttribute('TEXCOORD_0', place);
      for (const target of targets) primitive.addTarget(target);
      mesh.addPrimitive(primitive);
    }
    mesh.setWeights(targets.map(() => 0));
    const node = document.createNode(part).setMesh(mesh);
    root.addChild(node);
    return node;
  };

  const addTarget = (mesh: MeshData, rest: MeshData): PrimitiveTarget =>
    document
      .createPrimitiveTarget()
      .setAttribute('POSITION', accessor('VEC3', difference(metres(mesh.positions), metres(rest.positions))))
      .setAttribute('NORMAL', accessor('VEC3', difference(directions(mesh.normals), directions(rest.normals))));

  const parts = partTakes(takes);
  if (takes.length < 2) {
    for (const part of parts) addPart(part, []);
    return { bytes: await written(document), still: [] };
  }

  const animation = document.createAnimation('making');
  const times = accessor(
    'SCALAR',
    Float32Array.from(takes, ({ at }) => at * seconds),
  );
  const follow = (
    node: Node,
    path: 'weights' | 'scale',
    values: Accessor,
    interpolation: 'LINEAR' | 'STEP',
  ): Animation => {
    const sampler = document.createAnimationSampler().setInput(times).setOutput(values).setInterpolation(interpolation);
    const channel = document.createAnimationChannel().setTargetNode(node).setTargetPath(path).setSampler(sampler);
    return animation.addSampler(sampler).addChannel(channel);
  };

  for (const part of parts) {
    const { rest, meshes } = part;
    const shapes = meshes.filter((mesh) => mesh !== null && mesh !== rest) as MeshData[];
    const node = addPart(
      part,
      shapes.map((mesh) => addTarget(mesh, rest)),
    );
    if (shapes.length > 0) follow(node, 'weights', accessor('SCALAR', weights(meshes, shapes)), 'LINEAR');
    if (meshes.includes(null)) {
      const scales = Float32Array.from(meshes.flatMap((mesh) => Array<number>(3).fill(mesh === null ? 0 : 1)));
      follow(node, 'scale', accessor('VEC3', scales), 'STEP');
    }
  }
  if (animation.listChannels().length === 0) {
    animation.dispose();
    times.dispose();
  }
  return {
    bytes: await written(document),
    still: parts.filter(({ isStill }) => isStill).map(({ part }) => part),
  };
}

/** Where vertices lie in the pictures of a relief. */
const texturePlaces = (uvs: Float32Array, { scale, offset }: ReliefPictures): Float32Array<ArrayBuffer> =>
  Float32Array.from(uvs, (value, i) => scale[i % 2]! * value + offset[i % 2]!);

/**
 * Weights of all shapes by take: 1 for the take's own, 0 at rest; before its first take a part already has that shape.
 */
function weights(meshes: readonly (MeshData | null)[], shapes: readonly MeshData[]): Float32Array<ArrayBuffer> {
  const values = new Float32Array(meshes.length * shapes.length);
  meshes.forEach((mesh, i) => {
    const own = shapes.indexOf(mesh ?? shapes[0]!);
    if (own >= 0) values[i * shapes.length + own] = 1;
  });
  return values;
}

const written = async (document: Document): Promise<Uint8Array<ArrayBuffer>> =>
  (await new WebIO().writeBinary(document)) as Uint8Array<ArrayBuffer>;
