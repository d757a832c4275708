import { describe, expect, test } from 'vitest';
import { foldedCover } from '../../../src/core/solid/foldedCover.ts';
import { gridOf, gridSolid, moved } from '../../../src/core/solid/gridSolid.ts';
import type { MeshData, PartName } from '../../../src/core/solid/meshData.ts';
import { TOUCH_MM, validateClearance } from '../../../src/core/solid/validateClearance.ts';
import { solidVolume, validateSolid } from '../../../src/core/solid/validateSolid.ts';
import { nth } from '../../nth.ts';
import { coverOf } from '../pattern/coverOf.ts';

/** A box with corners at (0, 0, 0) and the given sizes. */
function box(part: PartName, x: number, y: number, z: number): MeshData {
  const [outer, inner] = [y, 0].map((level) => {
    const grid = gridOf(2, 2);
    // Columns run toward -x and rows toward z: out of the outer face is +y.
    grid.points.set([x, level, 0, x, level, z, 0, level, 0, 0, level, z]);
    return grid;
  }) as [ReturnType<typeof gridOf>, ReturnType<typeof gridOf>];
  return gridSolid({
    part,
    outer,
    inner,
    normals: new Float64Array([0, 1, 0, 0, 1, 0, 0, 1, 0, 0, 1, 0]),
    uvs: new Float64Array(8),
    faces: { outer: 'grain', inner: 'flesh', edge: 'cutEdge' },
  });
}

describe('clearance', () => {
  const a = box('outside', 40, 4, 30);

  test('a box is a closed solid of its own volume', () => {
    expect(validateSolid(a)).toEqual([]);
    expect(solidVolume(a)).toBeCloseTo(40 * 4 * 30, 3);
  });

  test('boxes apart, and boxes face to face, are clear', () => {
    const b = box('lining', 40, 4, 30);
    expect(validateClearance([a, moved(b, 0, 5, 0)])).toEqual([]);
    expect(validateClearance([a, moved(b, 0, 4, 0)])).toEqual([]);
    expect(validateClearance([a, moved(b, 7, 4 - TOUCH_MM / 2, 3)])).toEqual([]);
  });

  test.each([0.03, 0.1, 0.8])('a box pushed in by %d mm is found, that deep', (depth) => {
    const found = validateClearance([a, moved(box('lining', 20, 4, 10), 7, 4 - depth, 5)]);
    expect(found[0]?.depth).toBeCloseTo(depth, 4);
    expect([found[0]?.a, found[0]?.b].sort()).toEqual(['lining', 'outside']);
  });

  test('bars that cross are found though no corner of one lies in the other', () => {
    const along = box('outside', 100, 4, 4);
    const across = moved(box('lining', 4, 4, 100), 40, 1, -40);
    expect(validateClearance([along, across]).length).toBeGreaterThan(0);
  });

  test('a small solid inside a large one is found', () => {
    expect(validateClearance([a, moved(box('lining', 1, 1, 1), 20, 1, 15)])[0]?.depth).toBeCloseTo(2, 4);
  });
});

describe('a solid', () => {
  const { parts } = foldedCover(coverOf(), { kind: 'opening', angle: 1 });
  const outside = nth(parts, 0);

  test('with a triangle missing is not closed', () => {
    const { faces, indices } = outside;
    const last = nth(faces, faces.length - 1);
    const torn = {
      ...outside,
      indices: indices.slice(0, -3),
      faces: [...faces.slice(0, -1), { ...last, count: last.count - 3 }],
    };
    expect(validateSolid(torn).join()).toContain('not shared');
  });

  test('turned inside out has no volume', () => {
    expect(validateSolid({ ...outside, indices: outside.indices.slice().reverse() }).join()).toContain('volume');
  });

  test('with a place that is no number is at fault', () => {
    const positions = outside.positions.slice();
    positions[7] = Number.NaN;
    expect(validateSolid({ ...outside, positions }).join()).toContain('finite');
  });
});

describe('a fault in the fold is found', () => {
  const { parts } = foldedCover(coverOf(), { kind: 'opening', angle: 0 }, 'thick');
  const changed = (part: PartName, change: (mesh: MeshData) => MeshData): MeshData[] =>
    parts.map((mesh) => (mesh.part === part ? change(mesh) : mesh));

  test('nothing is found as it stands', () => expect(validateClearance(parts)).toEqual([]));

  test.each([
    ['a pocket sunk by 0.1 mm', 'frontPocket', [0, 0.1, 0]],
    ['a pocket drawn in over the board edge by 1.5 mm', 'backPocket', [-1.5, 0, 0]],
    ['a board that stands out of the spine by 4 mm', 'backBoard', [4, 0, 0]],
    ['pages that press on the pocket by 0.1 mm', 'frontPages', [0, 0.1, 0]],
  ] as const)('%s', (_name, part, [x, y, z]) => {
    expect(validateClearance(changed(part, (mesh) => moved(mesh, x, y, z))).length).toBeGreaterThan(0);
  });

  test('an outside whose head is not drawn in over the board', () => {
    const flattened = changed('outside', (mesh) => ({
      ...mesh,
      positions: mesh.positions.map((value, k) => (k % 3 === 2 ? value * 0.985 : value)),
    }));
    expect(validateClearance(flattened).length).toBeGreaterThan(0);
  });
});
