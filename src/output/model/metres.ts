const MM_PER_METRE = 1000;

/**
 * Turns core's axes (fore-edge +x, front +y, head +z) to those of glTF (y up, the front toward the viewer): (x, y, z) becomes
 * (x, z, y). That is a mirror image, as core's assembly is one: a book whose spine is on the left has its head at -z there.
 */
function turned(vectors: Float32Array, scale: number): Float32Array<ArrayBuffer> {
  const result = new Float32Array(vectors.length);
  for (let i = 0; i < vectors.length; i += 3) {
    result[i] = vectors[i]! * scale;
    result[i + 1] = vectors[i + 2]! * scale;
    result[i + 2] = vectors[i + 1]! * scale;
  }
  return result;
}

/** Positions in mm to glTF's axes, still in mm. */
export const inGltfAxes = (positions: Float32Array): Float32Array<ArrayBuffer> => turned(positions, 1);

/** Positions in mm to glTF's axes and metres. */
export const metres = (positions: Float32Array): Float32Array<ArrayBuffer> => turned(positions, 1 / MM_PER_METRE);

/** Normals in glTF's axes, of length 1 within float rounding; upward where a face has no area. */
export function directions(normals: Float32Array): Float32Array<ArrayBuffer> {
  const result = turned(normals, 1);
  for (let i = 0; i < result.length; i += 3) {
    const length = Math.hypot(result[i]!, result[i + 1]!, result[i + 2]!);
    if (length > 0) for (let k = i; k < i + 3; k++) result[k]! /= length;
    else result[i + 1] = 1;
  }
  return result;
}

/** Triangles with their corners the other way round, so that they face outward in the mirror image. */
export const mirroredTriangles = (indices: Uint32Array): Uint32Array<ArrayBuffer> =>
  Uint32Array.from(indices, (_, i) => indices[i - (i % 3) + 2 - (i % 3)]!);

/** `to` minus `from`. */
export const difference = (to: Float32Array, from: Float32Array): Float32Array<ArrayBuffer> =>
  Float32Array.from(to, (value, i) => value - from[i]!);
