/** A point or direction in space: x and y across the spine as in the section, z along the spine, head positive. */
export type Vec3 = readonly [x: number, y: number, z: number];
