import { addScaled, heading, leftOf, type Vec2 } from '../../math/vec2.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { BUCKLE, type BuckleTab, tabFold } from '../../pattern/buckleTab.ts';
import type { MeshData } from '../meshData.ts';
import { type BentPath, bentLength, bentPlaces } from './bentPath.ts';
import { type FlatMesh, foldedSolid, type SheetPlace } from './flatMesh.ts';
import { onStand, type Stand } from './metalSolid.ts';

/** Between the tab and what it lies on, its own lower end too, mm. */
const CLEAR = 0.03;
/** Turn of a facet, radians (6 degrees), and length of a column where nothing bends, mm. */
const FACET = Math.PI / 30;
const STRAIGHT = 8;

/** Height of a buckle's bar, and of the tab's grain side over it, above what the tab is sewn to, mm. */
export const barHeight = (thickness: number): number => 2 * CLEAR + thickness + BUCKLE.wire;
export const tabHeight = (thickness: number): number => barHeight(thickness) + BUCKLE.wire + CLEAR + thickness;

/** Radius of the tab's grain side about the bar, mm. */
export const roundOfTab = ({ thickness }: Pick<TabLie, 'thickness'>): number => BUCKLE.wire + CLEAR + thickness;

/** A tab as it lies: from its upper end over the bar to its lower end, in millimetres of the made piece. */
export interface TabLie {
  readonly tab: BuckleTab;
  /** Across from the fastening, up from the front. */
  readonly path: BentPath;
  readonly length: number;
  readonly thickness: number;
  readonly neutral: number;
}

/** Lays a tab over the bar: what its length has over at the middle of its fold is at its lower end. */
export function tabLie(tab: BuckleTab, length: number, thickness: number, neutral: number): TabLie {
  const fold = tabFold(thickness, neutral);
  const radius = fold.radius + CLEAR;
  const low = barHeight(thickness) - radius;
  const upper: Vec2 = [tab.toBar + fold.across + tab.sewn, low + 2 * neutral * thickness + CLEAR];
  // Both bends lower the sheet by R (1 - cos w), the slope between them by the rest.
  const drop = barHeight(thickness) + radius - upper[1] - 2 * radius * (1 - Math.cos(fold.slope));
  const straight = drop / Math.sin(fold.slope);
  const across = 2 * radius * Math.sin(fold.slope) + straight * Math.cos(fold.slope);
  const pieces = [
    { length: upper[0] - tab.toBar - across, turn: 0 },
    { length: radius * fold.slope, turn: -fold.slope },
    { length: straight, turn: 0 },
    { length: radius * (Math.PI + fold.slope), turn: Math.PI + fold.slope },
  ];
  const path: BentPath = { start: upper, heading: Math.PI, pieces };
  return { tab, path, length: Math.max(length, bentLength(path) + 1), thickness, neutral };
}

/** Both faces of the tab at places of its length, `y` mm from its lower edge, on the front. */
export function tabSheet({ tab, path, thickness, neutral }: TabLie, front: Stand, at: readonly number[]) {
  return bentPlaces(path, at).map(({ at: middle, heading: angle }) => (y: number): SheetPlace => {
    const along = heading(angle);
    const left = leftOf(along);
    const way = ([u, v]: Vec2): Vec3 => onStand({ ...front, at: [0, 0, 0] }, [u, 0, v]);
    const off = (by: number): Vec3 => {
      const [u, v] = addScaled(middle, left, by);
      return onStand(front, [u, tab.width / 2 - y, v]);
    };
    return {
      outer: off(-(1 - neutral) * thickness),
      inner: off(neutral * thickness),
      out: way([-left[0], -left[1]]),
      alongX: way(along),
      alongY: [-front.side[0], -front.side[1], -front.side[2]],
    };
  });
}

/** The tab on the front, round the bar of its buckle. */
export function buckleTabMesh(lie: TabLie, front: Stand): MeshData {
  const { flat, columns } = tabFlat(lie);
  const sheet = tabSheet(lie, front, columns);
  const index = new Map(columns.map((x, i) => [x, i]));
  return foldedSolid('buckleTab', flat, ([x, y]) => sheet[index.get(x)!]!(y), {
    outer: 'grain',
    inner: 'flesh',
    edge: 'cutEdge',
  });
}

/** The tab cut flat, with its slot; the slot's round ends are taken as square. */
function tabFlat({ tab, path, length }: TabLie): { readonly flat: FlatMesh; readonly columns: readonly number[] } {
  const { width, slot } = tab;
  const [from, to] = [slot.middle - slot.length / 2, slot.middle + slot.length / 2];
  const stops = [0, from, to, length];
  let begun = 0;
  for (const piece of path.pieces) {
    const count = Math.max(1, Math.ceil(Math.max(Math.abs(piece.turn) / FACET, piece.length / STRAIGHT)));
    for (let i = 1; i <= count; i++) stops.push(begun + (piece.length * i) / count);
    begun += piece.length;
  }
  const columns = stops.sort((a, b) => a - b).filter((at, i, all) => i === 0 || at - all[i - 1]! > 1e-6);
  const rows = [0, (width - slot.width) / 2, (width + slot.width) / 2, width];
  const [first, last] = [columns.indexOf(from), columns.indexOf(to)];
  const points = columns.flatMap((x) => rows.map((y): Vec2 => [x, y]));
  const at = (i: number, k: number): number => rows.length * i + k;
  const triangles: number[] = [];
  for (let i = 0; i + 1 < columns.length; i++)
    for (let k = 0; k + 1 < rows.length; k++) {
      if (k === 1 && i >= first && i < last) continue;
      triangles.push(at(i, k), at(i + 1, k), at(i + 1, k + 1), at(i, k), at(i + 1, k + 1), at(i, k + 1));
    }
  const run = (low: number, high: number): number[] => Array.from({ length: high - low + 1 }, (_, i) => low + i);
  const outline = [
    ...run(0, columns.length - 1).map((i) => at(i, 0)),
    ...[1, 2].map((k) => at(columns.length - 1, k)),
    ...run(0, columns.length - 1).map((i) => at(columns.length - 1 - i, 3)),
    ...[2, 1].map((k) => at(0, k)),
  ];
  const hole = [
    ...run(first, last).map((i) => at(i, 1)),
    ...run(first, last)
      .reverse()
      .map((i) => at(i, 2)),
  ];
  return { flat: { points, triangles, loops: [outline, hole.reverse()] }, columns };
}
