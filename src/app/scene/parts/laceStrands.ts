import { Vector3 } from 'three';
import type { Job } from '../../../core/index.ts';

/** One strand of a lacing between a slit and the next, in seam axes: x along, y out of the grain side, z to the edge. */
export interface Strand {
  readonly name: string;
  readonly points: readonly Vector3[];
  readonly outward: readonly Vector3[];
  /** Drawn at every slit, or at every second one. */
  readonly every: 1 | 2;
}

/** What the strand goes round, mm: slit to cut edge, thickness of the stack, slit to slit. */
interface Edge {
  readonly margin: number;
  readonly stack: number;
  readonly pitch: number;
}

/** Visible strands of each style of lacing of the trade, simplified. */
export function laceStrands(style: Job['seam']['style'], edge: Edge, thickness: number): Strand[] {
  switch (style) {
    case 'running':
      return [running(edge, thickness, 1), running(edge, thickness, -1)];
    case 'single loop':
      return [whip(edge, thickness, 0.5), braid(edge, thickness, 1.2, 1)];
    case 'double loop':
      return [whip(edge, thickness, 0.5), braid(edge, thickness, 1.6, 1), braid(edge, thickness, 1.6, -1)];
    case 'triple loop':
      return [whip(edge, thickness, 0.5), braid(edge, thickness, 2.5, 1), braid(edge, thickness, 2.5, -1)];
    default:
      return [whip(edge, thickness, 1)];
  }
}

const OUT = new Vector3(0, 1, 0);
const EDGEWARD = new Vector3(0, 0, 1);

/** In at one slit and out at the next: shows on the grain side and on the flesh side alternately. */
function running({ stack, pitch }: Edge, thickness: number, side: 1 | -1): Strand {
  const shift = side === 1 ? 0 : pitch;
  const level = side === 1 ? 0 : -stack;
  const point = (share: number, lift: number) => new Vector3(shift + share * pitch, level + side * lift, 0);
  const out = OUT.clone().multiplyScalar(side);
  return {
    name: `run ${side}`,
    points: [
      point(-0.04, -0.5),
      point(0.08, thickness * 0.4),
      point(0.5, thickness * 0.6),
      point(0.92, thickness * 0.4),
      point(1.04, -0.5),
    ],
    outward: [out, out, out, out, out],
    every: 2,
  };
}

/** Out of a slit on the grain side, over the cut edge and down to the flesh side of a slit `lead` pitches on. */
function whip({ margin, stack, pitch }: Edge, thickness: number, lead: number): Strand {
  const step = lead * pitch;
  const half = thickness / 2;
  const middle = -stack / 2;
  const round = EDGEWARD;
  const under = OUT.clone().negate();
  return {
    name: 'over the edge',
    points: [
      new Vector3(0, -0.6, -0.1),
      new Vector3(0.02 * step, half, 0.4),
      new Vector3(0.3 * step, half, margin * 0.75),
      new Vector3(0.5 * step, middle, margin + half + 0.1),
      new Vector3(0.7 * step, -stack - half, margin * 0.75),
      new Vector3(0.98 * step, -stack - half, 0.4),
      new Vector3(step, -stack + 0.6, -0.1),
    ],
    outward: [OUT, OUT, OUT, round, under, under, under],
    every: 1,
  };
}

/** One side of the plait that loops leave along the edge: it crosses from the grain-side to the flesh-side corner. */
function braid({ margin, stack, pitch }: Edge, thickness: number, reach: number, side: 1 | -1): Strand {
  const deep = stack / 2 + thickness * 0.6;
  const top = margin + thickness * 1.15;
  const middle = -stack / 2;
  const point = (x: number, share: number, z: number) => new Vector3(x * pitch, middle + side * share * deep, z);
  const face = (share: number) => new Vector3(0, side * share, 1).normalize();
  return {
    name: `plait ${side}`,
    points: [
      point(0, 1.15, margin - 1.2),
      point(0.2 * reach, 0.75, top - 0.5),
      point(0.5 * reach, 0, top),
      point(0.85 * reach, -0.75, top - 0.7),
    ],
    outward: [face(3), face(1), face(0), face(-1)],
    every: 1,
  };
}
