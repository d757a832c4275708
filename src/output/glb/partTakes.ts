import type { MeshData, PartName } from '../../core/index.ts';
import { sameVertices } from './sameVertices.ts';

/** The scene at one moment of a sequence. */
export interface Take {
  /** Place in the sequence, 0 to 1, increasing from take to take. */
  readonly at: number;
  readonly parts: readonly MeshData[];
}

/** One part through the whole sequence, with the same vertices in every take. */
export interface PartTakes {
  readonly part: PartName;
  readonly rest: MeshData;
  /** Null where the part is not in the scene yet. */
  readonly meshes: readonly (MeshData | null)[];
  /** True where its vertices do not match from take to take: every mesh is then the one at rest. */
  readonly isStill: boolean;
}

/** Follows each part of the last take, which is the picture at rest, through all takes. */
export function partTakes(takes: readonly Take[]): PartTakes[] {
  return (takes.at(-1)?.parts ?? []).map((rest) => {
    const found = takes.map(({ parts }) => parts.find(({ part }) => part === rest.part) ?? null);
    const follow = sameVertices(rest);
    const followed = found.map((mesh) => mesh && follow(mesh));
    const isStill = followed.some((mesh, i) => mesh === null && found[i] !== null);
    return { part: rest.part, rest, meshes: isStill ? found.map((mesh) => mesh && rest) : followed, isStill };
  });
}
