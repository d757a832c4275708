import { type Accessor, Document, type GLTF, type Node, type PrimitiveTarget, WebIO } from '@gltf-transform/core';
import { EXTMeshoptCompression, KHRMeshQuantization } from '@gltf-transform/extensions';
import type { CoverColours, PartRelief } from '../../core/index.ts';
import { difference, directions, inGltfAxes, mirroredTriangles } from '../model/metres.ts';
import { isSeam, MODEL_ORIGIN, type ModelFace, type ModelPart } from '../model/modelParts.ts';
import { surfaceOf } from '../model/surface.ts';
import { tileSide } from '../model/tilePicture.ts';
import { materialsOf } from './glbMaterials.ts';
import { keyPoses } from './keyPoses.ts';
import { encodeGltfBuffer } from './meshoptEncoder.ts';
import { type PartPose, type PartTakes, partTakes, type Take } from './partTakes.ts';
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
  /** Whether the file is packed by EXT_meshopt_compression, which some viewers cannot read; true by default. */
  readonly isPacked?: boolean;
}

export interface FoldedGlb {
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Parts shown at rest in every take because their vertices do not match from take to take. */
  readonly still: readonly ModelPart[];
}

const DEFAULT_SECONDS = 24;

/** Most key poses of a part, each a shape that a viewer holds; fewer of the seam, which has most vertices. */
const MOST_SHAPES = 24;
const MOST_SEWN = 12;

const MM_PER_METRE = 1000;

/** Side of the picture that a face without one would have, mm. */
const NO_TILE = 100;

type Values =
  | Float32Array<ArrayBuffer>
  | Uint32Array<ArrayBuffer>
  | Uint16Array<ArrayBuffer>
  | Int16Array<ArrayBuffer>
  | Int8Array<ArrayBuffer>;

/**
 * Writes cover and book as binary glTF 2.0 (Khronos Group), in metres, y up, one named node a part, one material a kind
 * of surface with its tiles as pictures; what is tooled has pictures of its own. Surfaces are thinned, coordinates are whole
 * numbers (KHR_mesh_quantization). At rest it shows the last take; several takes make an animation named `making`, which
 * bends each part from key pose to key pose and hides it (scale 0) until its first take.
 * @param takes the scene at increasing places of the sequence; one or more
 */
export async function foldedGlb(
  takes: readonly Take[],
  { name, colours, reliefs = [], reliefDepth = 0, seconds = DEFAULT_SECONDS, isPacked = true }: GlbOptions,
): Promise<FoldedGlb> {
  const document = new Document();
  document.createExtension(KHRMeshQuantization).setRequired(true);
  const buffer = document.createBuffer();
  const accessor = (type: GLTF.AccessorType, array: Values, isNormalized = false): Accessor =>
    document.createAccessor().setType(type).setArray(array).setNormalized(isNormalized).setBuffer(buffer);
  const root = document.createNode(name);
  document.getRoot().setDefaultScene(document.createScene(name).addChild(root).setExtras({ origin: MODEL_ORIGIN }));
  const pictures = new Map(reliefs.map((relief) => [relief.part as ModelPart, reliefPictures(relief, reliefDepth)]));
  const materialOf = materialsOf(document, colours, pictures);
  const animation = takes.length < 2 ? null : document.createAnimation('making');

  const addPart = ({ part, rest, step }: PartTakes, shapes: readonly PartPose[]): Node => {
    const base = onGrid(rest.positions, step);
    const middle = middleOf([rest, ...shapes], step);
    const mesh = document.createMesh(part).setWeights(shapes.map(() => 0));
    for (const { face, start, count } of rest.faces) {
      const corners = mirroredTriangles(rest.indices.subarray(start, start + count));
      const vertices = [...new Set(corners)];
      const numbers = new Map(vertices.map((vertex, i) => [vertex, i]));
      const own = <T extends Values>(values: T, size: number): T => {
        const found = new (values.constructor as new (length: number) => T)(vertices.length * size);
        vertices.forEach((vertex, i) => {
          found.set(values.subarray(vertex * size, (vertex + 1) * size), i * size);
        });
        return found;
      };
      const primitive = document
        .createPrimitive()
        .setAttribute(
          'POSITION',
          accessor(
            'VEC3',
            own(
              Int16Array.from(base, (value, i) => value - middle[i % 3]!),
              3,
            ),
          ),
        )
        .setAttribute('NORMAL', accessor('VEC3', own(bytes(directions(rest.normals)), 3), true))
        .setAttribute('TEXCOORD_0', accessor('VEC2', own(tilePlaces(rest.uvs, colours, part, face), 2)))
        .setIndices(
          accessor(
            'SCALAR',
            wholes(
              corners.map((vertex) => numbers.get(vertex)!),
              vertices.length,
            ),
          ),
        )
        .setMaterial(materialOf(part, face));
      const relief = face === 'grain' ? pictures.get(part) : undefined;
      if (relief)
        primitive
          .setAttribute('TEXCOORD_1', accessor('VEC2', own(reliefPlaces(rest.uvs, relief), 2)))
          .setAttribute('TANGENT', accessor('VEC4', own(bytes(tangents(directions(rest.normals), relief)), 4), true));
      for (const shape of shapes) primitive.addTarget(target(part, shape, rest, base, step, own));
      mesh.addPrimitive(primitive);
    }
    const node = document
      .createNode(part)
      .setMesh(mesh)
      .setScale([step / MM_PER_METRE, step / MM_PER_METRE, step / MM_PER_METRE])
      .setTranslation(middle.map((value) => (value * step) / MM_PER_METRE) as [number, number, number]);
    root.addChild(node);
    return node;
  };

  const target = (
    part: ModelPart,
    shape: PartPose,
    rest: PartPose,
    base: Float32Array,
    step: number,
    own: <T extends Values>(values: T, size: number) => T,
  ): PrimitiveTarget => {
    const shift = Int16Array.from(difference(onGrid(shape.positions, step), base));
    const found = document.createPrimitiveTarget().setAttribute('POSITION', accessor('VEC3', own(shift, 3)));
    // Thread is too thin for its shading to be missed.
    if (isSeam(part)) return found;
    const turn = Float32Array.from(
      difference(directions(shape.normals), directions(rest.normals)),
      (value) => Math.round(value * FINEST_TURN) / FINEST_TURN,
    );
    return found.setAttribute('NORMAL', accessor('VEC3', own(turn, 3)));
  };

  const follow = (
    node: Node,
    path: 'weights' | 'scale',
    times: readonly number[],
    values: Accessor,
    interpolation: 'LINEAR' | 'STEP',
  ): void => {
    const input = accessor(
      'SCALAR',
      Float32Array.from(times, (at) => at * seconds),
    );
    const sampler = document.createAnimationSampler().setInput(input).setOutput(values).setInterpolation(interpolation);
    const channel = document.createAnimationChannel().setTargetNode(node).setTargetPath(path).setSampler(sampler);
    animation!.addSampler(sampler).addChannel(channel);
  };

  const times = takes.map(({ at }) => at);
  const parts = partTakes(takes);
  for (const part of parts) {
    const { rest, poses, step } = part;
    const keys = keyPoses(times, poses, isSeam(part.part) ? MOST_SEWN : MOST_SHAPES);
    // The last key is the shape at rest, which needs no target.
    const shapes = keys.slice(0, -1).map((i) => poses[i]!);
    const node = addPart({ ...part, rest }, shapes);
    if (animation === null) continue;
    if (shapes.length > 0)
      follow(
        node,
        'weights',
        keys.map((i) => times[i]!),
        accessor('SCALAR', weights(shapes.length)),
        'LINEAR',
      );
    const first = poses.findIndex((pose) => pose !== null);
    if (first > 0) {
      const scales = [0, step / MM_PER_METRE].flatMap((scale) => [scale, scale, scale]);
      follow(node, 'scale', [times[0]!, times[first]!], accessor('VEC3', Float32Array.from(scales)), 'STEP');
    }
  }
  if (animation?.listChannels().length === 0) animation.dispose();
  return {
    bytes: await written(document, isPacked),
    still: parts.filter(({ isStill }) => isStill).map(({ part }) => part),
  };
}

/** Turns of normals are whole parts of one, which floats hold in two bytes of four: the others pack to nothing. */
const FINEST_TURN = 64;

/** Positions in whole steps, in glTF's axes. */
const onGrid = (positions: Float32Array, step: number): Float32Array<ArrayBuffer> =>
  inGltfAxes(positions).map((value) => Math.round(value / step));

/** The whole steps in the middle of all poses. */
function middleOf(poses: readonly PartPose[], step: number): number[] {
  const [low, high] = [
    Array<number>(3).fill(Number.POSITIVE_INFINITY),
    Array<number>(3).fill(Number.NEGATIVE_INFINITY),
  ];
  for (const { positions } of poses)
    onGrid(positions, step).forEach((value, i) => {
      low[i % 3] = Math.min(low[i % 3]!, value);
      high[i % 3] = Math.max(high[i % 3]!, value);
    });
  return low.map((value, k) => Math.round((value + high[k]!) / 2));
}

/** Directions as signed bytes, -127 to 127. */
const bytes = (values: Float32Array): Int8Array<ArrayBuffer> =>
  Int8Array.from(values, (value) => Math.round(127 * value));

const wholes = (
  indices: Uint32Array<ArrayBuffer>,
  count: number,
): Uint16Array<ArrayBuffer> | Uint32Array<ArrayBuffer> => (count > 65535 ? indices : Uint16Array.from(indices));

/** Where vertices lie in the tile of a face: glTF's places begin at the top left, the pattern's at the bottom. */
function tilePlaces(
  uvs: Float32Array,
  colours: CoverColours,
  part: ModelPart,
  face: ModelFace,
): Float32Array<ArrayBuffer> {
  const { tone, relief } = surfaceOf(colours, part, face);
  const tile = tone ?? relief;
  const side = tile === null ? NO_TILE : tileSide(tile);
  return Float32Array.from(uvs, (value, i) => Math.round(((i % 2 === 0 ? value : -value) / side) * 1024) / 1024);
}

/** Where vertices lie in the pictures of a relief. */
const reliefPlaces = (uvs: Float32Array, { scale, offset }: ReliefPictures): Float32Array<ArrayBuffer> =>
  Float32Array.from(uvs, (_, i) => scale[i % 2]! * uvs[i + 1 - 2 * (i % 2)]! + offset[i % 2]!);

/**
 * The right of the pictures of a relief, along the height of the part, square to the normals; and the side that their top is on.
 * @param normals in glTF's axes
 */
function tangents(normals: Float32Array, { scale }: ReliefPictures): Float32Array<ArrayBuffer> {
  const found = new Float32Array((normals.length / 3) * 4);
  for (let v = 0; v < normals.length / 3; v++) {
    const [x, y, z] = normals.subarray(3 * v, 3 * v + 3) as unknown as [number, number, number];
    const along = [-x * y, 1 - y * y, -z * y];
    const length = Math.hypot(...along);
    // A surface that faces along the height has no such direction.
    const unit = length < 1e-3 ? [1, 0, 0] : along.map((value) => (Math.sign(scale[0]) * value) / length);
    found.set([...unit, 1], 4 * v);
  }
  return found;
}

/** Weights of all shapes at each key: 1 for the key's own, none at the last, which is at rest. */
function weights(shapes: number): Float32Array<ArrayBuffer> {
  const values = new Float32Array((shapes + 1) * shapes);
  for (let i = 0; i < shapes; i++) values[i * shapes + i] = 1;
  return values;
}

async function written(document: Document, isPacked: boolean): Promise<Uint8Array<ArrayBuffer>> {
  const io = new WebIO().registerExtensions([KHRMeshQuantization, EXTMeshoptCompression]);
  if (isPacked) {
    io.registerDependencies({ 'meshopt.encoder': { encodeGltfBuffer } });
    document.createExtension(EXTMeshoptCompression).setRequired(true);
  }
  return (await io.writeBinary(document)) as Uint8Array<ArrayBuffer>;
}
