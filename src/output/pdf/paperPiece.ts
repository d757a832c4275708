import {
  addScaled,
  type Contour,
  contourLength,
  distance,
  type Entity,
  heading,
  type PieceDrawing,
  path,
  placeAlong,
  type Segment,
  type Vec2,
} from '../../core/index.ts';

/** Clear between a hole and the seam line on both sides of it, mm. */
const CLEAR = 0.5;

/** Half the tick across each end of a slit, mm. */
const TICK = 0.5;

/** How far from the seam line the middle of a hole may lie to be one of it, mm. */
const NEAR = 0.05;

/**
 * A piece as it is read on paper in one colour: the seam line is interrupted round each of its holes, and a slit, which is a line
 * itself, has a tick across each end.
 */
export function paperPiece(piece: PieceDrawing): PieceDrawing {
  const { layers } = piece;
  const holes = layers.hole.flatMap((entity) =>
    entity.kind === 'arc'
      ? [{ at: entity.centre, reach: entity.radius }]
      : entity.kind === 'line'
        ? [slitOf(entity)]
        : [],
  );
  const seam = layers.seam.flatMap((entity): readonly Entity[] =>
    entity.kind === 'path' ? interrupted(entity.segments, holes).map((segments) => path(segments, false)) : [entity],
  );
  const ticks = layers.hole.flatMap((entity) => (entity.kind === 'line' ? ticksOf(entity) : []));
  return { ...piece, layers: { ...layers, seam, mark: [...layers.mark, ...ticks] } };
}

interface Hole {
  readonly at: Vec2;
  readonly reach: number;
}
type Line = Extract<Segment, { kind: 'line' }>;

const slitOf = ({ from, to }: Line): Hole => ({
  at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
  reach: distance(from, to) / 2,
});

function ticksOf({ from, to }: Line): Segment[] {
  const across = heading(Math.atan2(to[1] - from[1], to[0] - from[0]) + Math.PI / 2);
  return [from, to].map((end) => ({
    kind: 'line',
    from: addScaled(end, across, -TICK),
    to: addScaled(end, across, TICK),
  }));
}

/** The parts of a contour that lie off the holes on it. */
function interrupted(contour: Contour, holes: readonly Hole[]): Contour[] {
  const length = contourLength(contour);
  const gaps = holes
    .flatMap(({ at, reach }) => {
      const place = placeOn(contour, at);
      return place === null ? [] : [{ from: place - reach - CLEAR, to: place + reach + CLEAR }];
    })
    // A gap over the start of a closed line is one at its end too.
    .flatMap(({ from, to }) => [
      { from, to },
      ...(from < 0 ? [{ from: from + length, to: length }] : []),
      ...(to > length ? [{ from: 0, to: to - length }] : []),
    ])
    .sort((a, b) => a.from - b.from);
  const parts: Contour[] = [];
  let at = 0;
  for (const { from, to } of [...gaps, { from: length, to: length }]) {
    if (from - at > 1e-6) parts.push(part(contour, at, from));
    at = Math.max(at, to);
  }
  return parts;
}

/** How far along a contour the foot of a point on it lies, mm; null for a point that is not on it. */
function placeOn(contour: Contour, point: Vec2): number | null {
  let before = 0;
  for (const segment of contour) {
    const length = contourLength([segment]);
    const share = shareOn(segment, point);
    if (length > 0 && share >= -1e-6 && share <= 1 + 1e-6) {
      const place = before + Math.min(1, Math.max(0, share)) * length;
      if (distance(placeAlong(contour, place).point, point) < NEAR) return place;
    }
    before += length;
  }
  return null;
}

function shareOn(segment: Segment, [x, y]: Vec2): number {
  if (segment.kind === 'line') {
    const [u, v] = [segment.to[0] - segment.from[0], segment.to[1] - segment.from[1]];
    return ((x - segment.from[0]) * u + (y - segment.from[1]) * v) / (u * u + v * v || 1);
  }
  const turn = Math.atan2(y - segment.centre[1], x - segment.centre[0]) - segment.start;
  const round = 2 * Math.PI;
  const along = segment.sweep < 0 ? -(((-turn % round) + round) % round) : ((turn % round) + round) % round;
  return along / segment.sweep;
}

/** The part of a contour between two lengths along it. */
function part(contour: Contour, from: number, to: number): Segment[] {
  let before = 0;
  return contour.flatMap((segment): Segment[] => {
    const length = contourLength([segment]);
    const [a, b] = [Math.max(0, from - before) / length, Math.min(length, to - before) / length];
    before += length;
    if (!(b - a > 1e-9)) return [];
    if (segment.kind === 'arc')
      return [{ ...segment, start: segment.start + a * segment.sweep, sweep: (b - a) * segment.sweep }];
    const at = (share: number): Vec2 => [
      segment.from[0] + share * (segment.to[0] - segment.from[0]),
      segment.from[1] + share * (segment.to[1] - segment.from[1]),
    ];
    return [{ kind: 'line', from: at(a), to: at(b) }];
  });
}
