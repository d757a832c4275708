import { expect, test } from 'vitest';
import type { CoverDesign } from '../../src/core/fold/coverDesign.ts';
import type { ToolingFace } from '../../src/core/job/toolingSchema.ts';
import type { Box2 } from '../../src/core/math/box2.ts';
import { flattened } from '../../src/core/math/contour.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { combine3, cross3, dot3, tripleAt, unit3, type Vec3 } from '../../src/core/math/vec3.ts';
import type { Layer } from '../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { foldedCover } from '../../src/core/solid/foldedCover.ts';
import type { FoldedCover, MeshData } from '../../src/core/solid/meshData.ts';
import { SIDES, type ToolingArea } from '../../src/core/tooling/toolingArea.ts';
import { toolingAreas } from '../../src/core/tooling/toolingAreas.ts';
import { flatLookup } from '../../src/output/glb/flatLookup.ts';
import { grainOf } from '../core/tooling/flatPiece.ts';
import { placements } from '../core/tooling/toolingJobs.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { proofSize } from './proofSize.ts';

/**
 * An oracle that knows of tooling only the areas to be judged: what is flat it takes from the triangles of the folded cover,
 * at thin and thick end; holes and edges from the pattern; what is seen of the front from how far the mesh reaches.
 */
const WANTED = proofSize(500, 16);

const COVERS = placements(WANTED).map(({ design }) => design);

/** Where a triangle leans by more than this from the middle of its face, the face is not flat there. */
const LEVEL = Math.cos((0.5 * Math.PI) / 180);

/** Places this near to the end of a flat part may fall on the first triangle of a bend, by rounding, mm. */
const INSET = 0.02;

/** The outside of a lined cover comes down a step where its lining ends; what that takes lets the fold begin so much earlier, mm. */
const liningShift = (lining: number): number => 0.3 * lining;

/** The last facet of the curve by which a pocket rises, which in its corners is twisted, mm. */
const FACET = 0.25;

/** Over thicker boards, mm, the pockets are drawn with a lean of up to 3 degrees from head to tail: they are not judged. */
const THICKEST_BOARD = 5;

/** Places over a box, its edges included. */
function placesIn({ x, y }: Box2, count = 7): Vec2[] {
  const steps = Array.from({ length: count }, (_, i) => i / (count - 1));
  return steps.flatMap((a) => steps.map((b): Vec2 => [x[0] + a * (x[1] - x[0]), y[0] + b * (y[1] - y[0])]));
}

const shrunk = ({ x, y }: Box2, by: number): Box2 => ({
  x: [x[0] + by, x[1] - by],
  y: [y[0] + by, y[1] - by],
});

/** The folded part that shows a face; the strap is not folded. */
function partOf(face: ToolingFace, { pieces }: CoverDesign): MeshData['part'] | null {
  if (face === 'strap') return null;
  if (pieces.pocket.count === 0) return 'outside';
  return face === 'frontPocket' || face === 'backPocket' ? face : 'outside';
}

/** The triangle of a folded part at a place of the piece as it is drawn: its place and normal in space. */
function surfaceOf(mesh: MeshData, width: number) {
  const triangles = grainOf(mesh);
  const find = flatLookup(mesh.uvs, triangles);
  return ([x, y]: Vec2): { readonly at: Vec3; readonly out: Vec3 } => {
    const { corners, shares } = defined(find(mesh.part === 'frontPocket' ? x : width - x, y));
    const [a, b, c] = corners.map((corner) => tripleAt(mesh.positions, corner)) as [Vec3, Vec3, Vec3];
    const at = combine3(combine3(a, shares[0], b, shares[1]), 1, c, shares[2]);
    return { at, out: unit3(cross3(combine3(b, 1, a, -1), combine3(c, 1, a, -1))) };
  };
}

/** Places along the lines of a layer of a piece, on the finished face. */
function marksOf(design: CoverDesign, area: ToolingArea, layer: Layer): Vec2[] {
  const piece = defined(patternDrawing(design).pieces.find(({ id }) => id === area.piece));
  const { pieces, made } = design;
  const [cut, finished] =
    area.piece === 'outside'
      ? [pieces.outside, made.outside]
      : [
          { width: pieces.pocket.width, height: pieces.outside.height },
          { width: made.pocket.width, height: made.outside.height },
        ];
  return piece.layers[layer].flatMap((entity) => {
    if (entity.kind !== 'path' && entity.kind !== 'line' && entity.kind !== 'arc') return [];
    return flattened(entity.kind === 'path' ? entity.segments : [entity], 0.02).map(([x, y]): Vec2 => {
      const place: Vec2 = [(x * finished.width) / cut.width, (y * finished.height) / cut.height];
      // The back pocket is cut by the pattern of the front one, turned half round.
      return area.face === 'backPocket' && area.piece === 'pocket'
        ? [finished.width - place[0], finished.height - place[1]]
        : place;
    });
  });
}

/** Where the outside comes down at the ends of its lining, which is laid in after tooling, it may lean. */
function isAtLiningEnd(cover: FoldedCover, at: Vec3, thickness: number): boolean {
  const lining = cover.parts.find(({ part }) => part === 'lining');
  if (lining === undefined) return false;
  const ends = [0, Math.max(...lining.uvs.filter((_, i) => i % 2 === 0))];
  const reach = 4 * thickness + 12;
  for (let k = 0; k < lining.positions.length / 3; k++) {
    if (!ends.some((end) => Math.abs(nth(lining.uvs, 2 * k) - end) < 1e-3)) continue;
    const [x, y] = tripleAt(lining.positions, k);
    if (Math.hypot(x - at[0], y - at[1]) < reach) return true;
  }
  return false;
}

/** The direction that most others are near to. */
function mostOf(directions: readonly Vec3[]): Vec3 {
  const near = directions.map((a) => directions.filter((b) => dot3(a, b) > LEVEL).length);
  return nth(directions, near.indexOf(Math.max(...near)));
}

/** What is wrong with the areas of a cover, in words. */
function faults(design: CoverDesign): string[] {
  const found: string[] = [];
  const areas = toolingAreas(design);
  for (const point of ['thin', 'thick'] as const) {
    const folded = (angle: number) => foldedCover(design, { kind: 'opening', angle }, point);
    const [closed, open] = [folded(0), folded(Math.PI)];
    for (const area of areas) {
      const part = partOf(area.face, design);
      if (part === null) continue;
      const isPocket = area.face === 'frontPocket' || area.face === 'backPocket';
      if (isPocket && design.job.book.boardThickness_mm > THICKEST_BOARD) continue;
      const cover = isPocket ? open : closed;
      const at = surfaceOf(defined(cover.parts.find((mesh) => mesh.part === part)), area.size[0]);
      const lining = isPocket ? 0 : (design.needs[point].leathers.lining?.thickness ?? 0);
      const middle = mostOf(placesIn(area.flat).map((place) => at(place).out));
      const beyond = placesIn(shrunk(area.flat, Math.max(isPocket ? FACET : INSET, liningShift(lining)))).filter(
        (place) => {
          const surface = at(place);
          if (isAtLiningEnd(cover, surface.at, lining)) return false;
          // Round its curve a spine leans, but neither toward head nor toward tail.
          return area.face === 'spine'
            ? Math.abs(surface.out[2]) > Math.sqrt(1 - LEVEL ** 2)
            : dot3(surface.out, middle) < LEVEL;
        },
      );
      if (beyond.length > 0)
        found.push(`${area.face} is not flat at ${beyond[0]} at the ${point} end, of ${JSON.stringify(area.flat)}`);
    }
  }
  for (const area of areas) {
    if (area.clear === null || partOf(area.face, design) === null) continue;
    const least = Math.min(...SIDES.map((side) => area.margins[side]));
    for (const layer of ['hole', 'cut'] as const) {
      const marks = marksOf(design, area, layer);
      for (const place of placesIn(area.clear)) {
        const near = Math.min(...marks.map(([x, y]) => Math.hypot(x - place[0], y - place[1])));
        if (near < least - INSET) found.push(`${area.face}: ${place} is ${near} mm from ${layer}, less than ${least}`);
      }
    }
    const { flat, clear, margins } = area;
    const kept = [clear.x[0] - flat.x[0], flat.x[1] - clear.x[1], clear.y[0] - flat.y[0], flat.y[1] - clear.y[1]];
    SIDES.forEach((side, i) => {
      if (nth(kept, i) < margins[side] - 1e-6) found.push(`${area.face} keeps ${nth(kept, i)} mm on the ${side}`);
    });
  }
  return found;
}

test(`${WANTED} covers: every place of an area is flat, and clear of hole, edge and bend, at thin and thick end`, () => {
  const found = COVERS.flatMap((design, i) => faults(design).map((fault) => `cover ${i}: ${fault}`));
  if (found.length > 0) console.log(found.slice(0, 40).join('\n'), found.length);
  expect(found).toEqual([]);
});

/** Over the end of a thicker lining, mm, the outside leans so far that what is seen of it depends on where the step is cut. */
const THICKEST = 2;

/** How far the centre lines of a board's face stand from the middle of what is seen of it; null where the cover stays open. */
function offMiddle(design: CoverDesign, face: 'front' | 'back'): Vec2 | null {
  const areas = toolingAreas(design);
  const [area, spine] = [face, 'spine'].map((name) => areas.find((each) => each.face === name));
  if (area === undefined || spine === undefined) return null;
  if ((design.needs.nominal.leathers.lining?.thickness ?? 0) > THICKEST) return null;
  const cover = foldedCover(design, { kind: 'opening', angle: 0 });
  if (cover.opening > 1e-6) return null;
  const mesh = defined(cover.parts.find(({ part }) => part === 'outside'));
  const [width] = area.size;
  const at = surfaceOf(mesh, width);
  const out = mostOf(placesIn(area.flat).map((place) => at(place).out));
  const [start, end] = area.flat.x.map((x) => at([x, area.size[1] / 2]).at) as [Vec3, Vec3];
  const across = unit3(cross3(out, [0, 0, 1]));
  const away = dot3(combine3(end, 1, start, -1), across) > 0 === (face === 'front') ? 1 : -1;
  const along = combine3(across, away, out, 0);
  const half = width - spine.centre[0];
  let [least, most] = [Infinity, -Infinity];
  for (let k = 0; k < mesh.positions.length / 3; k++) {
    // At head and tail a turned end bulges, and is trimmed.
    if (Math.abs(nth(mesh.uvs, 2 * k + 1) - area.size[1] / 2) > area.size[1] / 4) continue;
    const reach = dot3(tripleAt(mesh.positions, k), along);
    least = Math.min(least, reach);
    if (nth(mesh.uvs, 2 * k) < half === (face === 'front')) most = Math.max(most, reach);
  }
  const seen = dot3(at(area.centre).at, along);
  const heights = [0, area.size[1]].map((y) => at([area.centre[0], y]).at[2]);
  return [seen - (least + most) / 2, at(area.centre).at[2] - (nth(heights, 0) + nth(heights, 1)) / 2];
}

test(`${WANTED} covers: the centre lines of front and back cross in the middle of what is seen, within 0.1 mm`, () => {
  let [worst, compared] = [0, 0];
  const found: string[] = [];
  for (const [i, design] of COVERS.entries())
    for (const face of ['front', 'back'] as const) {
      const off = offMiddle(design, face);
      if (off === null) continue;
      compared++;
      worst = Math.max(worst, Math.hypot(...off));
      if (Math.hypot(...off) > 0.1) found.push(`cover ${i}, ${face}: ${off}`);
    }
  if (found.length > 0) console.log(found.join('\n'));
  console.log(`${compared} faces compared: worst ${worst.toFixed(4)} mm off the middle`);
  expect(found).toEqual([]);
  expect(compared).toBeGreaterThan(WANTED / 2);
});
