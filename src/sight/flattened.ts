import { pointAtHeight, sightOf, type Vec2, type View } from '../core/index.ts';
import type { ColourPicture } from './colourPicture.ts';
import { pixelsPerMm, showsOf } from './shows.ts';

/** A photograph as if taken from straight above, from far: to scale all over. */
export interface FlatPicture extends ColourPicture {
  /** Side of a pixel, mm. */
  readonly mm: number;
  /** Place of its lower left corner on the plane of the sheet, mm. */
  readonly corner: Vec2;
}

/** The part of a plane that is worth showing: no further than this from the sheet, mm, and seen no smaller than this share of the best. */
const WORTH = { far: 4000, share: 0.25 } as const;
/** Places round the rim of a photograph that are tried. */
const RIM = 40;

/**
 * Lays a photograph flat: what it shows of the plane of the sheet, at one scale. What stands above that plane leans outward in it.
 *
 * @param picture the photograph, brought down or not
 * @param size the photograph's own size, to which the view belongs
 * @param longest pixels of the longer side at most
 * @returns null where hardly anything of the plane is seen
 */
export function flattened(
  picture: ColourPicture,
  size: { readonly width: number; readonly height: number },
  view: View,
  longest: number,
): FlatPicture | null {
  const shows = showsOf(view);
  const onPlane = (pixel: Vec2): Vec2 | null => pointAtHeight(view.pose, sightOf(view.lens, pixel), 0);
  const inside: Vec2[] = [];
  let finest = 0;
  for (let row = 0; row <= RIM; row++)
    for (let column = 0; column <= RIM; column++) {
      const at = onPlane([(column / RIM) * size.width, (row / RIM) * size.height]);
      if (at === null || Math.hypot(...at) > WORTH.far) continue;
      finest = Math.max(finest, pixelsPerMm(shows, at, 0));
      inside.push(at);
    }
  const kept = inside.filter((at) => pixelsPerMm(shows, at, 0) > WORTH.share * finest);
  if (kept.length < RIM) return null;
  const [xs, ys] = [kept.map(([x]) => x), kept.map(([, y]) => y)];
  const [left, low] = [Math.min(...xs), Math.min(...ys)];
  const [across, up] = [Math.max(...xs) - left, Math.max(...ys) - low];
  const down = picture.width / size.width;
  const mm = Math.max(Math.max(across, up) / longest, 1 / (finest * down));
  const [width, height] = [Math.max(1, Math.round(across / mm)), Math.max(1, Math.round(up / mm))];
  const rgba = new Uint8ClampedArray(4 * width * height);
  const source = new Uint32Array(picture.rgba.buffer, picture.rgba.byteOffset, picture.width * picture.height);
  const target = new Uint32Array(rgba.buffer);
  const pixel = new Float64Array(2);
  for (let row = 0, i = 0; row < height; row++)
    for (let column = 0; column < width; column++, i++) {
      if (!shows(left + (column + 0.5) * mm, low + (height - row - 0.5) * mm, 0, pixel)) continue;
      // To the nearest pixel: the picture is to be drawn over, not measured.
      const [x, y] = [Math.floor(pixel[0]! * down), Math.floor(pixel[1]! * down)];
      if (x >= 0 && y >= 0 && x < picture.width && y < picture.height) target[i] = source[y * picture.width + x]!;
    }
  return { width, height, rgba, mm, corner: [left, low] };
}
