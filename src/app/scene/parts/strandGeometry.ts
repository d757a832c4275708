import { BufferGeometry, CatmullRomCurve3, Float32BufferAttribute, Vector3 } from 'three';

/** Width and thickness of flat lace, mm. */
export interface Lace {
  readonly width: number;
  readonly thickness: number;
}

/** Cross-section of the lace: across the width, across the thickness, as shares of half of each. */
const SECTION: readonly (readonly [number, number])[] = [
  [-1, -0.2],
  [-0.75, 1],
  [0.75, 1],
  [1, -0.2],
  [0.7, -1],
  [-0.7, -1],
];

/**
 * Sweeps flat lace along a smooth path through the given points.
 * @param points path, mm
 * @param outward normal of the lace's face at each point; same length as `points`
 * @param steps number of segments of the sweep
 */
export function strandGeometry(
  points: readonly Vector3[],
  outward: readonly Vector3[],
  lace: Lace,
  steps: number,
): BufferGeometry {
  const path = new CatmullRomCurve3([...points], false, 'centripetal');
  const faces = new CatmullRomCurve3([...outward], false, 'centripetal');
  const positions: number[] = [];
  const normals: number[] = [];
  const uvs: number[] = [];
  const indices: number[] = [];
  const length = path.getLength();
  for (let i = 0; i <= steps; i++) {
    const share = i / steps;
    const at = path.getPoint(share);
    const tangent = path.getTangent(share).normalize();
    const side = new Vector3().crossVectors(tangent, faces.getPoint(share)).normalize();
    const face = new Vector3().crossVectors(side, tangent).normalize();
    for (const [across, deep] of SECTION) {
      const position = at
        .clone()
        .addScaledVector(side, (across * lace.width) / 2)
        .addScaledVector(face, (deep * lace.thickness) / 2);
      const normal = side
        .clone()
        .multiplyScalar(across * 0.6)
        .addScaledVector(face, deep)
        .normalize();
      positions.push(...position.toArray());
      normals.push(...normal.toArray());
      uvs.push((across * lace.width) / 2, share * length);
    }
  }
  const round = SECTION.length;
  for (let i = 0; i < steps; i++) {
    for (let k = 0; k < round; k++) {
      const [a, b] = [i * round + k, i * round + ((k + 1) % round)];
      indices.push(a, b, a + round, b, b + round, a + round);
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(positions, 3));
  geometry.setAttribute('normal', new Float32BufferAttribute(normals, 3));
  geometry.setAttribute('uv', new Float32BufferAttribute(uvs, 2));
  geometry.setIndex(indices);
  return geometry;
}
