import { EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import { type Contour, flattened, type Segment } from '../core/math/contour.ts';
import type { Vec2 } from '../core/math/vec2.ts';
import { type Entity, type PieceDrawing, path } from '../core/pattern/drawing.ts';

/** Arcs of an offset outline are chords that stray by at most this, mm. */
const CHORD_TOLERANCE = 0.001;

/** Decimals of a mm kept by the polygon library, which counts in whole numbers. */
const DECIMALS = 5;

/** Smallest circle that is still sent to the machine, mm radius: where the beam alone makes the hole. */
const LEAST_HOLE = 0.05;

/**
 * Moves a closed outline outward by `distance`, mm; corners stay sharp (mitred), arcs become short chords.
 * @param distance 0 or more
 */
function offsetOutline(outline: Contour, distance: number): Segment[] {
  const points = flattened(outline, CHORD_TOLERANCE).slice(0, -1);
  const polygon = points.map(([x, y]) => ({ x, y }));
  const [ring = []] = inflatePathsD([polygon], distance, JoinType.Miter, EndType.Polygon, 4, DECIMALS);
  const at = (i: number): Vec2 => [ring[i % ring.length]!.x, ring[i % ring.length]!.y];
  return ring.map((_, i) => ({ kind: 'line', from: at(i), to: at(i + 1) }));
}

/**
 * The piece as the beam must travel so that the piece, not the path, has its size: cut edge half a kerf out, stitching
 * holes half a kerf in. Slits are one pass of the beam and stay.
 * @param kerf width that the beam burns away, mm, 0 to 2; 0 leaves the piece and its arcs as they are
 */
export function kerfed(piece: PieceDrawing, kerf: number): PieceDrawing {
  if (!(kerf >= 0 && kerf <= 2))
    throw new RangeError(`Got a kerf of ${kerf} mm; allowed: 0 to 2 mm. Measure a slit that the laser has cut.`);
  if (kerf === 0) return piece;
  const hole = (entity: Entity): Entity =>
    entity.kind === 'arc' ? { ...entity, radius: Math.max(LEAST_HOLE, entity.radius - kerf / 2) } : entity;
  const outline = offsetOutline(piece.outline, kerf / 2);
  return {
    ...piece,
    outline,
    layers: { ...piece.layers, cut: [path(outline, true)], hole: piece.layers.hole.map(hole) },
  };
}
