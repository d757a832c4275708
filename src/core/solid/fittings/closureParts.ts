import { ramp } from '../../film/ramp.ts';
import type { CoverDesign } from '../../fold/coverDesign.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { addScaled, dot, heading, leftOf, subtract, type Vec2 } from '../../math/vec2.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { SeamHole } from '../../pattern/seam.ts';
import type { FoldedHole, MeshData } from '../meshData.ts';
import { type BentPath, type BentPlace, bentPlaces } from './bentPath.ts';
import { buckleTabMesh, type TabLie, tabSheet } from './buckleTabMesh.ts';
import { type Closure, type ClosureHold, closureLie, closureOf, frontPlace } from './closurePath.ts';
import { fasteningMesh, frameLies, holeRadius } from './fastening.ts';
import { MAGNET } from './fasteningShape.ts';
import { foldedSolid, type SheetPlace } from './flatMesh.ts';
import type { Stand } from './metalSolid.ts';
import { alongLine, lineAt, type SectionLine } from './sectionLine.ts';
import { strapFlat } from './strapFlat.ts';

/** Where the closure is to be laid. */
export interface ClosurePlace extends ClosureHold {
  readonly line: SectionLine;
  /** z of the middle of the cover's height. */
  readonly middle: number;
  /** 0 beside the cover on the bench, 1 on it. */
  readonly fitted: number;
}

/** Shares of the fastening in which a buckle's frame is raised, before the strap comes, and comes down on it. Free choice. */
const RAISED = 0.2;
const FRAME_SHARE = 0.15;
/** What a free frame may lie on is so near to its bar, and looked at in such steps, mm. */
const NEAR = 60;
const STEP = 0.5;
/** Between cover and strap on the bench, mm. Free choice. */
const BESIDE = 20;

/** Strap or flap with its fastening, and the holes of the strap's own seam; nothing where the cover has none. */
export function closureParts(
  design: CoverDesign,
  point: RangePoint,
  place: ClosurePlace,
): { readonly parts: MeshData[]; readonly seam: FoldedHole[] } {
  const closure = closureOf(design, point);
  if (closure === null) return { parts: [], seam: [] };
  const { shape, strap, fastening } = closure;
  const isBuckle = shape.kind === 'buckle';
  const round = isBuckle ? Math.min(1, place.fastened / (1 - FRAME_SHARE)) : place.fastened;
  const { path, reach } = closureLie(closure, place.line, { ...place, fastened: round });
  const away = benchWay(closure, design, place);
  const sheet = sheetOn(closure, away, place.middle);
  const onFlesh = (at: number): Stand => {
    const { inner, out, alongX, alongY } = sheet(bentPlaces(path, [at])[0]!, strap.width / 2);
    return { at: inner, way: alongX, side: alongY, up: out };
  };
  const foot = frontPlace(closure, place.line, reach);
  const [wayX, wayY] = alongLine(foot);
  const front: Stand = {
    at: [...foot.grain, place.middle],
    way: [wayX, wayY, 0],
    side: [0, 0, 1],
    up: [...foot.out, 0],
  };
  const middle = closure.edges[0] + reach + closure.shape.beyond;
  const before = Array.from({ length: NEAR / STEP }, (_, k) => middle - k * STEP).filter((at) => at > closure.edges[0]);
  const under = before.map((at): Vec2 => {
    const from = subtract(lineAt(place.line, at).grain, foot.grain);
    return [dot(from, [wayX, wayY]), dot(from, foot.out)];
  });
  const work = {
    lies: isBuckle ? frameLies(closure, under) : 0,
    raised: Math.min(1, place.fastened / RAISED),
    shut: Math.max(0, (place.fastened + FRAME_SHARE - 1) / FRAME_SHARE),
  };
  const metal = fasteningMesh(closure, front, onFlesh(fastening), work);
  const flat = strapFlat(closure, holeRadius(closure, onFlesh(fastening), metal));
  const raised = new Set(flat.ring);
  const order = flat.points.map((_, i) => i).sort((a, b) => flat.points[a]![0] - flat.points[b]![0]);
  const places: BentPlace[] = [];
  bentPlaces(
    path,
    order.map((i) => flat.points[i]![0]),
  ).forEach((at, k) => {
    places[order[k]!] = at;
  });
  const mesh = foldedSolid(
    'strap',
    flat,
    ([, y], i) => {
      const laid = sheet(places[i]!, y);
      if (!raised.has(i)) return laid;
      const [x, up] = laid.out;
      return { ...laid, outer: [laid.outer[0] + x * MAGNET.rise, laid.outer[1] + up * MAGNET.rise, laid.outer[2]] };
    },
    { outer: 'grain', inner: 'flesh', edge: 'cutEdge' },
  );
  const seam = strapSeam(closure, design, path, sheet);
  if (closure.tab === null) return { parts: [mesh, metal], seam };
  return {
    parts: [mesh, metal, buckleTabMesh(closure.tab, front)],
    seam: [...seam, ...tabSeam(closure.tab, design, front)],
  };
}

type Sheet = (place: BentPlace, y: number) => SheetPlace;

/** Both faces of the strap at a place of its neutral line, `y` mm from its lower edge. */
function sheetOn({ strap, thickness, neutral }: Closure, [dx, dy, dz]: Vec3, middle: number): Sheet {
  return ({ at, heading: angle }, y) => {
    const along = heading(angle);
    const left = leftOf(along);
    const z = middle + y - strap.width / 2 + dz;
    const off = (by: number): Vec3 => {
      const [px, py] = addScaled(at, left, by);
      return [px + dx, py + dy, z];
    };
    return {
      outer: off(-(1 - neutral) * thickness),
      inner: off(neutral * thickness),
      out: [-left[0], -left[1], 0],
      alongX: [along[0], along[1], 0],
      alongY: [0, 0, 1],
    };
  };
}

/** How far the strap is from its place on its way from the bench: beside the head of the cover, then under it. */
function benchWay({ strap, thickness }: Closure, design: CoverDesign, { fitted, benchTurn }: ClosurePlace): Vec3 {
  if (fitted === 1) return [0, 0, 0];
  const up: Vec2 = [Math.sin(benchTurn), Math.cos(benchTurn)];
  const rise = thickness * (1 - ramp(fitted, 0, 0.2));
  const aside = (design.pieces.outside.height / 2 + BESIDE + strap.width / 2) * (1 - ramp(fitted, 0.2, 1));
  return [up[0] * rise, up[1] * rise, aside];
}

/** Holes of the strap's own seam on its grain side, row by row. */
function strapSeam(closure: Closure, design: CoverDesign, path: BentPath, sheet: Sheet): FoldedHole[] {
  const { strap, edges, anchor, thickness } = closure;
  const start = edges[1] - anchor;
  const low = design.pieces.outside.height / 2 - strap.width / 2;
  const { outside } = design.needs.nominal.leathers;
  return foldedHoles(strap.holes, thickness + outside.thickness, ([s, v]) =>
    sheet(bentPlaces(path, [s - start])[0]!, v - low),
  );
}

/** Holes of the tab of a buckle, on the grain side of its upper end. */
function tabSeam(lie: TabLie, design: CoverDesign, front: Stand): FoldedHole[] {
  const { holes } = lie.tab;
  const end = holes[0]!.at[0] + design.job.seam.edgeMargin_mm;
  const low = (design.pieces.outside.height - lie.tab.width) / 2;
  return foldedHoles(holes, 3 * lie.thickness, ([s, v]) => tabSheet(lie, front, [end - s])[0]!(v - low));
}

/** Holes row by row on the grain side of what they are in, the cut edge at the start of it. */
function foldedHoles(holes: readonly SeamHole[], stack: number, place: (at: Vec2) => SheetPlace): FoldedHole[] {
  return holes.map(({ at }, i): FoldedHole => {
    const { outer, out, alongX, alongY } = place(at);
    const next = holes[i + 1];
    const pitch = next === undefined || next.at[0] !== at[0] ? 0 : next.at[1] - at[1];
    const before = holes[i - 1];
    return {
      at: outer,
      along: alongY,
      out,
      edgeward: [-alongX[0], -alongX[1], -alongX[2]],
      pitch: pitch > 0 ? pitch : before !== undefined && before.at[0] === at[0] ? at[1] - before.at[1] : 0,
      stack,
    };
  });
}
