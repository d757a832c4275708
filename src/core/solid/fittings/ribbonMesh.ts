import type { CoverDesign } from '../../fold/coverDesign.ts';
import { addScaled, dot, heading, leftOf, subtract, type Vec2 } from '../../math/vec2.ts';
import { combine3, dot3, unit3, type Vec3 } from '../../math/vec3.ts';
import { ribbonOf } from '../../pattern/ribbon.ts';
import { gridNormals, gridOf, gridSolid } from '../gridSolid.ts';
import type { MeshData } from '../meshData.ts';
import { lastPage, type PagePlace } from '../pagesMesh.ts';
import type { BookPlace } from '../standing.ts';
import { joined } from './joinedMeshes.ts';

/** Width of a marker ribbon, and how far apart two lie, mm. Common practice, no source. */
const WIDTH = 6;
const APART = 7.5;
/** Places across it, as shares of its width: it follows the curve of the page into the gutter. */
const ROW = [-0.5, -0.3, -0.1, 0.1, 0.3, 0.5] as const;
/** Satin is drawn so thick, and lies so far over an open page, mm: between closed pages it is pressed flat. */
const THICK = 0.03;
const OVER = 0.15;
/** Columns along the ribbon, mm. */
const STEP = 2.5;
/** Radius on which its tail bends down, mm, and how steeply it hangs at most, radians. How satin hangs, judged by eye. */
const DROOP = 12;
const STEEPEST = 1.35;

/** Where the bench is: direction up from it, and its height along that, mm. */
export interface BenchLevel {
  readonly up: Vec2;
  readonly level: number;
}

/**
 * Marker ribbons: from the head of the gutter over the open page of the back half, out at the tail near the far corner, and
 * down. The fixed end is out of sight in the spine and is not drawn; what is drawn is as long as the rest of the ribbon.
 * @param leaves the leaves of the book, as they stand
 * @param place where the book is
 */
export function ribbonsMesh(
  design: CoverDesign,
  leaves: MeshData,
  place: BookPlace,
  bench: BenchLevel,
): MeshData | null {
  const cut = ribbonOf(design);
  const { ribbon } = design.job.construction;
  if (cut === null || ribbon === null) return null;
  const page = lastPage(leaves);
  const { height, square } = design.needs.nominal.book;
  const half = height / 2 - square;
  const width = page.at(-1)!.along;
  const strips = Array.from({ length: cut.count }, (_, k) => {
    const from = Math.min(width / 3, 1 + WIDTH / 2 + APART * k);
    const to = Math.max(from, width - WIDTH / 2 - 1 - APART * (cut.count - 1 - k));
    const straight = (design.pieces.outside.height / 2 - half + 3) * (Math.hypot(to - from, 2 * half) / (2 * half));
    return strip(
      ribbonLine([from, half], [to, -half], cut.sum.total - ribbon.fixed_mm, straight, page, middleOf(place), bench),
    );
  });
  return joined('ribbons', strips);
}

/** A place of the ribbon's middle, the direction across it, and points across it, all on the page where they are over it. */
interface RibbonPlace {
  readonly at: Vec3;
  readonly across: Vec3;
  readonly row: readonly Vec3[];
}

/** Distance from the book's middle plane. */
type FromMiddle = (at: Vec2) => number;

const middleOf =
  ({ turn, shift }: BookPlace): FromMiddle =>
  (at) =>
    Math.abs(dot(subtract(at, shift), leftOf(heading(turn))));

function ribbonLine(
  from: Vec2,
  to: Vec2,
  length: number,
  straight: number,
  page: readonly PagePlace[],
  fromMiddle: FromMiddle,
  { up, level }: BenchLevel,
): RibbonPlace[] {
  const way = subtract(to, from);
  const onPage = Math.min(length, Math.hypot(...way));
  const along: Vec2 = [way[0] / Math.hypot(...way), way[1] / Math.hypot(...way)];
  const beside = leftOf(along);
  const flatTo = Math.min(length, onPage + straight);
  const flat = Math.max(1, Math.ceil(flatTo / STEP));
  const places = Array.from({ length: flat + 1 }, (_, i): RibbonPlace => {
    const at = addScaled(from, along, (flatTo * i) / flat);
    const row = ROW.map((share) => overPage(page, fromMiddle, addScaled(at, beside, share * WIDTH)));
    return { at: overPage(page, fromMiddle, at), across: unit3(combine3(row.at(-1)!, 1, row[0]!, -1)), row };
  });
  // Beyond the cover it hangs: the direction turns down, and level again where it comes to the bench.
  const last = places.at(-1)!;
  const before = places.at(-2)!;
  const out = unit3(combine3(last.at, 1, before.at, -1));
  const down: Vec3 = [-up[0], -up[1], 0];
  const level3 = unit3(combine3(out, 1, down, -dot3(out, down)));
  let angle = Math.asin(Math.max(-1, Math.min(1, dot3(out, down))));
  let at = last.at;
  const rest = length - flatTo;
  const count = Math.ceil(rest / STEP);
  for (let i = 0; i < count; i++) {
    const above = dot([at[0], at[1]], up) - level;
    const landing = Math.acos(Math.max(-1, Math.min(1, 1 - Math.max(0, above - 0.2) / DROOP)));
    angle = Math.min(angle + rest / count / DROOP, STEEPEST, landing);
    at = combine3(at, 1, combine3(level3, Math.cos(angle), down, Math.sin(angle)), rest / count);
    const [{ across }, middle] = [last, at];
    places.push({ at, across, row: ROW.map((share) => combine3(middle, 1, across, share * WIDTH)) });
  }
  return places;
}

/** A place of the page's plane, mm from the gutter and over the middle of its height, on the page or straight on from it. */
function overPage(page: readonly PagePlace[], fromMiddle: FromMiddle, [along, z]: Vec2): Vec3 {
  const next = Math.max(
    1,
    page.findIndex((place, i) => i > 0 && place.along >= along),
  );
  const index = along > page.at(-1)!.along ? page.length - 1 : next;
  const [a, b] = [page[index - 1]!, page[index]!];
  const step = subtract(b.at, a.at);
  const size = Math.hypot(...step);
  const unit: Vec2 = [step[0] / size, step[1] / size];
  const at = addScaled(a.at, unit, along - a.along);
  // Two open pages are mirror images of each other: between them there is room for the ribbon or not.
  const over = Math.min(OVER, 0.4 * fromMiddle(at));
  const [x, y] = addScaled(at, leftOf(unit), over);
  return [x, y, z];
}

function strip(places: readonly RibbonPlace[]): MeshData {
  const middle = gridOf(places.length, ROW.length);
  const uvs = new Float64Array(2 * ROW.length * places.length);
  let along = 0;
  places.forEach(({ at, row }, i) => {
    along += i === 0 ? 0 : Math.hypot(...combine3(at, 1, places[i - 1]!.at, -1));
    middle.points.set(row.flat(), 3 * ROW.length * i);
    uvs.set(
      ROW.flatMap((share) => [along, (share + 0.5) * WIDTH]),
      2 * ROW.length * i,
    );
  });
  const normals = gridNormals(middle);
  const [outer, inner] = [0.5, -0.5].map((share) => {
    const grid = gridOf(places.length, ROW.length);
    grid.points.set(middle.points.map((value, k) => value + share * THICK * normals[k]!));
    return grid;
  }) as [typeof middle, typeof middle];
  return gridSolid({
    part: 'ribbons',
    outer,
    inner,
    normals,
    uvs,
    faces: { outer: 'ribbon', inner: 'ribbon', edge: 'ribbon' },
  });
}
