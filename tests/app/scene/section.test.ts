import { BoxGeometry, type BufferGeometry, CylinderGeometry, Plane, ShapeUtils, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { planeAxes, section } from '../../../src/app/scene/geometry/section.ts';
import type { MeshData } from '../../../src/core/solid/meshData.ts';
import { defined } from '../../defined.ts';

/** A geometry of the renderer as mesh data; its faces share no vertices, as in a cover. */
function meshOf(geometry: BufferGeometry): MeshData {
  return {
    part: 'outside',
    positions: new Float32Array(geometry.getAttribute('position').array),
    normals: new Float32Array(geometry.getAttribute('normal').array),
    uvs: new Float32Array(geometry.getAttribute('uv').array),
    indices: new Uint32Array(defined(geometry.getIndex()).array),
    faces: [],
  };
}

const areas = (mesh: MeshData, plane: Plane): number[] =>
  section(mesh, plane, planeAxes(plane)).map((loop) => Math.abs(ShapeUtils.area(loop)));

describe('section of a solid', () => {
  const box = meshOf(new BoxGeometry(20, 30, 40));

  test('a plane square to an edge cuts a box in one rectangle of its other two sides', () => {
    expect(areas(box, new Plane(new Vector3(0, 0, 1), 7))).toEqual([expect.closeTo(600, 3)]);
    expect(areas(box, new Plane(new Vector3(-1, 0, 0), 3))).toEqual([expect.closeTo(1200, 3)]);
  });

  test('a plane tilted about the spine cuts a longer rectangle, by the cosine of the tilt', () => {
    const tilt = 0.3;
    const plane = new Plane(new Vector3(Math.cos(tilt), Math.sin(tilt), 0), 0);
    expect(areas(box, plane)[0]).toBeCloseTo((30 / Math.cos(tilt)) * 40, 2);
  });

  test('a plane beside the solid cuts nothing', () => {
    expect(areas(box, new Plane(new Vector3(0, 0, 1), 21))).toEqual([]);
  });

  test('a plane through corners gives one closed loop', () => {
    const cylinder = meshOf(new CylinderGeometry(10, 10, 30, 64));
    const [area, ...others] = areas(cylinder, new Plane(new Vector3(1, 0, 0), 0));
    expect(others).toEqual([]);
    expect(area).toBeCloseTo(600, 2);
  });

  test('a solid with a hole in its surface gives no cap where its outline does not close', () => {
    const open = { ...box, indices: box.indices.slice(6) };
    expect(areas(open, new Plane(new Vector3(0, 0, 1), 0))).toEqual([]);
  });
});
