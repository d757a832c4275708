import type { CoverDesign } from '../fold/coverDesign.ts';
import { changeOf } from '../leather/changeOf.ts';
import { type Contour, flattened } from '../math/contour.ts';
import type { Vec2 } from '../math/vec2.ts';
import { outsideOutline } from '../pattern/outsideDrawing.ts';
import { pocketOutline } from '../pattern/pocketDrawing.ts';
import { holeShape, type PatternSource, turnAxis } from '../pattern/seam.ts';
import { seamHoles } from '../pattern/seamHoles.ts';
import { strapOf } from '../pattern/strap.ts';
import type { Bound, Obstacle } from './toolingArea.ts';

/** Room round a fastening, mm from its middle: half a snap or stud. Assumption. */
export const FASTENING = 6;

/** How far the chords of a rounded corner may stray from it, mm. */
const CORNER_SAGITTA = 0.05;

type ToFace = (cut: Vec2) => Vec2;

/** Half the size of a hole, or of a slit however it is turned, mm. */
const holeReach = ({ job }: PatternSource): number => holeShape(job).size / 2;

const around = ([x, y]: Vec2, reach: number, bound: Bound): Obstacle => ({
  bound,
  x: [x - reach, x + reach],
  y: [y - reach, y + reach],
});

/** Rounded or clipped corners; straight edges are beyond the board edge, and so beyond the area. */
const corners = (outline: Contour, toFace: ToFace): Obstacle[] =>
  outline.flatMap((segment) => {
    const isSlanted =
      segment.kind === 'arc' || (segment.from[0] !== segment.to[0] && segment.from[1] !== segment.to[1]);
    return isSlanted ? flattened([segment], CORNER_SAGITTA).map((point) => around(toFace(point), 0, 'corner')) : [];
  });

/** What lies on the outside: seam holes, those of turned ends too, corners, the strap on the back and its fastening. */
export function outsideObstacles(design: CoverDesign): Obstacle[] {
  const { width: across, height: along } = changeOf(design.job);
  const { width, height } = design.pieces.outside;
  const toFace: ToFace = ([x, y]) => [(width - x) * (1 + across), y * (1 + along)];
  const reach = holeReach(design);
  const holes = seamHoles(design).rows.flatMap((row) => row.holes);
  const seam = holes.map(({ at }) => around(toFace(at), reach, 'seam'));
  const outline =
    design.pieces.pocket.count === 0 ? [] : corners(outsideOutline(design), ([x, y]) => toFace([width - x, y]));
  const strap = strapOf(design);
  if (strap === null) return [...seam, ...outline];
  const edge = width - (design.pieces.pocket.count === 0 ? turnAxis(design) : 0);
  const middle = toFace([0, height / 2])[1];
  const y = [middle - strap.width / 2, middle + strap.width / 2] as const;
  const { reach_mm: fastened, end_mm: end } = design.job.construction.strap!;
  const [foreEdge] = toFace([width - edge, 0]);
  const tabEnd = (strap.tab?.holes.slice(0, 1) ?? []).map(
    ({ at }) => toFace([at[0] + design.job.seam.edgeMargin_mm, 0])[0],
  );
  return [
    ...seam,
    ...outline,
    { bound: 'strap', x: [toFace([edge, 0])[0], toFace([edge - strap.leaves, 0])[0]], y },
    // The closed strap hides the front from the fore-edge to its own end, or to that of the tab under it.
    { bound: 'strap', x: [Math.min(foreEdge - fastened - end, ...tabEnd), foreEdge], y },
  ];
}

/** What lies on each pocket. A turned end has the holes of the outside, mirrored in its fold. */
export function pocketObstacles(design: CoverDesign): Record<'frontPocket' | 'backPocket', Obstacle[]> {
  const { width: across, height: along } = changeOf(design.job);
  const { pieces } = design;
  const { width, height } = pieces.outside;
  const reach = holeReach(design);
  const holes = seamHoles(design).rows.flatMap((row) => row.holes);
  const made = ([x, y]: Vec2): Vec2 => [x * (1 + across), y * (1 + along)];
  if (pieces.pocket.count === 0) {
    const axis = turnAxis(design);
    const at = (fold: number) =>
      holes.map((hole) => around(made([width - (2 * fold - hole.at[0]), hole.at[1]]), reach, 'seam'));
    return { frontPocket: at(axis), backPocket: at(width - axis) };
  }
  const front = [
    ...holes.filter(({ layers }) => layers.includes('frontPocket')).map(({ at }) => around(made(at), reach, 'seam')),
    ...corners(pocketOutline(design), made),
  ];
  const size = made([pieces.pocket.width, height]);
  const turned = front.map(({ bound, x, y }) => ({
    bound,
    x: [size[0] - x[1], size[0] - x[0]] as const,
    y: [size[1] - y[1], size[1] - y[0]] as const,
  }));
  return { frontPocket: front, backPocket: turned };
}
