import { SVGPathData, SVGPathDataParser } from 'svg-pathdata';
import type { Vec2 } from '../../core/index.ts';
import { type Matrix, mapped } from './matrix.ts';

/** A stretch of a path after its start: the end of each line, or both handles and the end of each Bezier curve. */
export interface Subpath {
  readonly start: Vec2;
  readonly steps: readonly (readonly Vec2[])[];
}

/** Path data as lines and curves. */
export interface Path {
  readonly subpaths: readonly Subpath[];
  /** Whether it breaks off at something that is no path data. */
  readonly isBroken: boolean;
  /** Whether it is left out for a number that is too large. */
  readonly isHuge: boolean;
}

/**
 * Reads path data up to its first mistake, as SVG asks (1.1, F.2). Arcs become cubic curves of a quarter turn at most, which
 * stray from the arc by 0.03 % of its radius.
 */
export function readPath(data: string): Path {
  const parser = new SVGPathDataParser();
  const commands: SVGPathData['commands'] = [];
  let isBroken = false;
  try {
    parser.parse(data, commands);
    parser.finish(commands);
  } catch {
    isBroken = true;
  }
  const isHuge = commands.some((command) => Object.values(command).some((value) => Math.abs(Number(value)) > LARGEST));
  return { subpaths: isHuge ? [] : subpathsOf(commands), isBroken, isHuge };
}

function subpathsOf(commands: SVGPathData['commands']): Subpath[] {
  const subpaths: { start: Vec2; steps: Vec2[][] }[] = [];
  for (const command of new SVGPathData(commands).toAbs().normalizeHVZ().normalizeST().aToC().commands) {
    if (command.type === SVGPathData.MOVE_TO) subpaths.push({ start: [command.x, command.y], steps: [] });
    const steps = subpaths.at(-1)?.steps;
    if (command.type === SVGPathData.LINE_TO) steps?.push([[command.x, command.y]]);
    else if (command.type === SVGPathData.QUAD_TO)
      steps?.push([
        [command.x1, command.y1],
        [command.x, command.y],
      ]);
    else if (command.type === SVGPathData.CURVE_TO)
      steps?.push([
        [command.x1, command.y1],
        [command.x2, command.y2],
        [command.x, command.y],
      ]);
  }
  return subpaths.filter(({ steps }) => steps.length > 0);
}

/** Largest coordinate that is drawn, units of the file. */
const LARGEST = 1e9;

/** Whether all coordinates are numbers of a size that can be drawn. */
export const isDrawable = ({ start, steps }: Subpath): boolean =>
  isNear(start) && steps.every((step) => step.every(isNear));

const isNear = ([x, y]: Vec2): boolean => Math.abs(x) <= LARGEST && Math.abs(y) <= LARGEST;

export const mappedSubpath = ({ start, steps }: Subpath, matrix: Matrix): Subpath => ({
  start: mapped(matrix, start),
  steps: steps.map((step) => step.map((point) => mapped(matrix, point))),
});

/** A subpath led back to its start, unless it ends there or is a single line, which has no area. */
export function closedSubpath({ start, steps }: Subpath): Subpath {
  const end = steps.at(-1)?.at(-1);
  const hasArea = steps.length > 1 || steps[0]!.length > 1;
  const isOpen = end !== undefined && (end[0] !== start[0] || end[1] !== start[1]);
  return { start, steps: hasArea && isOpen ? [...steps, [start]] : steps };
}
