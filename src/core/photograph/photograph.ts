import type { Vec2 } from '../math/vec2.ts';

/** A figure of known place on a page, seen in a photograph: a mark with its corners, or a plain paper with its own. */
export interface SeenMark {
  /** The page on which it stands; pages of one name lie alike in all photographs. */
  readonly page: string;
  /** Its name on that page. */
  readonly mark: string;
  /** Its corners as printed, mm from the middle of the page, y toward the head of the page. */
  readonly corners: readonly Vec2[];
  /** The same corners in the photograph, pixels. */
  readonly seen: readonly Vec2[];
  /** Standard uncertainty of each coordinate seen, pixels. */
  readonly u: number;
}

/** Covariance of a place in a photograph, pixels squared. */
export type PlaceCovariance = readonly [xx: number, xy: number, yy: number];

/** Doubt of a place in a photograph: its standard uncertainty in all directions, pixels, or its covariance. */
export type PlaceDoubt = number | PlaceCovariance;

/** A point of the object, seen in a photograph. */
export interface SeenPoint {
  /** Its place among the points of the object. */
  readonly point: number;
  readonly seen: Vec2;
  readonly u: PlaceDoubt;
}

/** A photograph with what was found in it. */
export interface Photograph {
  readonly width: number;
  readonly height: number;
  /** Photographs of one name share focal length and lens: the same camera at the same zoom. */
  readonly camera: string;
  /** Focal length by what the camera wrote, in pixels of this photograph; null where it wrote nothing. */
  readonly focal: number | null;
  readonly marks: readonly SeenMark[];
  readonly points: readonly SeenPoint[];
}
