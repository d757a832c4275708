import { type Contour, flattened, type Segment } from '../math/contour.ts';
import type { Vec2 } from '../math/vec2.ts';
import type { Seam, SeamHole, SeamRow } from './seam.ts';

/** How far the chords of a corner may stray from it, mm. */
const SAGITTA = 0.01;

/**
 * A seam once the leather has changed its size: no hole is added, none is lost, each moves with the leather.
 * @param growth made over cut, in width and height
 */
export function madeSeam(seam: Seam, growth: Vec2): Seam {
  const [across, along] = growth;
  const moved = ([x, y]: Vec2): Vec2 => [x * across, y * along];
  // A corner that grows unlike in the two directions is no arc any more.
  const line = (contour: Contour): Contour => {
    const points = flattened(contour, SAGITTA).map(moved);
    return points.slice(1).map((to, i): Segment => ({ kind: 'line', from: points[i]!, to }));
  };
  const holes = new Map<SeamHole, SeamHole>();
  const hole = (each: SeamHole): SeamHole => {
    const known = holes.get(each);
    if (known !== undefined) return known;
    const [c, s] = moved([Math.cos(each.heading), Math.sin(each.heading)]);
    const made = { ...each, at: moved(each.at), heading: Math.atan2(s, c) };
    holes.set(each, made);
    return made;
  };
  const rows = seam.rows.map((row): SeamRow => {
    const by = row.side === 'tail' || row.side === 'head' ? across : along;
    return {
      ...row,
      length: row.length * by,
      pitch: row.pitch * by,
      ...(row.uneven && { uneven: { ...row.uneven, pitch: row.uneven.pitch * by } }),
      holes: row.holes.map(hole),
    };
  });
  return {
    ...seam,
    lines: seam.lines.map(line),
    rows,
    starts: seam.starts.map(hole),
    finishes: seam.finishes.map(hole),
    steps: seam.steps.map(({ layer, x }) => ({ layer, x: x * across })),
  };
}
