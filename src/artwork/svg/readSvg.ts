import { type Box2, reachOf, type Vec2 } from '../../core/index.ts';
import { flattened } from '../flattened.ts';
import { clipped } from '../lines/clipped.ts';
import { FINEST, type GridLines, gridLines } from '../lines/gridLines.ts';
import { count, Refusal } from '../refusal.ts';
import { LeftOut } from './leftOut.ts';
import { scaling } from './matrix.ts';
import { mappedSubpath, type Subpath } from './subpaths.ts';
import { svgLines } from './svgLines.ts';
import { type SvgTree, svgTree } from './svgTree.ts';
import { fitted, lengthOf, realLength, type ViewBox } from './viewBox.ts';

/** Points before simplifying; more would take long and be thrown away. */
const MOST_POINTS = 400_000;

/** Curves are flattened four times as finely as lines are thinned, so that nearly all of the tolerance is for thinning. */
const FLATNESS = FINEST[0] / 4;

export interface SvgArtwork extends GridLines {
  /** How wide the lines are by the file itself, mm; null where it gives no real unit. */
  readonly width_mm: number | null;
  readonly leftOut: readonly string[];
}

/**
 * The lines of an SVG: of paths and basic shapes, in groups, symbols and local references, with their transforms. The edge of a
 * filled shape and the middle of a stroke are lines alike. What does not show (hidden, transparent, off the page) and all that
 * is no line is left out.
 *
 * @throws Refusal where it is no SVG, is too large, or shows no line
 */
export function readSvg(text: string): SvgArtwork {
  const leftOut = new LeftOut();
  const tree = svgTree(text, leftOut);
  const stretch = scaling(1, stretchOf(tree));
  const paths = svgLines(tree, leftOut).map((path) => mappedSubpath(path, stretch));
  const port = tree.port && portBounds(tree.port, stretch[3]);
  const lines = polylinesOf(paths, port).flatMap((line) => (port ? clipped(line, port) : [line]));
  const grid = gridLines(lines);
  const across = reachOf(lines)!.x;
  const perUnit = tree.port && unitLength(tree, tree.port);
  return {
    ...grid,
    width_mm: perUnit === undefined ? null : (across[1] - across[0]) * perUnit,
    leftOut: leftOut.words(),
  };
}

/** How much the page is stretched in height over width: 1 unless its aspect is not preserved. */
function stretchOf({ port, size }: SvgTree): number {
  if (port === undefined || !/^\s*none/.test(size.aspect)) return 1;
  const [width, height] = [lengthOf(size.width, 0) ?? 0, lengthOf(size.height, 0) ?? 0];
  if (!(width > 0 && height > 0)) return 1;
  const [across, , , down] = fitted(port, { x: 0, y: 0, width, height }, 'none');
  return down / across;
}

const portBounds = ({ x, y, width, height }: ViewBox, stretch: number): Box2 => ({
  x: [x, x + width],
  y: [y * stretch, (y + height) * stretch],
});

/** mm in a unit of the view box, across. */
function unitLength({ size }: SvgTree, port: ViewBox): number | undefined {
  const [width, height] = [realLength(size.width), realLength(size.height)];
  if (width !== undefined && width > 0) return width / port.width;
  return height !== undefined && height > 0 ? height / port.height : undefined;
}

/** Lines and curves as polylines, the curves as fine as the part of the drawing that shows is large. */
function polylinesOf(paths: readonly Subpath[], port: Box2 | undefined): Vec2[][] {
  const reach = reachOf(paths.map(({ start, steps }) => [start, ...steps.flat()]));
  const side = reach === null ? 0 : Math.max(sideOf(reach.x, port?.x), sideOf(reach.y, port?.y));
  // Where nothing shows, a chord will do.
  const tolerance = side > 0 ? side * FLATNESS : Number.POSITIVE_INFINITY;
  let points = 0;
  return paths.map(({ start, steps }) => {
    const line = [start];
    for (const step of steps) {
      const last = line.at(-1)!;
      line.push(...(step.length === 1 ? step : flattened([last, ...step], tolerance)));
      if (points + line.length > MOST_POINTS)
        throw new Refusal(
          'too_large',
          `has over ${count(MOST_POINTS)} points before it is simplified`,
          `at most ${count(MOST_POINTS)}`,
          'simplify its paths in the drawing program, then open it again',
        );
    }
    points += line.length;
    return line;
  });
}

const sideOf = ([from, to]: Box2['x'], shown: Box2['x'] = [from, to]): number =>
  Math.min(to, shown[1]) - Math.max(from, shown[0]);
