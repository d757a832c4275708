import type { Primitive } from '@gltf-transform/core';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { coverColours } from '../../src/core/finish/coverColours.ts';
import type { CoverDesign } from '../../src/core/fold/coverDesign.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { cross3, type Vec3 } from '../../src/core/math/vec3.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { foldedCover } from '../../src/core/solid/foldedCover.ts';
import type { MeshData } from '../../src/core/solid/meshData.ts';
import { type PartRelief, partReliefs } from '../../src/core/tooling/partRelief.ts';
import { onCutPiece, type ToolingArea } from '../../src/core/tooling/toolingArea.ts';
import { tooledFaces } from '../../src/core/tooling/toolingMarks.ts';
import { foldedGlb } from '../../src/output/glb/foldedGlb.ts';
import { type FlatPiece, flatPiece, grainOf } from '../core/tooling/flatPiece.ts';
import { placements } from '../core/tooling/toolingJobs.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { readGlb } from '../output/glb/readGlb.ts';
import { proofSize } from './proofSize.ts';

/** How far from where it was placed a line may be seen, mm. */
const ALLOWED = 0.1;

const WANTED = proofSize(200, 10);

/** Covers with a drawing on one face; in the small sample the first one on a strap is among them. */
const DRAWN = placements(4 * WANTED);
const CASES = [...DRAWN.filter(({ face }) => face === 'strap').slice(0, 1), ...DRAWN.slice(0, WANTED - 1)];

const FLAT = { kind: 'sequence', at: 0 } as const;

/** A place in the middle of a line, at which nothing else is near, and the direction across the line there. */
interface Crossing {
  readonly at: Vec2;
  readonly across: Vec2;
}

/** What of a case is compared: the flat piece by itself, where the drawing was placed on it, and what is pressed into it. */
interface Shown {
  readonly area: ToolingArea;
  readonly mesh: MeshData;
  readonly relief: PartRelief;
  readonly crossings: readonly Crossing[];
  readonly width: number;
}

function shownOf({ design, face }: (typeof CASES)[number]): Shown {
  const { area, designs } = defined(tooledFaces(design, new Map()).find((each) => each.area.face === face));
  const [relief] = partReliefs(design, new Map());
  const { part } = defined(relief);
  const width = design.job.tooling.line_mm;
  return {
    area,
    relief: defined(relief),
    mesh: defined(foldedCover(design, FLAT).parts.find((mesh) => mesh.part === part)),
    crossings: crossingsOf(
      designs.flatMap(({ lines }) => lines),
      width,
    ),
    width,
  };
}

function crossingsOf(lines: readonly (readonly Vec2[])[], width: number): Crossing[] {
  const segments = lines.flatMap((line) => line.slice(1).map((to, i) => [nth(line, i), to] as const));
  return segments.flatMap(([from, to]) => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const along: Vec2 = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    return [0.25, 0.5, 0.75].flatMap((share): Crossing[] => {
      const at: Vec2 = [from[0] + share * length * along[0], from[1] + share * length * along[1]];
      const isClear = segments.every(([a, b]) => (a === from && b === to) || distance(at, a, b) > 2.5 * width);
      return isClear && length > 4 * width ? [{ at, across: [-along[1], along[0]] }] : [];
    });
  });
}

function distance(p: Vec2, a: Vec2, b: Vec2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const share = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(p[0] - a[0] - share * dx, p[1] - a[1] - share * dy);
}

/** A picture of one channel, read between its pixels as a renderer does; from the row and column of its first pixel. */
function smoothed(
  columns: number,
  rows: number,
  pixel: (i: number, j: number) => number,
): (s: number, t: number) => number {
  const at = (i: number, j: number): number =>
    pixel(Math.max(0, Math.min(columns - 1, i)), Math.max(0, Math.min(rows - 1, j)));
  return (s, t) => {
    const [x, y] = [s * columns - 0.5, t * rows - 0.5];
    const [i, j] = [Math.floor(x), Math.floor(y)];
    const [a, b] = [x - i, y - j];
    return (
      (1 - a) * (1 - b) * at(i, j) + a * (1 - b) * at(i + 1, j) + (1 - a) * b * at(i, j + 1) + a * b * at(i + 1, j + 1)
    );
  };
}

/** How far beside a crossing the middle of what is pressed lies, mm; infinite where nothing is. */
function offCrossing({ at, across }: Crossing, width: number, pressed: (place: Vec2) => number): number {
  let [sum, moment] = [0, 0];
  for (let k = -40; k <= 40; k++) {
    const t = (k / 40) * width;
    const share = pressed([at[0] + t * across[0], at[1] + t * across[1]]);
    sum += share;
    moment += share * t;
  }
  return sum > 1 ? Math.abs(moment / sum) : Number.POSITIVE_INFINITY;
}

/** The assembly is mirrored along the spine on its way to the picture, so right and left change places. */
const flatOf = (mesh: MeshData): FlatPiece =>
  flatPiece(mesh, grainOf(mesh), [0, 0, 1], (out) => cross3(out, [0, 0, 1]));

/** Whether the leather lies level round a crossing: where the lining under it ends it does not, not even laid out. */
const liesFlat =
  (flat: FlatPiece) =>
  ({ at: [x, y] }: Crossing): boolean =>
    Array.from({ length: 2 * STEP + 1 }, (_, i) => x + i - STEP).every((near) => flat.offPlane(near, y) < 0.001);

/** Reach of the step that the end of a lining makes in the outside, mm. */
const STEP = 12;

describe(`${WANTED} random placements of a drawing, mirrored ones too`, () => {
  test('are seen in 3D within 0.1 mm of where they were placed', () => {
    let [worst, crossings] = [0, 0];
    for (const [i, each] of CASES.entries()) {
      const shown = shownOf(each);
      const flat = flatOf(shown.mesh);
      expect(Math.hypot(flat.size[0] - shown.area.size[0], flat.size[1] - shown.area.size[1])).toBeLessThan(ALLOWED);
      const { scale, offset, map } = shown.relief;
      const depth = smoothed(map.columns, map.rows, (s, t) => nth(map.depths, t * map.columns + s) / 255);
      for (const crossing of shown.crossings.filter(liesFlat(flat))) {
        const off = offCrossing(crossing, shown.width, ([x, y]) => {
          const [u, v] = flat.at(x, y, shown.mesh.uvs, 2) as [number, number];
          const [s, t] = [scale[0] * u + offset[0], scale[1] * v + offset[1]];
          return s < 0 || t < 0 || s > 1 || t > 1 ? 0 : depth(s, t);
        });
        if (off > ALLOWED) expect.fail(`case ${i}, ${each.face}: a line at ${crossing.at} is seen ${off} mm beside it`);
        worst = Math.max(worst, off);
        crossings++;
      }
    }
    console.log(`${CASES.length} placements, ${crossings} crossings of lines: worst ${worst.toFixed(4)} mm in 3D`);
    expect(crossings).toBeGreaterThan(2 * CASES.length);
  });

  test('keep their size in 3D at any opening: two places over a board are as far apart as they were placed', () => {
    let worst = 0;
    for (const [i, { design, face }] of CASES.entries()) {
      // Over a rounded spine, and over the step at the end of a lining, a straight distance is shorter.
      if ((face !== 'front' && face !== 'back') || design.job.leather.lining !== null) continue;
      const shown = shownOf({ design, face });
      const flat = flatOf(shown.mesh);
      const mesh = defined(
        foldedCover(design, { kind: 'opening', angle: ((i * 0.618) % 1) * Math.PI }).parts.find(
          ({ part }) => part === shown.mesh.part,
        ),
      );
      const opened = placeInSpace(mesh);
      const places = shown.crossings.map(({ at }) => ({ at, inSpace: opened(flat.at(...at, shown.mesh.uvs, 2)) }));
      for (const a of places)
        for (const b of places) {
          const off = Math.abs(
            Math.hypot(...a.inSpace.map((value, c) => value - nth(b.inSpace, c))) -
              Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]),
          );
          if (off > ALLOWED) expect.fail(`case ${i}, ${face}: two places are ${off} mm too near or far`);
          worst = Math.max(worst, off);
        }
    }
    console.log(`two places of a face are off their distance by at most ${worst.toFixed(4)} mm`);
  });

  test('lie on the cut piece where they are seen on the finished one, by the change of size in making', () => {
    for (const { design, face } of CASES) {
      const { area, crossings } = shownOf({ design, face });
      const strap = patternDrawing(design).pieces.find(({ id }) => id === 'strap');
      const [cut, made] =
        face === 'strap' && strap
          ? [[strap.width, strap.height], area.size]
          : ([design.pieces, design.made] as const).map((pieces) =>
              area.piece === 'outside'
                ? [pieces.outside.width, pieces.outside.height]
                : [pieces.pocket.width, pieces.outside.height],
            );
      for (const { at } of crossings) {
        // The back pocket is cut by the pattern of the front one, which lies there with its head at the tail; a strap's pattern
        // begins at its sewn end, which on the closed book is at the right.
        const isTurned = (area.piece === 'pocket' && face === 'backPocket') || face === 'strap';
        const seen = at.map((value, c) => (isTurned ? nth(defined(made), c) - value : value));
        const wanted = seen.map((value, c) => (value * nth(defined(cut), c)) / nth(defined(made), c));
        const got = onCutPiece(area, at);
        expect(Math.hypot(got[0] - nth(wanted, 0), got[1] - nth(wanted, 1))).toBeLessThan(ALLOWED);
      }
    }
  });

  test('are seen in the 3D model within 0.1 mm of where they were placed, raised and sunk the right way', async () => {
    let worst = 0;
    for (const [i, each] of CASES.entries()) {
      const shown = shownOf(each);
      const model = await modelOf(each.design, shown);
      for (const crossing of shown.crossings.filter(liesFlat(model.flat))) {
        const off = offCrossing(crossing, shown.width, (place) => model.pressed(place));
        if (off > ALLOWED) expect.fail(`case ${i}, ${each.face}: a line at ${crossing.at} is seen ${off} mm beside it`);
        worst = Math.max(worst, off);
        for (const side of [-1, 1]) {
          const { at, across } = crossing;
          const t = (side * shown.width) / 4;
          // From the middle of a groove its walls rise, so a wall faces the middle.
          const tilt = model.tilt([at[0] + t * across[0], at[1] + t * across[1]], across);
          expect(-side * tilt, `case ${i}, ${each.face}: the wall of a groove faces away`).toBeGreaterThan(0.1);
        }
      }
    }
    console.log(`worst ${worst.toFixed(4)} mm in the 3D model`);
  });
});

/** From the uv of a mesh to its place in space. */
function placeInSpace(mesh: MeshData): (uv: number[]) => number[] {
  const places = new Float32Array(mesh.positions.length);
  for (let k = 0; k < mesh.uvs.length / 2; k++) places.set([nth(mesh.uvs, 2 * k), nth(mesh.uvs, 2 * k + 1), 0], 3 * k);
  const normals = Float32Array.from({ length: places.length }, (_, i) => (i % 3 === 2 ? 1 : 0));
  const flat = flatPiece({ positions: places, normals }, grainOf(mesh), [0, 1, 0], () => [1, 0, 0]);
  const least = [0, 1].map((c) => Math.min(...[...new Set(grainOf(mesh))].map((k) => nth(mesh.uvs, 2 * k + c))));
  return (uv) => flat.at(nth(uv, 0) - nth(least, 0), nth(uv, 1) - nth(least, 1), mesh.positions, 3);
}

/** The flat piece of the model file, and what its pictures show on it. */
async function modelOf(design: CoverDesign, { relief, mesh }: Shown) {
  const { bytes } = await foldedGlb([{ at: 1, parts: [mesh] }], {
    name: 'Placed',
    colours: coverColours(design.job),
    reliefs: [relief],
    reliefDepth: design.job.tooling.depth_mm,
  });
  const primitive = defined(
    (await readGlb(bytes))
      .getRoot()
      .listMeshes()
      .flatMap((each) => each.listPrimitives())
      .find((each) => each.getAttribute('TEXCOORD_1') !== null),
  );
  // What is stored as whole numbers is read as the numbers that it stands for.
  const numbers = (name: string): Float32Array => {
    const accessor = defined(primitive.getAttribute(name));
    return Float32Array.from(Array.from({ length: accessor.getCount() }, (_, i) => accessor.getElement(i, [])).flat());
  };
  const positions = numbers('POSITION').map((metre) => 1000 * metre);
  const triangles = Uint32Array.from(defined(defined(primitive.getIndices()).getArray()));
  const up: Vec3 = [0, 1, 0];
  const flat = flatPiece({ positions, normals: numbers('NORMAL') }, triangles, up, (out) => cross3(up, out));
  const places = numbers('TEXCOORD_1');
  const texturePlace = (place: Vec2): Vec2 => flat.at(...place, places, 2) as [number, number];
  const tone = channels(primitive, 'tone');
  const normals = channels(primitive, 'normals');
  return {
    flat,
    pressed: (place: Vec2): number => 1 - tone(0)(...texturePlace(place)) / 255,
    /** How far the normal leans in a direction of the piece. */
    tilt(place: Vec2, toward: Vec2): number {
      const [s, t] = texturePlace(place);
      const [s1, t1] = texturePlace([place[0] + 0.5 * toward[0], place[1] + 0.5 * toward[1]]);
      const length = Math.hypot(s1 - s, t1 - t);
      const [x, y] = [normals(0)(s, t), normals(1)(s, t)].map((value) => value / 127.5 - 1) as [number, number];
      const [width, height] = sizeOf(primitive);
      // Red leans along a row, green up a column; a row runs down.
      const [along, above] = [(s1 - s) * width, -(t1 - t) * height];
      return length === 0 ? 0 : (x * along + y * above) / Math.hypot(along, above);
    },
  };
}

const textureOf = (primitive: Primitive, kind: 'tone' | 'normals') => {
  const material = defined(primitive.getMaterial());
  return defined(kind === 'tone' ? material.getOcclusionTexture() : material.getNormalTexture());
};

const sizeOf = (primitive: Primitive): readonly [number, number] => defined(textureOf(primitive, 'tone').getSize());

/** The channels of a picture of a primitive's material, in texture coordinates: from the top left. */
function channels(primitive: Primitive, kind: 'tone' | 'normals') {
  const { width, height, data } = PNG.sync.read(Buffer.from(defined(textureOf(primitive, kind).getImage())));
  return (channel: number) => smoothed(width, height, (i, j) => nth(data, 4 * (j * width + i) + channel));
}
