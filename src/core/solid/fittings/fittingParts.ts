import type { Movements } from '../../film/filmStep.ts';
import { ramp } from '../../film/ramp.ts';
import type { CoverDesign } from '../../fold/coverDesign.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { dot, type Vec2 } from '../../math/vec2.ts';
import type { CoverGrid } from '../coverGrid.ts';
import { coverSampler } from '../coverSampler.ts';
import type { FoldedHole, MeshData } from '../meshData.ts';
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
  /** Parts of the book; none while it is away. */
  readonly book: readonly MeshData[];
}

/** Fittings of one position as solids, and the holes of the strap's own seam. */
export interface Fittings {
  readonly parts: readonly MeshData[];
  readonly strapSeam: readonly FoldedHole[];
}

/** Over so much of an opening a strap comes off its fastening, radians: it does not stretch. Free choice. */
const LET_GO = 0.02;

/**
 * Strap or flap with its fastening, pen loop and ribbons of a cover, in one position.
 *
 * Every piece keeps the length it is cut to. A strap is fastened at the smallest opening alone.
 */
export function fittingParts(
  design: CoverDesign,
  point: RangePoint,
  { grid, opening, least, benchTurn, book }: FittingPlace,
  { fitted, fastened }: Pick<Movements, 'fitted' | 'fastened'>,
): Fittings {
  const isClosed = least === null ? 0 : 1 - ramp(opening, least, least + LET_GO);
  const middle = coverSampler(grid)(grid.front.length, design.pieces.outside.height / 2).at[2];
  const line = lineOfGrid(grid);
  const closure = closureParts(design, point, {
    line,
    middle,
    benchTurn,
    fitted,
    fastened: fastened * isClosed,
  });
  const up: Vec2 = [Math.sin(benchTurn), Math.cos(benchTurn)];
  const level = Math.min(...line.map(({ grain }) => dot(grain, up)));
  const loop = penLoopMesh(design, point, coverSampler(grid, 'inner'), 1 - ramp(fitted, 0.2, 1), { up, level });
  const leaves = book.find(({ part }) => part === 'leaves');
  const ribbons = leaves === undefined ? null : ribbonsMesh(design, leaves, { up, level });
  const others = [loop, ribbons].filter((mesh) => mesh !== null);
  return { parts: [...closure.parts, ...others], strapSeam: closure.seam };
}
