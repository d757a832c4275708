import type { Document, Mesh } from '@gltf-transform/core';
import fc from 'fast-check';
import { validateBytes } from 'gltf-validator';
import { beforeAll, describe, expect, test } from 'vitest';
import type { CoverColours } from '../../../src/core/finish/coverColours.ts';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { combine3, cross3, dot3 } from '../../../src/core/math/vec3.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import { foldedCover } from '../../../src/core/solid/foldedCover.ts';
import type { MeshData } from '../../../src/core/solid/meshData.ts';
import { type FoldedGlb, foldedGlb } from '../../../src/output/glb/foldedGlb.ts';
import { sequenceTakes } from '../../../src/output/glb/sequenceTakes.ts';
import { defined } from '../../defined.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw, lawCases } from '../../laws.ts';
import { nth } from '../../nth.ts';
import { readGlb, readRawGlb } from './readGlb.ts';

const LEATHER = { grain: '#996644', flesh: '#ccaa88', cutEdge: '#553322' };
const COLOURS: CoverColours = {
  outside: LEATHER,
  pocket: LEATHER,
  lining: LEATHER,
  boardCloth: '#445566',
  boardInside: '#d8d0bd',
  endpaper: '#cdbfa0',
  pageFace: '#efe6d0',
  pageEdge: '#eadfc4',
  band: '#e3d7b8',
  ribbon: '#7d2432',
  metal: '#c9a14a',
  thread: '#efe3c6',
  lace: '#6b3f24',
};

/** A board 20 x 30 x 2 mm with its corner at (x, 0, 0), each side with vertices of its own. */
function board(x: number): MeshData {
  const positions: number[] = [];
  const normals: number[] = [];
  const indices: number[] = [];
  const size = [20, 30, 2];
  for (let axis = 0; axis < 3; axis++)
    for (const side of [0, 1]) {
      const [u, v] = [(axis + 1) % 3, (axis + 2) % 3];
      const start = positions.length / 3;
      for (const [a, b] of [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ] as const) {
        const point = [0, 0, 0];
        point[axis] = side * nth(size, axis);
        point[u] = a * nth(size, u);
        point[v] = b * nth(size, v);
        positions.push(nth(point, 0) + x, nth(point, 1), nth(point, 2));
        const normal = [0, 0, 0];
        normal[axis] = side ? 1 : -1;
        normals.push(...normal);
      }
      const turn = side ? [0, 1, 2, 0, 2, 3] : [0, 2, 1, 0, 3, 2];
      indices.push(...turn.map((i) => start + i));
    }
  return {
    part: 'frontBoard',
    positions: Float32Array.from(positions),
    normals: Float32Array.from(normals),
    uvs: new Float32Array((positions.length / 3) * 2),
    indices: Uint32Array.from(indices),
    faces: [
      { face: 'boardCloth', start: 0, count: 18 },
      { face: 'boardInside', start: 18, count: 18 },
    ],
  };
}

/** Lowest and highest coordinates, metres, of a mesh at rest or bent by one of its targets. */
function bounds(document: Document, part: string, target?: number) {
  const primitives = defined(
    document
      .getRoot()
      .listMeshes()
      .find((mesh) => mesh.getName() === part),
  ).listPrimitives();
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const primitive of primitives) {
    const rest = defined(primitive.getAttribute('POSITION'));
    const added = target === undefined ? null : defined(nth(primitive.listTargets(), target).getAttribute('POSITION'));
    for (let i = 0; i < rest.getCount(); i++) {
      const by = added === null ? [0, 0, 0] : added.getElement(i, []);
      rest.getElement(i, []).forEach((value, k) => {
        low[k] = Math.min(nth(low, k), value + nth(by, k));
        high[k] = Math.max(nth(high, k), value + nth(by, k));
      });
    }
  }
  return { low, high, size: high.map((value, k) => value - nth(low, k)) };
}

const TENTH_MM = 1e-4;

/** Time for the model of a whole book on a loaded machine, ms. */
const SLOW = 120_000;

/**
 * What the validator tells of a file, without two remarks: it knows no EXT_meshopt_compression, and sees that places on a
 * picture are there for faces that have none.
 */
const told = async (bytes: Uint8Array): Promise<string[]> =>
  (await validateBytes(bytes)).issues.messages.map(({ code }) => code).filter(isTold);

const isTold = (code: string): boolean => code !== 'UNSUPPORTED_EXTENSION' && code !== 'UNUSED_OBJECT';

/** The bounding boxes of the flat pieces and of the board are the sizes of the report, to a tenth of a mm. */
function expectReportSizes(document: Document, design: CoverDesign): void {
  const { pattern } = designReport(design);
  const [across, along] = [2, 1]; // the flat pattern stands upright: width along z, height along y
  const sizes = [
    ['outside', pattern.outside],
    ...(pattern.pocket.count > 0
      ? [['frontPocket', pattern.pocket] as const, ['backPocket', pattern.pocket] as const]
      : []),
  ] as const;
  for (const [part, { width_mm, height_mm }] of sizes) {
    const { size } = bounds(document, part, 0);
    expect(Math.abs(nth(size, across) - width_mm / 1000)).toBeLessThan(TENTH_MM);
    expect(Math.abs(nth(size, along) - height_mm / 1000)).toBeLessThan(TENTH_MM);
  }
  const height = nth(bounds(document, 'frontBoard').size, along);
  expect(Math.abs(height - design.job.book.height_mm / 1000)).toBeLessThan(TENTH_MM);
}

describe('a GLB of one take', () => {
  test('stands upright in metres, and the validator reports nothing', async () => {
    const { bytes, still } = await foldedGlb([{ at: 1, parts: [board(0)] }], { name: 'Board', colours: COLOURS });
    const { info } = await validateBytes(bytes);
    expect(await told(bytes)).toEqual([]);
    expect(info).toMatchObject({ animationCount: 0, materialCount: 2 });
    expect(still).toEqual([]);
    const document = await readGlb(bytes);
    const { low, high } = bounds(document, 'frontBoard');
    expect(low.map((value) => Math.abs(value).toFixed(5))).toEqual(['0.00000', '0.00000', '0.00000']);
    expect(high.map((value) => value.toFixed(5))).toEqual([0.02, 0.002, 0.03].map((value) => value.toFixed(5)));
  });

  test('has triangles that run counterclockwise seen from outside, after the mirror image that core draws', async () => {
    const { bytes } = await foldedGlb([{ at: 1, parts: [board(0)] }], { name: 'Board', colours: COLOURS });
    for (const mesh of (await readGlb(bytes)).getRoot().listMeshes())
      for (const primitive of mesh.listPrimitives()) {
        const [positions, normals] = ['POSITION', 'NORMAL'].map((name) => defined(primitive.getAttribute(name)));
        const corners = [...defined(defined(primitive.getIndices()).getArray())];
        for (let t = 0; t < corners.length; t += 3) {
          const [a, b, c] = [0, 1, 2].map((k) =>
            defined(positions).getElement<[number, number, number]>(nth(corners, t + k), [0, 0, 0]),
          );
          const turn = cross3(combine3(defined(b), 1, defined(a), -1), combine3(defined(c), 1, defined(a), -1));
          expect(
            dot3(turn, defined(normals).getElement<[number, number, number]>(nth(corners, t), [0, 0, 0])),
          ).toBeGreaterThan(0);
        }
      }
  });

  test('gives the same bytes each time', async () => {
    const write = () => foldedGlb([{ at: 1, parts: [board(0)] }], { name: 'Board', colours: COLOURS });
    expect((await write()).bytes).toEqual((await write()).bytes);
  });
});

describe('a GLB of a sequence', () => {
  test('moves each part through its takes and leaves it out until its first', async () => {
    const takes = [
      { at: 0, parts: [] },
      { at: 0.5, parts: [board(50)] },
      { at: 1, parts: [board(0)] },
    ];
    const { bytes } = await foldedGlb(takes, { name: 'Board', colours: COLOURS, seconds: 4 });
    expect(await told(bytes)).toEqual([]);
    const document = await readGlb(bytes);
    expect(bounds(document, 'frontBoard', 0).low[0]).toBeCloseTo(0.05, 5);
    const [animation] = document.getRoot().listAnimations();
    const channels = Object.fromEntries(
      animation!.listChannels().map((channel) => [
        channel.getTargetPath(),
        {
          times: [...defined(defined(defined(channel.getSampler()).getInput()).getArray())],
          values: [...defined(defined(defined(channel.getSampler()).getOutput()).getArray())],
        },
      ]),
    );
    expect(channels.weights).toEqual({ times: [2, 4], values: [1, 0] });
    const [scale] = defined(
      document
        .getRoot()
        .listNodes()
        .find((node) => node.getMesh() !== null),
    ).getScale();
    expect(defined(channels.scale).times).toEqual([0, 2]);
    expect(defined(channels.scale).values).toEqual(
      [0, 0, 0, scale, scale, scale].map((value) => Math.fround(defined(value))),
    );
  });

  test('says which part it could not follow, and leaves it at rest', async () => {
    const cut = { ...board(50), indices: board(50).indices.slice(3), faces: [] };
    const takes = [
      { at: 0, parts: [cut] },
      { at: 1, parts: [board(0)] },
    ];
    const { bytes, still } = await foldedGlb(takes, { name: 'Board', colours: COLOURS });
    expect(still).toEqual(['frontBoard']);
    expect(await told(bytes)).toEqual([]);
  });
});

/** Triangles of a mesh at rest, and how many of them have no area: their corners are whole steps, so the product is exact. */
function countTriangles(mesh: Mesh): { readonly all: number; readonly flat: number } {
  let [all, flat] = [0, 0];
  for (const primitive of mesh.listPrimitives()) {
    const corners = [...defined(defined(primitive.getIndices()).getArray())];
    const position = defined(primitive.getAttribute('POSITION'));
    for (let t = 0; t < corners.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((k) =>
        position.getElement<[number, number, number]>(nth(corners, t + k), [0, 0, 0]),
      );
      const area = cross3(combine3(defined(b), 1, defined(a), -1), combine3(defined(c), 1, defined(a), -1));
      all++;
      if (dot3(area, area) === 0) flat++;
    }
  }
  return { all, flat };
}

describe.each(EXAMPLE_JOBS)('the GLB of $id', ({ document: job }) => {
  const seconds = 8;
  let design: CoverDesign;
  let model: FoldedGlb;
  let document: Document;
  beforeAll(async () => {
    design = coverDesign(soundJob(job));
    model = await foldedGlb(sequenceTakes(design, 'nominal', 5), { name: 'Cover', colours: COLOURS, seconds });
    document = await readGlb(model.bytes);
  }, SLOW);

  test('passes the validator, follows every part, and measures what the pieces measure', async () => {
    const { issues, info } = await validateBytes(model.bytes);
    expect(issues.messages.map(({ code }) => code).filter(isTold)).toEqual([]);
    expect(issues).toMatchObject({ numErrors: 0, numWarnings: 0 });
    expect(info.animationCount).toBe(1);
    expect(model.still).toEqual([]);
    expectReportSizes(document, design);
  });

  test('has no triangle without area', async () => {
    const raw = await readRawGlb(model.bytes);
    for (const mesh of raw.getRoot().listMeshes()) {
      const { all, flat } = countTriangles(mesh);
      expect(all).toBeGreaterThan(0);
      expect(`${mesh.getName()}: ${flat}`).toBe(`${mesh.getName()}: 0`);
    }
  });

  test('bends each leather to its place in each of its key poses', () => {
    let checked = 0;
    for (const channel of defined(document.getRoot().listAnimations()[0]).listChannels()) {
      const part = defined(channel.getTargetNode()).getName();
      if (channel.getTargetPath() !== 'weights' || !(part === 'outside' || part.endsWith('Pocket'))) continue;
      const times = [...defined(defined(defined(channel.getSampler()).getInput()).getArray())];
      for (const [target, time] of times.slice(0, -1).entries()) {
        const { low, high } = bounds(document, part, target);
        const folded = foldedCover(design, { kind: 'sequence', at: time / seconds }, 'nominal').parts;
        const { positions } = defined(folded.find((mesh) => mesh.part === part));
        for (const [k, axis] of [
          [0, 0],
          [1, 2],
          [2, 1],
        ] as const) {
          const values = positions.filter((_, i) => i % 3 === axis);
          expect(Math.abs(nth(low, k) - Math.min(...values) / 1000)).toBeLessThan(TENTH_MM);
          expect(Math.abs(nth(high, k) - Math.max(...values) / 1000)).toBeLessThan(TENTH_MM);
          checked++;
        }
      }
    }
    expect(checked).toBeGreaterThanOrEqual(12);
  });
});

test('the GLB of any cover passes the validator, follows every part, and measures what the report says', async () => {
  await checkLaw(
    fc.asyncProperty(jobDocument, async (document) => {
      const design = coverDesign(soundJob(document));
      const { bytes, still } = await foldedGlb(sequenceTakes(design, 'thick', 4), { name: 'Cover', colours: COLOURS });
      expect(await told(bytes)).toEqual([]);
      expect(still).toEqual([]);
      expectReportSizes(await readGlb(bytes), design);
    }),
    { cases: lawCases(40) },
  );
});

test('a turned cover of thick leather is followed, though its cut edge lies some hundredths of a mm off its sides', async () => {
  const leather = (thickness: number, neutral: number, bendRatio: number) => ({
    min_mm: thickness,
    max_mm: thickness,
    neutral,
    bendRatio,
  });
  const thick = {
    format: 'coverwright-job',
    version: 1,
    book: {
      kind: 'limp',
      width_mm: 108.78,
      height_mm: 246.38,
      thickness_mm: 66.16,
      boardThickness_mm: 11,
      spine: { shape: 'rounded', rise_mm: 7.94 },
    },
    leather: {
      outside: leather(2.3716, 0.5514, 0.0693),
      pocket: leather(1.8486, 0.4691, 0.8639),
      lining: leather(2.8921, 0.7005, 0.05),
    },
    seam: { method: 'lacing' },
    pockets: { construction: 'turned' },
  };
  const takes = sequenceTakes(coverDesign(soundJob(thick)), 'thick', 4);
  expect((await foldedGlb(takes, { name: 'Cover', colours: COLOURS })).still).toEqual([]);
});
