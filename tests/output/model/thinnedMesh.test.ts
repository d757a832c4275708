import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { foldedCover } from '../../../src/core/solid/foldedCover.ts';
import type { MeshData } from '../../../src/core/solid/meshData.ts';
import { solidVolume } from '../../../src/core/solid/validateSolid.ts';
import { thinnedMesh } from '../../../src/output/model/thinnedMesh.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const RADIUS = 30;

/** A sheet of 61 x 31 points, 1 mm apart, rolled about an axis at a radius; not rolled at all at 0. */
function rolled(radius: number): MeshData {
  const [columns, rows] = [61, 31];
  const [positions, normals, uvs, indices]: number[][] = [[], [], [], []];
  for (let i = 0; i < columns; i++)
    for (let j = 0; j < rows; j++) {
      const angle = radius > 0 ? i / radius : 0;
      positions!.push(radius > 0 ? radius * Math.sin(angle) : i, radius > 0 ? radius * Math.cos(angle) : 0, j);
      normals!.push(Math.sin(angle), Math.cos(angle), 0);
      uvs!.push(i, j);
      const at = i * rows + j;
      if (i + 1 < columns && j + 1 < rows) indices!.push(at, at + 1, at + rows, at + rows, at + 1, at + rows + 1);
    }
  return {
    part: 'outside',
    positions: Float32Array.from(positions!),
    normals: Float32Array.from(normals!),
    uvs: Float32Array.from(uvs!),
    indices: Uint32Array.from(indices!),
    faces: [{ face: 'grain', start: 0, count: indices!.length }],
  };
}

/** Length of a chord whose middle lies 0.05 mm off the arc: the sagitta is c^2 / 8r (geometry). */
const LONGEST = Math.sqrt(8 * RADIUS * 0.05);

describe('a sheet that is flat', () => {
  test('is left as two triangles with its own corners', () => {
    const flat = rolled(0);
    const { vertices, indices, faces } = thinnedMesh(flat, [flat.positions], 0.001);
    expect([...vertices].sort((a, b) => a - b)).toEqual([0, 30, 60 * 31, 60 * 31 + 30]);
    expect(indices.length).toBe(6);
    expect(faces).toEqual([{ face: 'grain', start: 0, count: 6 }]);
  });

  test('keeps what it needs in another pose', () => {
    const [flat, roll] = [rolled(0), rolled(RADIUS)];
    const { vertices, indices } = thinnedMesh(flat, [flat.positions, roll.positions], 0.001);
    // Along the axis it may stretch from end to end; round it no edge is longer than that chord.
    for (let t = 0; t < indices.length; t += 3)
      for (const [a, b] of [
        [0, 1],
        [1, 2],
        [2, 0],
      ] as const) {
        const [from, to] = [vertices[indices[t + a]!]!, vertices[indices[t + b]!]!];
        expect(Math.abs(Math.floor(from / 31) - Math.floor(to / 31))).toBeLessThan(LONGEST);
      }
    expect(vertices.length).toBeLessThan((61 * 31) / 4);
  });
});

test('two sheets that only touch in one pose are not sewn together', () => {
  const sheet = rolled(0);
  const apart = Float32Array.from(sheet.positions, (value, i) => (i % 3 === 1 ? value + 5 : value));
  const count = sheet.positions.length / 3;
  const both: MeshData = {
    ...sheet,
    positions: Float32Array.from([...sheet.positions, ...sheet.positions]),
    normals: Float32Array.from([...sheet.normals, ...sheet.normals]),
    uvs: Float32Array.from([...sheet.uvs, ...sheet.uvs]),
    indices: Uint32Array.from([...sheet.indices, ...Array.from(sheet.indices, (vertex) => vertex + count)]),
    faces: [{ face: 'grain', start: 0, count: 2 * sheet.indices.length }],
  };
  const moved = Float32Array.from([...sheet.positions, ...apart]);
  const { vertices, indices } = thinnedMesh(both, [both.positions, moved], 0.001);
  expect(vertices.length).toBe(8);
  for (let t = 0; t < indices.length; t += 3)
    expect(new Set([...indices.subarray(t, t + 3)].map((i) => nth([...vertices], i) < count)).size).toBe(1);
});

/** Area of triangles whose own normal is turned away from one of their corners', mm2. */
function turnedAway({ positions, normals, indices }: Pick<MeshData, 'positions' | 'normals' | 'indices'>): number {
  let area = 0;
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [...indices.subarray(t, t + 3)].map((vertex) => 3 * vertex) as [number, number, number];
    const edge = (to: number, k: number): number => positions[to + k]! - positions[a + k]!;
    const turn = [
      edge(b, 1) * edge(c, 2) - edge(b, 2) * edge(c, 1),
      edge(b, 2) * edge(c, 0) - edge(b, 0) * edge(c, 2),
      edge(b, 0) * edge(c, 1) - edge(b, 1) * edge(c, 0),
    ];
    const isTurned = [a, b, c].some((v) => turn.reduce((sum, value, k) => sum + value * normals[v + k]!, 0) < 0);
    if (isTurned) area += Math.hypot(...turn) / 2;
  }
  return area;
}

describe.each(EXAMPLE_JOBS)('the parts of $id, thinned for two poses', ({ document }) => {
  const design = coverDesign(soundJob(document));
  const [closed, open] = [0, 2].map((angle) => foldedCover(design, { kind: 'opening', angle }).parts);

  test('hold as much with less than two thirds of the triangles, shaded as before', () => {
    for (const mesh of closed!) {
      const other = open!.find(({ part }) => part === mesh.part);
      const poses =
        other?.positions.length === mesh.positions.length ? [mesh.positions, other.positions] : [mesh.positions];
      const { vertices, indices, faces } = thinnedMesh(mesh, poses, 0.001);
      const taken = (values: Float32Array, size: number): Float32Array =>
        Float32Array.from(
          { length: vertices.length * size },
          (_, i) => values[size * vertices[Math.floor(i / size)]! + (i % size)]!,
        );
      const thin: MeshData = {
        ...mesh,
        positions: taken(mesh.positions, 3),
        normals: taken(mesh.normals, 3),
        uvs: taken(mesh.uvs, 2),
        indices,
        faces: faces as MeshData['faces'],
      };
      if (mesh.indices.length > 3000) expect(indices.length, mesh.part).toBeLessThan((2 * mesh.indices.length) / 3);
      // Both faces of a sheet 1 mm thick may each lie 0.05 mm off.
      expect(Math.abs(solidVolume(thin) / solidVolume(mesh) - 1), mesh.part).toBeLessThan(0.1);
      expect(turnedAway(thin), mesh.part).toBeLessThanOrEqual(1.5 * turnedAway(mesh) + 0.01);
    }
  });
});
