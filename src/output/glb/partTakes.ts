import type { ModelMesh, ModelPart } from '../model/modelParts.ts';
import { thinnedMesh } from '../model/thinnedMesh.ts';
import { sameVertices } from './sameVertices.ts';

/** The scene at one moment of a sequence. */
export interface Take {
  /** Place in the sequence, 0 to 1, increasing from take to take. */
  readonly at: number;
  readonly parts: readonly ModelMesh[];
}

/** A part in one take. */
export interface PartPose {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
}

/** One part through the whole sequence, thinned, with the same vertices in every take. */
export interface PartTakes {
  readonly part: ModelPart;
  readonly rest: ModelMesh;
  /** Null where the part is not in the scene yet. */
  readonly poses: readonly (PartPose | null)[];
  /** True where its vertices do not match from take to take: every pose is then the one at rest. */
  readonly isStill: boolean;
  /** Coordinates of the file are whole numbers of it, mm. */
  readonly step: number;
}

/** Whole numbers of the file reach this far on either side of the middle, so that two bytes hold every shift. */
const REACH = 16383;

/** Shares of the takes in which a part is thinned, beside the one at rest. */
const THINNED_AT = [0, 0.35, 0.7, 0.85] as const;

/** Follows each part of the last take, which is the picture at rest, through all takes. */
export function partTakes(takes: readonly Take[]): PartTakes[] {
  return (takes.at(-1)?.parts ?? []).map((whole) => {
    const found = takes.map(({ parts }) => parts.find(({ part }) => part === whole.part) ?? null);
    const present = found.filter((mesh) => mesh !== null);
    const step = stepOf(present);
    const follow = sameVertices(whole);
    const samples = THINNED_AT.map((share) => follow(present[Math.floor(share * (present.length - 1))]!));
    const canFollow = samples.every((sample) => sample !== null);
    const poses = [whole, ...(canFollow ? samples : [])].map(({ positions }) => positions);
    const { vertices, indices, faces } = thinnedMesh(whole, poses, step);
    const rest: ModelMesh = {
      part: whole.part,
      positions: taken(whole.positions, 3, vertices),
      normals: taken(whole.normals, 3, vertices),
      uvs: taken(whole.uvs, 2, vertices),
      indices,
      faces,
    };
    const followed = found.map((mesh) => {
      if (mesh === null || mesh === whole) return mesh && rest;
      const pose = canFollow ? follow(mesh) : null;
      return pose && { positions: taken(pose.positions, 3, vertices), normals: taken(pose.normals, 3, vertices) };
    });
    const isStill = followed.some((pose, i) => pose === null && found[i] !== null);
    return { part: whole.part, rest, poses: isStill ? found.map((mesh) => mesh && rest) : followed, isStill, step };
  });
}

/** The values of some vertices, in their order. */
const taken = (values: Float32Array, size: number, vertices: Uint32Array): Float32Array =>
  Float32Array.from(
    { length: vertices.length * size },
    (_, i) => values[vertices[Math.floor(i / size)]! * size + (i % size)]!,
  );

function stepOf(meshes: readonly ModelMesh[]): number {
  const [low, high] = [
    Array<number>(3).fill(Number.POSITIVE_INFINITY),
    Array<number>(3).fill(Number.NEGATIVE_INFINITY),
  ];
  for (const { positions } of meshes)
    positions.forEach((value, i) => {
      low[i % 3] = Math.min(low[i % 3]!, value);
      high[i % 3] = Math.max(high[i % 3]!, value);
    });
  return Math.max(...high.map((value, k) => value - low[k]!)) / (2 * REACH);
}
