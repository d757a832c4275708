import { unzipSync } from 'fflate';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { coverColours } from '../../../src/core/finish/coverColours.ts';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import { foldedCover } from '../../../src/core/solid/foldedCover.ts';
import { coverUsdz } from '../../../src/output/usdz/coverUsdz.ts';
import { usdzPackage } from '../../../src/output/usdz/usdzPackage.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const usdz = (design: CoverDesign): Uint8Array =>
  coverUsdz(design, { name: 'The "cover"', colours: coverColours(design.job) });

/**
 * Name, way of packing and place of the data of each file, by the local headers (ZIP File Format Specification, APPNOTE.TXT
 * 4.3.7).
 */
function* localFiles(bytes: Uint8Array): Generator<{ name: string; method: number; at: number; size: number }> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 0; view.getUint32(at, true) === 0x04034b50; ) {
    const [method, size] = [view.getUint16(at + 8, true), view.getUint32(at + 18, true)];
    const [letters, extra] = [view.getUint16(at + 26, true), view.getUint16(at + 28, true)];
    const name = new TextDecoder().decode(bytes.subarray(at + 30, at + 30 + letters));
    const data = at + 30 + letters + extra;
    yield { name, method, at: data, size };
    at = data + size;
  }
}

interface ReadMesh {
  readonly part: string;
  readonly face: string;
  readonly points: readonly (readonly number[])[];
  readonly normals: readonly (readonly number[])[];
  readonly places: readonly (readonly number[])[];
  readonly triangles: readonly (readonly number[])[];
  readonly material: string;
}

/** The meshes of a layer in text, read by their lines. */
function meshesOf(layer: string): ReadMesh[] {
  const tuples = (text: string): number[][] =>
    Array.from(text.matchAll(/\(([^()]*)\)/g), ([, inner]) => defined(inner).split(', ').map(Number));
  let part = '';
  const found: ReadMesh[] = [];
  for (const block of layer.split(/(?=def (?:Xform|Mesh|Scope) ")/)) {
    const [, kind, name] = defined(/^(?:def (\w+) "(\w+)")?/.exec(block));
    if (kind === 'Xform') part = defined(name);
    if (kind !== 'Mesh') continue;
    const line = (start: string): string =>
      defined(block.split('\n').find((each) => each.trim().startsWith(start))).replace(/^[^=]*= /, '');
    const numbers = (start: string): number[] => JSON.parse(line(start)) as number[];
    const flat = numbers('int[] faceVertexIndices');
    expect(new Set(numbers('int[] faceVertexCounts'))).toEqual(new Set([3]));
    expect(numbers('int[] faceVertexCounts').length * 3).toBe(flat.length);
    found.push({
      part,
      face: defined(name),
      points: tuples(line('point3f[] points')),
      normals: tuples(line('normal3f[] normals')),
      places: tuples(line('texCoord2f[] primvars:st')),
      triangles: Array.from({ length: flat.length / 3 }, (_, t) => flat.slice(3 * t, 3 * t + 3)),
      material: defined(/<(.*)>/.exec(line('rel material:binding'))?.[1]),
    });
  }
  return found;
}

const layerOf = (bytes: Uint8Array): string => new TextDecoder().decode(defined(unzipSync(bytes)['cover.usda']));

function sizeOf(points: readonly (readonly number[])[]): number[] {
  return [0, 1, 2].map((k) => {
    const values = points.map((point) => nth(point, k));
    return Math.max(...values) - Math.min(...values);
  });
}

type Corners = [number[], number[], number[]];

/** The normal of a triangle, as long as twice its area. */
function turnOf([a, b, c]: Corners): number[] {
  const edge = (to: number[], k: number): number => nth(to, k) - nth(a, k);
  return [0, 1, 2].map((k) => {
    const [i, j] = [(k + 1) % 3, (k + 2) % 3];
    return edge(b, i) * edge(c, j) - edge(b, j) * edge(c, i);
  });
}

/** Volume within triangles that run counterclockwise seen from outside, by the divergence theorem. */
const volumeOf = (triangles: readonly Corners[]): number =>
  triangles.reduce(
    (sum, corners) => sum + turnOf(corners).reduce((dot, value, k) => dot + value * nth(corners[0], k), 0) / 6,
    0,
  );

const TENTH_MM = 1e-4;

describe('a USDZ package', () => {
  test('keeps its files unpacked, each at a multiple of 64 bytes (USDZ File Format Specification, OpenUSD)', () => {
    const files = Array.from(
      { length: 70 },
      (_, i) => [`${'n'.repeat(i + 1)}.png`, Uint8Array.from({ length: 3 * i }, () => i)] as const,
    );
    const bytes = usdzPackage(files);
    const found = [...localFiles(bytes)];
    expect(found.map(({ name }) => name)).toEqual(files.map(([name]) => name));
    expect(new Set(found.map(({ at, method }) => `${at % 64} ${method}`))).toEqual(new Set(['0 0']));
    expect(Object.values(unzipSync(bytes))).toEqual(files.map(([, content]) => content));
  });

  test('is the same bytes for the same files', () => {
    const write = () => usdzPackage([['cover.usda', new Uint8Array(5)]]);
    expect(write()).toEqual(write());
  });
});

describe.each(EXAMPLE_JOBS)('the USDZ of $id', ({ document: job }) => {
  const design = coverDesign(soundJob(job));
  const bytes = usdz(design);
  const layer = layerOf(bytes);
  const meshes = meshesOf(layer);

  test('is a package whose first file is the layer, with pictures that it names', () => {
    const files = [...localFiles(bytes)];
    expect(nth(files, 0).name).toBe('cover.usda');
    for (const { at, method } of files) expect([at % 64, method]).toEqual([0, 0]);
    const named = new Set(Array.from(layer.matchAll(/@(.*?)@/g), ([, name]) => defined(name)));
    expect(files.slice(1).map(({ name }) => name)).toEqual([...named]);
    for (const { at, size, name } of files.slice(1)) {
      const { width, height } = PNG.sync.read(Buffer.from(bytes.subarray(at, at + size)));
      expect(`${name} ${width}`).toBe(`${name} ${height}`);
    }
    console.log(`${design.job.name}: USDZ ${(bytes.length / 1e6).toFixed(2)} MB`);
  });

  test('stands in metres, y up, on its tail', () => {
    expect(layer.startsWith('#usda 1.0\n')).toBe(true);
    expect(layer).toContain('\n    metersPerUnit = 1\n    upAxis = "Y"\n');
    expect(layer).toContain('doc = "The \\"cover\\", by the quick model"');
    const lift = Number(/xformOp:translate = \([^,]*, ([^,]*),/.exec(layer)?.[1]);
    const heights = meshes.flatMap(({ points }) => points.map((point) => nth(point, 1)));
    expect(Math.min(...heights) + lift).toBeCloseTo(0, 5);
  });

  test('measures what the report says and what the folded cover measures, to a tenth of a millimetre', () => {
    const { pattern } = designReport(design);
    const outside = meshes.filter(({ part }) => part === 'outside').flatMap(({ points }) => points);
    expect(Math.abs(nth(sizeOf(outside), 1) - pattern.outside.height_mm / 1000)).toBeLessThan(TENTH_MM);
    const board = meshes.filter(({ part }) => part === 'frontBoard').flatMap(({ points }) => points);
    expect(Math.abs(nth(sizeOf(board), 1) - design.job.book.height_mm / 1000)).toBeLessThan(TENTH_MM);
    for (const { part, positions } of foldedCover(design, { kind: 'opening', angle: 0 }).parts) {
      const whole = sizeOf(
        Array.from({ length: positions.length / 3 }, (_, i) => [...positions.subarray(3 * i, 3 * i + 3)]),
      );
      const read = sizeOf(meshes.filter((mesh) => mesh.part === part).flatMap(({ points }) => points));
      [0, 2, 1].forEach((k, axis) => {
        expect(Math.abs(nth(read, axis) - nth(whole, k) / 1000), part).toBeLessThan(TENTH_MM);
      });
    }
  });

  test('has a normal and a place in its picture for each point, a material that there is, and no triangle without area', () => {
    for (const { points, normals, places, triangles, material } of meshes) {
      expect([normals.length, places.length]).toEqual([points.length, points.length]);
      expect(layer).toContain(`def Material "${defined(material.split('/').at(-1))}"`);
      for (const corners of triangles)
        expect(Math.hypot(...turnOf(corners.map((i) => nth(points, i)) as Corners))).toBeGreaterThan(0);
    }
  });

  test('faces outward: each part holds the volume that the folded part does', () => {
    for (const { part, positions, indices } of foldedCover(design, { kind: 'opening', angle: 0 }).parts) {
      const read = meshes
        .filter((mesh) => mesh.part === part)
        .flatMap(({ points, triangles }) => triangles.map((corners) => corners.map((i) => nth(points, i)) as Corners));
      const at = (i: number): number[] => [...positions.subarray(3 * nth(indices, i), 3 * nth(indices, i) + 3)];
      const folded = Array.from(
        { length: indices.length / 3 },
        (_, t): Corners => [at(3 * t), at(3 * t + 1), at(3 * t + 2)],
      );
      // Both faces of a sheet 1 mm thick may each lie 0.05 mm off.
      expect(Math.abs((volumeOf(read) * 1e9) / volumeOf(folded) - 1), part).toBeLessThan(0.1);
    }
  });
});
