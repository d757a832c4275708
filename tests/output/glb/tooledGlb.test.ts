import type { Primitive, Root } from '@gltf-transform/core';
import { validateBytes } from 'gltf-validator';
import { PNG } from 'pngjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { lettersOf } from '../../../src/artwork/faces/lettersOf.ts';
import { coverColours } from '../../../src/core/finish/coverColours.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { combine3, cross3, dot3, type Vec3 } from '../../../src/core/math/vec3.ts';
import { partReliefs } from '../../../src/core/tooling/partRelief.ts';
import { foldedGlb } from '../../../src/output/glb/foldedGlb.ts';
import { sequenceTakes } from '../../../src/output/glb/sequenceTakes.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { readGlb } from './readGlb.ts';

/** One of each kind; the back pocket stays plain. */
const DESIGNS = [
  { kind: 'border', area: 'front', lines: 2, corners: 'notched' },
  { kind: 'title', area: 'front', text: 'CH', face: 'uncial', height_mm: 30 },
  { kind: 'title', area: 'spine', text: 'Harbour', reading: 'down', height_mm: 8 },
  { kind: 'border', area: 'back', corners: 'rounded' },
  { kind: 'title', area: 'frontPocket', text: 'A', height_mm: 14 },
];

/** Time for the model of a whole book on a loaded machine, ms. */
const SLOW = 120_000;

/** A surface of the model with the pictures of what is tooled. */
const isTooled = (primitive: Primitive): boolean => primitive.getAttribute('TEXCOORD_1') !== null;

describe('a GLB of a tooled cover', () => {
  let bytes: Uint8Array;
  let root: Root;
  /** The model of the choir book, tooled. */
  beforeAll(async () => {
    const design = coverDesign(soundJob({ ...EXAMPLE_JOBS[1].document, tooling: { designs: DESIGNS } }));
    const { designs, depth_mm } = design.job.tooling;
    ({ bytes } = await foldedGlb(sequenceTakes(design, 'nominal', 2), {
      name: 'Tooled',
      colours: coverColours(design.job),
      reliefs: partReliefs(design, await lettersOf(designs)),
      reliefDepth: depth_mm,
    }));
    root = (await readGlb(bytes)).getRoot();
  }, SLOW);
  const tooledPictures = () => root.listTextures().filter((texture) => texture.getName().startsWith('tooled'));

  test('is valid, without a warning', async () => {
    const { issues } = await validateBytes(bytes);
    expect(issues).toMatchObject({ numErrors: 0, numWarnings: 0 });
    // The pictures are as large as what is tooled; the validator knows no such packing; places are there for faces without a
    // picture too.
    const remarks = ['IMAGE_NPOT_DIMENSIONS', 'UNSUPPORTED_EXTENSION', 'UNUSED_OBJECT'];
    expect([...new Set(issues.messages.map(({ code }) => code))].sort()).toEqual(remarks);
  });

  test('has pictures of its normals and tone on the grain side of the tooled parts alone, of less than 0.5 MB', () => {
    const pictures = tooledPictures();
    expect(pictures.map((texture) => texture.getName()).sort()).toEqual(
      ['tooled frontPocket', 'tooled outside'].flatMap((name) => [`${name} normals`, `${name} tone`]),
    );
    expect(pictures.reduce((sum, texture) => sum + defined(texture.getImage()).length, 0)).toBeLessThan(500_000);
    const placed = root.listMeshes().flatMap((mesh) =>
      mesh.listPrimitives().flatMap((primitive) => {
        const material = defined(primitive.getMaterial());
        expect(isTooled(primitive)).toBe(material.getNormalTexture() !== null);
        return isTooled(primitive) ? [`${mesh.getName()}: ${material.getName()}`] : [];
      }),
    );
    expect(placed.sort()).toEqual(['frontPocket: tooled frontPocket', 'outside: tooled outside']);
  });

  test('has tangents along the rows of its pictures and up their columns, in every pose', () => {
    let [all, kept] = [0, 0];
    const primitives = root.listMeshes().flatMap((mesh) => mesh.listPrimitives());
    for (const primitive of primitives.filter(isTooled)) {
      const read = (name: string, vertex: number): number[] =>
        defined(primitive.getAttribute(name)).getElement(vertex, []);
      const corners = [...defined(defined(primitive.getIndices()).getArray())];
      for (const target of [null, ...primitive.listTargets()]) {
        const added = (name: string, vertex: number): number[] =>
          target === null ? [0, 0, 0] : defined(target.getAttribute(name)).getElement(vertex, []);
        const posed = (name: string, vertex: number): Vec3 =>
          combine3(vec(read(name, vertex)), 1, vec(added(name, vertex)), 1);
        for (let t = 0; t < corners.length; t += 3) {
          const own = corners.slice(t, t + 3);
          const [a, b, c] = own.map((vertex) => posed('POSITION', vertex)) as [Vec3, Vec3, Vec3];
          const [p, q, r] = own.map((vertex) => read('TEXCOORD_1', vertex)) as [number[], number[], number[]];
          const [e1, e2] = [combine3(b, 1, a, -1), combine3(c, 1, a, -1)];
          const [s1, t1, s2, t2] = [q[0]! - p[0]!, q[1]! - p[1]!, r[0]! - p[0]!, r[1]! - p[1]!];
          const turn = s1 * t2 - s2 * t1;
          // The two directions in which the places grow (MikkTSpace); a picture's rows run down.
          const [along, down] = [combine3(e1, t2 / turn, e2, -t1 / turn), combine3(e1, -s2 / turn, e2, s1 / turn)];
          if (!(Math.abs(turn) > 1e-6) || dot3(along, along) === 0) continue;
          const [x, y, z, side] = read('TANGENT', own[0]!) as [number, number, number, number];
          const up = cross3(posed('NORMAL', own[0]!), [x, y, z]);
          expect(Math.abs(side)).toBe(1);
          const near = Math.min(
            dot3(along, [x, y, z]) / Math.sqrt(dot3(along, along)),
            (-side * dot3(down, up)) / Math.sqrt(dot3(down, down) * dot3(up, up)),
          );
          const area = Math.sqrt(dot3(cross3(e1, e2), cross3(e1, e2)));
          all += area;
          if (near > 0.95) kept += area;
        }
      }
    }
    // Rounded edges, and what bends over the end of a lining, turn a little.
    expect(kept / all).toBeGreaterThan(0.97);
  });

  test('is untouched round the edge of each picture, which a renderer goes on with', () => {
    for (const texture of tooledPictures()) {
      const { width, height, data } = PNG.sync.read(Buffer.from(defined(texture.getImage())));
      const wanted = texture.getName().endsWith('tone') ? [255, 255, 255] : [128, 128, 255];
      for (let k = 0; k < width * height; k++) {
        const [i, j] = [k % width, Math.floor(k / width)];
        if (i > 3 && j > 3 && i < width - 4 && j < height - 4) continue;
        if (wanted.some((value, c) => data[4 * k + c] !== value))
          expect.fail(`${texture.getName()} is pressed at ${i}, ${j}`);
      }
    }
  });
});

const vec = ([x, y, z]: readonly number[]): Vec3 => [x!, y!, z!];
