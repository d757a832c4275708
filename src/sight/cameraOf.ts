import { parse } from 'exifr/dist/lite.esm.mjs';

/** What a camera wrote beside its picture, as far as it is read. */
export interface WrittenCamera {
  /** Photographs of one name were taken by one kind of camera at one zoom, as far as is known. */
  readonly camera: string;
  /** Focal length over the diagonal of the picture; null where nothing was written. */
  readonly focal: number | null;
}

/** Diagonal of a picture on 35 mm film, 36 mm by 24 mm. */
const FILM_DIAGONAL = Math.hypot(36, 24);

/** Nothing else is looked at; where the picture was taken is not even read. */
const TAGS = ['Model', 'FocalLength', 'FocalLengthIn35mmFormat', 'DigitalZoomRatio'];

/**
 * The camera by what it wrote (CIPA DC-008, Exif 2.32): its focal length for 35 mm film (0xA405), which by the standard goes by the
 * diagonal and contains the digital zoom.
 */
export async function cameraOf(bytes: Uint8Array, width: number, height: number): Promise<WrittenCamera> {
  const written: Record<string, unknown> = await parse(bytes, { gps: false, translateValues: false }).then(
    (tags) => tags ?? {},
    () => ({}),
  );
  const film = Number(written.FocalLengthIn35mmFormat);
  const names = TAGS.map((tag) => written[tag]).filter((value) => ['string', 'number'].includes(typeof value));
  return {
    camera: [...names, Math.max(width, height), Math.min(width, height)].join(' '),
    focal: film >= 8 && film <= 1000 ? film / FILM_DIAGONAL : null,
  };
}
