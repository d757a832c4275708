/**
 * Normals of vertices as the mean of their triangles', weighted by area; edges stay crisp where faces share no vertices.
 * @param otherwise the normals of vertices whose triangles have no area
 */
export function vertexNormals(positions: Float32Array, indices: Uint32Array, otherwise: Float32Array): Float32Array {
  const normals = new Float32Array(positions.length);
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [3 * indices[t]!, 3 * indices[t + 1]!, 3 * indices[t + 2]!];
    const from = (corner: number, k: number): number => positions[corner + k]! - positions[a + k]!;
    const normal = [
      from(b, 1) * from(c, 2) - from(b, 2) * from(c, 1),
      from(b, 2) * from(c, 0) - from(b, 0) * from(c, 2),
      from(b, 0) * from(c, 1) - from(b, 1) * from(c, 0),
    ];
    for (const corner of [a, b, c]) for (let k = 0; k < 3; k++) normals[corner + k]! += normal[k]!;
  }
  for (let i = 0; i < normals.length; i += 3) {
    const length = Math.hypot(normals[i]!, normals[i + 1]!, normals[i + 2]!);
    for (let k = i; k < i + 3; k++) normals[k] = length > NO_AREA ? normals[k]! / length : otherwise[k]!;
  }
  return normals;
}

/** Doubled area, mm2, too small to give a direction. */
const NO_AREA = 1e-9;
