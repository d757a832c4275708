import type { Movements } from '../../film/filmStep.ts';
import { ramp } from '../../film/ramp.ts';
import type { CoverDesign } from '../../fold/coverDesign.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { dot, type Vec2 } from '../../math/vec2.ts';
import type { CoverGrid } from '../coverGrid.ts';
import { coverSampler } from '../coverSampler.ts';
import type { FoldedHole, MeshData } from '../meshData.ts';
import type { BookPlace } from '../standing.ts';
import { closureParts } from './closureParts.ts';
import { penLoopMesh } from './penLoopMesh.ts';
import { ribbonsMesh } from './ribbonMesh.ts';
import { lineOfGrid } from './sectionLine.ts';

/** The cover that fittings are put on, as it lies. */
export interface FittingPlace {
  readonly grid: CoverGrid;
  /** Opening shown, and the smallest that the cover has; null where the boards do not go in. Radians. */
  readonly opening: number;
  readonly least: number | null;
  /** Turn that brings the assembly to the bench, radians. */
  readonly benchTurn: number;
  /** Parts of the book, none while it is away, and where it is. */
  readonly book: readonly MeshData[];
  readonly bookPlace: BookPlace;
}

/** Fittings of one position as solids, and the holes of the strap's own seam. */
export interface Fittings {
  readonly parts: readonly MeshData[];
  readonly strapSeam: readonly FoldedHole[];
}

/** Over so much of an opening a strap comes off its fastening, radians: it does not stretch. Free choice. */
const LET_GO = 0.02;
/** Share of the joining from which no pocket or end lies on the strap: `coverParts` has them above it, or folded. */
const UNCOVERED = 0.8;
/** Share of the seam over which the strap is raised to work under it: the seam starts at the tail, away from it. Free choice. */
const RAISED = 0.01;

/**
 * Strap or flap with its fastening, pen loop and ribbons of a cover, in one position.
 *
 * Every piece keeps the length it is cut to. A strap is fastened at the smallest opening alone.
 */
export function fittingParts(
  design: CoverDesign,
  point: RangePoint,
  { grid, opening, least, benchTurn, book, bookPlace }: FittingPlace,
  { fitted, joined, sewn, fastened }: Pick<Movements, 'fitted' | 'joined' | 'sewn' | 'fastened'>,
): Fittings {
  const isClosed = least === null ? 0 : 1 - ramp(opening, least, least + LET_GO);
  const { height } = design.pieces.outside;
  const middle = coverSampler(grid)(grid.front.length, height / 2).at[2];
  const width = design.job.construction.strap?.width_mm ?? 0;
  const line = lineOfGrid(grid, [(height - width) / 2, (height + width) / 2]);
  const closure = closureParts(design, point, {
    line,
    middle,
    benchTurn,
    covered: 1 - ramp(joined, UNCOVERED, 1),
    fitted,
    raised: ramp(sewn, 0, RAISED),
    fastened: fastened * isClosed,
    board: cornersOf(book.find(({ part }) => part === 'backBoard')),
  });
  const up: Vec2 = [Math.sin(benchTurn), Math.cos(benchTurn)];
  // The cover lies on what is lowest: on its grain side, or on a stud.
  const level = Math.min(...line.map(({ grain }) => dot(grain, up)), ...closure.parts.map((mesh) => lowest(mesh, up)));
  const loop = penLoopMesh(design, point, grid, 1 - ramp(fitted, 0.2, 1), { up, level });
  const leaves = book.find(({ part }) => part === 'leaves');
  const ribbons = leaves === undefined ? null : ribbonsMesh(design, leaves, bookPlace, { up, level });
  const others = [loop, ribbons].filter((mesh) => mesh !== null);
  return { parts: [...closure.parts, ...others], strapSeam: closure.seam };
}

/** Places of a part in section. */
function cornersOf(mesh: MeshData | undefined): Vec2[] {
  const { positions } = mesh ?? { positions: [] };
  return Array.from({ length: positions.length / 3 }, (_, i): Vec2 => [positions[3 * i]!, positions[3 * i + 1]!]);
}

function lowest({ positions }: MeshData, [x, y]: Vec2): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < positions.length; k += 3) least = Math.min(least, x * positions[k]! + y * positions[k + 1]!);
  return least;
}
