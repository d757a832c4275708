import { distance, type Vec2 } from '../../../core/index.ts';

/** A picture under the drawing, its lower left corner at the origin. */
export interface HidePicture {
  readonly address: string;
  readonly name: string;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** mm a pixel. */
  readonly mm: number;
  /** Whether the maker has set its scale. */
  readonly isScaled: boolean;
  /** The two points that it is scaled by, mm. */
  readonly points: readonly [Vec2, Vec2];
  /** How far each may be off, mm; infinite for one that was not yet set. */
  readonly off: readonly [number, number];
}

/** How far from what is meant a point is set, px on the screen. */
const POINT_PX = 1.5;

/** Most that a scale may be off, as a share, and from where on it is worth a word. */
const OFF = { most: 0.05, worth: 0.01 } as const;

/** How far off a length over the two points may be, as a share: both errors in quadrature over their distance. */
export const scaleDoubt = ({ points, off }: Pick<HidePicture, 'points' | 'off'>): number =>
  Math.hypot(...off) / Math.max(1e-9, distance(...points));

/** Why the two points cannot give a scale; null where they can. */
export function pointsIssue(picture: HidePicture, percent: (share: number) => string): string | null {
  if (picture.off.some((each) => !Number.isFinite(each)))
    return 'Put both points on the picture first, on two places whose distance you know.';
  const doubt = scaleDoubt(picture);
  if (doubt <= OFF.most) return null;
  return `The two points are too near each other: the scale could be ${percent(Math.min(1, doubt))} off. Choose points farther apart, or zoom in and set them again.`;
}

export const isDoubtful = (doubt: number): boolean => doubt > OFF.worth;

/**
 * The picture so large that its two points lie at a distance.
 * @param length mm, over 0
 */
export function scaledBy(picture: HidePicture, length: number): HidePicture {
  const times = length / distance(...picture.points);
  const by = ([x, y]: Vec2): Vec2 => [x * times, y * times];
  const [a, b] = picture.points;
  const [offA, offB] = picture.off;
  return {
    ...picture,
    mm: picture.mm * times,
    isScaled: true,
    points: [by(a), by(b)],
    off: [offA * times, offB * times],
  };
}

/** The picture with its points elsewhere; those that moved are as sure as the screen shows them. */
export function withPoints(picture: HidePicture, points: readonly [Vec2, Vec2], scale: number): HidePicture {
  const off = (i: 0 | 1): number => (distance(points[i], picture.points[i]) > 0 ? POINT_PX / scale : picture.off[i]);
  return { ...picture, points, off: [off(0), off(1)] };
}
