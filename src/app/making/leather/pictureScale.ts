import { DOUBTS, distance, MARKED_PAPERS, markedPage, type Vec2 } from '../../../core/index.ts';

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
  /** The sheet for photographs that it is flat and to scale by; absent for a picture scaled by hand. */
  readonly sheet?: PictureSheet | undefined;
  /** What it shows of the leather by its colour, in pixels from the lower left corner; absent where nothing stands out. */
  readonly seen?: SeenLeather | undefined;
}

export interface SeenLeather {
  readonly outline: readonly Vec2[];
  readonly defects: readonly (readonly Vec2[])[];
}

/** A polygon of what is seen, to a tenth of a millimetre. */
export const seenAt = (polygon: readonly Vec2[], mm: number): Vec2[] =>
  polygon.map(([x, y]) => [Math.round(10 * x * mm) / 10, Math.round(10 * y * mm) / 10]);

export interface PictureSheet {
  /** Length of the long bar of the sheet as meant, and what a ruler says of it, mm; null until it was read. */
  readonly bar: number;
  readonly reading: number | null;
  /** How far off a length over the picture may be, as a share: by the photograph alone, and by a print that was not measured. */
  readonly u: number;
  readonly uPrint: number;
}

/** How far from what is meant a point is set, px on the screen. */
const POINT_PX = 1.5;

/** Most that a scale may be off, as a share, and from where on it is worth a word. */
const OFF = { most: 0.05, worth: 0.01 } as const;

/**
 * How far off a length over the two points may be, as a share: both errors in quadrature over their distance. By a sheet: two standard
 * uncertainties of photograph and print, as far as a ruler leaves the print in doubt.
 */
export function scaleDoubt({ points, off, sheet }: Pick<HidePicture, 'points' | 'off' | 'sheet'>): number {
  if (sheet === undefined) return Math.hypot(...off) / Math.max(1e-9, distance(...points));
  return 2 * Math.hypot(sheet.u, sheet.reading === null ? sheet.uPrint : DOUBTS.reading_mm / sheet.bar);
}

/** A picture by a photograph with pages of the sheet in it; `paper` by the name of its first page. */
export function pictureSheet(page: string, u: number, uPrint: number): PictureSheet {
  const paper = (Object.keys(MARKED_PAPERS) as (keyof typeof MARKED_PAPERS)[]).find((name) => page.startsWith(name));
  const { length } = markedPage(paper ?? 'A4', 0).bars.along;
  return { bar: length, reading: null, u: Math.sqrt(Math.max(0, u * u - uPrint * uPrint)), uPrint };
}

/** The picture as large as the long bar of its sheet was measured; null for as large as it was meant. */
export function readBy(picture: HidePicture, reading: number | null): HidePicture {
  const { sheet } = picture;
  if (sheet === undefined) return picture;
  const times = (reading ?? sheet.bar) / (sheet.reading ?? sheet.bar);
  return { ...picture, mm: picture.mm * times, sheet: { ...sheet, reading } };
}

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
    sheet: undefined,
  };
}

/** The picture with its points elsewhere; those that moved are as sure as the screen shows them. */
export function withPoints(picture: HidePicture, points: readonly [Vec2, Vec2], scale: number): HidePicture {
  const off = (i: 0 | 1): number => (distance(points[i], picture.points[i]) > 0 ? POINT_PX / scale : picture.off[i]);
  return { ...picture, points, off: [off(0), off(1)] };
}
