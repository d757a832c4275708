import type { Job } from '../../job/jobSchema.ts';
import { BUCKLE } from '../../pattern/buckleTab.ts';
import { type TabLie, tabHeight } from './buckleTabMesh.ts';

type StrapOfJob = NonNullable<Job['construction']['strap']>;

/**
 * Sizes of a fastening, mm, and what they do to the strap. All sizes are common practice, no source; a narrow strap has
 * smaller ones.
 */
export interface FasteningShape {
  readonly kind: StrapOfJob['fastening'];
  /** Height of the strap's flesh side over the front where it is fastened. */
  readonly height: number;
  /** The strap lies level from so far before the fastening's middle to so far beyond. */
  readonly before: number;
  readonly beyond: number;
  /** How far the fastening stands out of the strap's grain side, and out of its flesh side. */
  readonly low: number;
  readonly high: number;
  /** Of the head, the cap or the disc. */
  readonly radius: number;
  /** From where to where, along the strap from the fastening's middle, it stands on the front. */
  readonly foot: readonly [from: number, to: number];
  /** Least radius of the strap's hole; 0 where it has none. */
  readonly hole: number;
  /** Beside the hole the strap is meshed as a square of this half width. */
  readonly square: number;
}

/** Share of the strap's width that a fastening takes to each side, at most. */
const SHARE = 0.34;
/** Share of the strap's end, beyond its fastening, that the square round the hole may take. */
const END_SHARE = 0.6;
/** A stud's foot, neck and head; a snap's base, ring and cap; a magnet's disc. */
export const STUD = { foot: 0.6, neck: 1.8, play: 0.4, head: 2.6 } as const;
export const SNAP = { base: 0.8, ring: 2.2, shank: 1.7, cap: 1.7 } as const;
export const MAGNET = { disc: 0.5, rise: 0.4 } as const;

export function fasteningShape(
  { fastening: kind, width_mm: width, end_mm: end }: StrapOfJob,
  tab: TabLie | null,
): FasteningShape {
  const most = Math.min(SHARE * width, 0.5 * end);
  const of = (radius: number): number => Math.min(radius, most);
  const round = (radius: number, rest: Pick<FasteningShape, 'height' | 'low' | 'high' | 'hole'>): FasteningShape => {
    const square = Math.min(END_SHARE * end, 0.42 * width, Math.max(radius + 1.5, 5));
    return { kind, radius, foot: [-radius, radius], before: square + 0.3, beyond: square, square, ...rest };
  };
  switch (kind) {
    case 'stud':
      return round(of(4.2), { height: STUD.foot, low: 0, high: 0, hole: Math.min(STUD.neck, 0.6 * of(4.2)) + 0.3 });
    case 'snap':
      return round(of(5.5), { height: SNAP.base + SNAP.ring, low: SNAP.cap, high: SNAP.ring, hole: SNAP.shank + 0.2 });
    case 'magnet':
      return round(of(7), { height: 2 * MAGNET.disc, low: MAGNET.rise, high: MAGNET.disc, hole: 0 });
    case 'buckle': {
      const { tab: piece, thickness, path } = tab!;
      const shape = round(of(5), { height: tabHeight(thickness), low: 0, high: 0, hole: BUCKLE.prong + 0.3 });
      const foot = [piece.toBar - BUCKLE.wire - thickness, path.start[0]] as const;
      return { ...shape, before: -piece.toBar, beyond: piece.toBar, foot };
    }
  }
}
