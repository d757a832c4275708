import type { Vector3 } from 'three';
import type { Edge, FitMark } from '../../../core/index.ts';
import type { IsHidden } from '../geometry/occlusion.ts';
import type { Pixel } from './placeLabels.ts';
import { type View, vector } from './view.ts';

/** A place on an edge of a board: `at` 0 at the tail or the spine, 1 at the head or the fore-edge. */
export interface EdgePlace {
  readonly edge: Edge;
  readonly at: number;
}

/** The place of an edge that is nearest to the pointer, and where it is in the picture, CSS px. */
export interface EdgeHit extends EdgePlace {
  readonly x: number;
  readonly y: number;
}

/** A straight edge of a board, with the shares of the whole edge at its ends. */
interface EdgeLine {
  readonly edge: Edge;
  readonly ends: readonly [Vector3, Vector3];
  readonly out: Vector3;
  readonly span: readonly [from: number, to: number];
}

/** The edges in the order of the marks: head and tail of the front board before those of the back one. */
export const edgeLines = (marks: readonly FitMark[]): EdgeLine[] =>
  marks.flatMap(({ edge, out, band }) => {
    if (!band || edge === 'spine' || edge === 'gape' || edge === 'frontBoard' || edge === 'backBoard') return [];
    const onEdge = band.across.indexOf(0);
    const ends = [band.rungs[0]![onEdge]!, band.rungs.at(-1)![onEdge]!].map(vector) as [Vector3, Vector3];
    return [{ edge, ends, out: vector(out), span: band.span }];
  });

const placeOn = ({ ends: [a, b] }: EdgeLine, share: number): Vector3 => a.clone().lerp(b, share);

/** Pieces that an edge is taken in to find the nearest place; each is straight and even enough in the picture. */
const PIECES = 32;

/** The nearest place within `reach` px of a point of the picture that is not hidden; null where there is none. */
export function nearestOnEdges(
  lines: readonly EdgeLine[],
  [x, y]: Pixel,
  reach: number,
  view: View,
  isHidden: IsHidden,
): EdgeHit | null {
  const near = lines
    .flatMap((line) => {
      const [from, to] = line.span;
      const found = nearestOn(line, [x, y], view);
      return found.away <= reach ? [{ ...found, line, at: from + (to - from) * found.share }] : [];
    })
    .sort((a, b) => a.away - b.away);
  const seen = near.find(({ line, share }) => !isHidden(placeOn(line, share), line.out, view.eye));
  return seen ? { edge: seen.line.edge, at: seen.at, x: seen.pixel[0], y: seen.pixel[1] } : null;
}

function nearestOn(line: EdgeLine, [x, y]: Pixel, view: View) {
  let best = { away: Number.POSITIVE_INFINITY, share: 0, pixel: [0, 0] as Pixel };
  let [px, py] = view.pixel(line.ends[0]);
  for (let i = 1; i <= PIECES; i++) {
    const [qx, qy] = view.pixel(placeOn(line, i / PIECES));
    const [dx, dy] = [qx - px, qy - py];
    const along = Math.max(0, Math.min(1, ((x - px) * dx + (y - py) * dy) / (dx * dx + dy * dy || 1)));
    const pixel: Pixel = [px + along * dx, py + along * dy];
    const away = Math.hypot(x - pixel[0], y - pixel[1]);
    if (away < best.away) best = { away, share: (i - 1 + along) / PIECES, pixel };
    [px, py] = [qx, qy];
  }
  return best;
}

/** Where a place of an edge is in the picture, on the board that shows it if one does; null where the edge is not drawn. */
export function edgePixel(
  lines: readonly EdgeLine[],
  { edge, at }: EdgePlace,
  view: View,
  isHidden: IsHidden,
): { readonly x: number; readonly y: number; readonly isHidden: boolean } | null {
  const found = lines
    .filter((line) => line.edge === edge)
    .map((line) => {
      const [from, to] = line.span;
      const place = placeOn(line, Math.max(0, Math.min(1, (at - from) / (to - from))));
      const [x, y] = view.pixel(place);
      return { x, y, isHidden: isHidden(place, line.out, view.eye) };
    });
  return found.find((place) => !place.isHidden) ?? found[0] ?? null;
}
