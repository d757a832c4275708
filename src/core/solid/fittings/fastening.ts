import type { Vec2 } from '../../math/vec2.ts';
import { combine3, dot3, tripleAt, type Vec3 } from '../../math/vec3.ts';
import { BUCKLE } from '../../pattern/buckleTab.ts';
import type { MeshData } from '../meshData.ts';
import { barHeight } from './buckleTabMesh.ts';
import type { Closure } from './closurePath.ts';
import { MAGNET, SNAP, STUD } from './fasteningShape.ts';
import { MetalSolid, onStand, type Stand } from './metalSolid.ts';

/** Steps over the round of a head or a cap. */
const ROUND = 5;
/** Between metal and leather that lie face to face, mm. */
const PLAY = 0.02;

/**
 * A buckle in work: `lies` is the angle from the front at which it lies free, radians; `raised` 0 lies free, 1 ready for the strap;
 * `shut` 0 swung back, 1 down on the strap.
 */
export interface BuckleWork {
  readonly lies: number;
  readonly raised: number;
  readonly shut: number;
}

/**
 * The metal of a fastening: what stands on the front, and what is set in the strap.
 * @param front on the front's grain side, `way` from the fore-edge toward the spine
 * @param strap on the strap's flesh side at its fastening, `way` toward its end
 */
export function fasteningMesh(closure: Closure, front: Stand, strap: Stand, work: BuckleWork): MeshData {
  const solid = new MetalSolid();
  const { shape, thickness } = closure;
  switch (shape.kind) {
    case 'stud': {
      const neck = Math.min(STUD.neck, 0.6 * shape.radius);
      // Its neck is as long as the strap under its head takes.
      const under = Math.max(STUD.foot + thickness, closure.top) + STUD.play;
      solid.turned(front, [
        [0, PLAY],
        [shape.radius, PLAY],
        [shape.radius, STUD.foot],
        [neck, STUD.foot],
        [neck, under],
        ...dome(shape.radius, under, STUD.head),
      ]);
      break;
    }
    case 'snap': {
      const { base, ring, shank, cap } = SNAP;
      const post = Math.min(2.2, 0.45 * shape.radius);
      solid.turned(front, [
        [0, PLAY],
        [shape.radius, PLAY],
        [shape.radius, base],
        [post, base],
        [0.7 * post, base + ring - 0.5],
        [0, base + ring - 0.4],
      ]);
      const hollow = post + 0.5;
      solid.turned(strap, [
        [0, -0.2],
        [hollow, -0.2],
        [hollow, -ring + PLAY],
        [shape.radius, -ring + PLAY],
        [shape.radius, 0],
        [shank, 0],
        [shank, thickness],
        ...dome(shape.radius, thickness, cap),
      ]);
      break;
    }
    case 'magnet': {
      const disc = (stand: Stand, low: number): void =>
        solid.turned(stand, [
          [0, low],
          [shape.radius, low],
          [shape.radius, low + MAGNET.disc - PLAY],
          [0, low + MAGNET.disc - PLAY],
        ]);
      disc(front, PLAY);
      disc(strap, -MAGNET.disc + PLAY);
      break;
    }
    case 'buckle':
      buckle(solid, closure, front, work);
  }
  return solid.mesh();
}

/** A rounded top over a flat underside: a quarter of an ellipse from the rim to the axis. */
const dome = (radius: number, under: number, height: number): Vec2[] =>
  Array.from({ length: ROUND + 1 }, (_, k): Vec2 => {
    const angle = (k * Math.PI) / 2 / ROUND;
    return k === ROUND ? [0, under + height] : [radius * Math.cos(angle), under + height * Math.sin(angle)];
  });

/** How far the frame of a buckle is swung back while the strap comes and goes, radians (100 degrees). */
const SWUNG = (5 * Math.PI) / 9;

/** From a bar's middle to the strap over the tab and to the frame over the strap, and how far the frame reaches from there, mm. */
function frameSize(thickness: number, toBar: number, end: number) {
  const toStrap = BUCKLE.wire + thickness;
  const toFrame = toStrap + thickness + BUCKLE.wire + 0.4;
  return { toStrap, toFrame, reach: Math.max(toBar + 4, (end - toBar) / 0.8 + 3, 1.2 * toFrame) };
}

/**
 * Angle at which a free frame lies: level, or raised by a front that is bent toward it, radians.
 * @param over places of the front, along it from the fastening and out of it, mm
 */
export function frameLies({ shape, thickness, end }: Closure, over: readonly Vec2[]): number {
  const { reach } = frameSize(thickness, shape.beyond, end);
  const room = BUCKLE.wire + PLAY;
  const angles = over
    .map(([x, y]): Vec2 => [shape.beyond - x, y - barHeight(thickness)])
    .filter(([along]) => along > 0 && along < reach + 2 * room)
    .map(([along, rise]) => Math.atan2(rise, along) + Math.asin(Math.min(1, room / Math.hypot(along, rise))));
  return Math.min(SWUNG, Math.max(0, ...angles));
}

/**
 * A buckle: the frame swings about its bar, round which the tab is folded. Free, the frame lies level over the front, the prong
 * on it. The strap lies over the bar, the prong through its hole, and the frame comes down round its end.
 */
function buckle(
  solid: MetalSolid,
  { shape, thickness, strap, slope, end: beyond }: Closure,
  front: Stand,
  { lies, raised, shut }: BuckleWork,
): void {
  const { wire, prong } = BUCKLE;
  const toBar = shape.beyond;
  const { toStrap, toFrame, reach } = frameSize(thickness, toBar, beyond);
  const half = strap.width / 2 + wire + 0.8;
  const middle = onStand(front, [toBar, 0, barHeight(thickness)]);
  // Lying on the strap the frame rises from the bar to over the grain side; the strap itself slopes to the bar.
  const down = Math.asin(Math.min(1, toFrame / reach)) - slope;
  const ready = lies + (SWUNG - lies) * raised;
  const swing = ready + (down - ready) * shut;
  const turned = (along: number, over: number, by: number): Vec3 =>
    combine3(
      combine3(middle, 1, front.way, -along * Math.cos(by) + over * Math.sin(by)),
      1,
      front.up,
      along * Math.sin(by) + over * Math.cos(by),
    );
  const corner = (along: number, side: number): Vec3 => combine3(turned(along, 0, swing), 1, front.side, side);
  const over = combine3(front.way, Math.sin(swing), front.up, Math.cos(swing));
  solid.wire([corner(0, -half), corner(0, half), corner(reach, half), corner(reach, -half)], over, wire, true);
  // In work the prong lies under the strap up to its hole and rises through it; its tip comes down on the frame.
  const under = (along: number): number => toStrap - prong - 0.1 - along * Math.sin(down + slope);
  const risen = under(toBar + 0.4) + thickness + 2 * prong + 0.4;
  const elbow = turned(toBar, risen, down);
  const fallen = combine3(turned(reach + wire, wire + prong, down), 1, elbow, -1);
  const upright = combine3(front.up, Math.hypot(...fallen), front.up, 0);
  const working = [
    turned(0, -0.3, down),
    turned(toBar - 0.5, under(toBar - 0.5), down),
    elbow,
    combine3(elbow, 1, combine3(upright, 1 - shut, fallen, shut), 1),
  ];
  const free = [0, toBar - 0.5, toBar, reach + wire].map((along) =>
    turned(along, ((wire + prong) * along) / (reach + wire), lies),
  );
  const line = working.map((at, i) => combine3(free[i]!, 1 - raised, at, raised));
  solid.wire(line, front.side, prong, false);
}

/** Room of the strap's hole about what goes through it, and what counts as lying on a face of the strap, mm. */
const ROOM = 0.25;
const ON_FACE = 0.06;

/**
 * Radius that the hole of the strap opens to, so that a head goes through: at rest that of the neck or the prong.
 * @param strap on the strap's flesh side at its fastening
 */
export function holeRadius({ shape, thickness }: Closure, strap: Stand, metal: MeshData): number {
  if (shape.hole === 0) return 0;
  const [low, high] = [ON_FACE, thickness - ON_FACE];
  let radius = shape.hole;
  const local = (index: number): Vec3 => {
    const from = combine3(tripleAt(metal.positions, index), 1, strap.at, -1);
    return [dot3(from, strap.way), dot3(from, strap.side), dot3(from, strap.up)];
  };
  const corners = Array.from({ length: metal.positions.length / 3 }, (_, i) => local(i));
  metal.indices.forEach((from, k) => {
    const a = corners[from]!;
    const b = corners[metal.indices[k % 3 === 2 ? k - 2 : k + 1]!]!;
    if (Math.max(a[2], b[2]) <= low || Math.min(a[2], b[2]) >= high) return;
    // Where the edge enters and leaves the leather.
    for (const c of [Math.max(low, Math.min(high, a[2])), Math.max(low, Math.min(high, b[2]))]) {
      const share = a[2] === b[2] ? 0 : (c - a[2]) / (b[2] - a[2]);
      const away = Math.hypot(a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share);
      // A frame goes round the strap, not through it.
      if (away < 1.5 * shape.square) radius = Math.max(radius, away + ROOM);
    }
  });
  return Math.min(radius, 0.92 * shape.square);
}
