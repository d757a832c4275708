import { pngRows } from '../../output/png.ts';
import type { PictureHandle } from '../scene/PictureTaker.tsx';
import type { PictureSize } from '../scene/pictureTiles.ts';
import { pause, type TakingWork } from './useTaking.ts';

/** Sizes of a picture: as on the screen, or by its longer side, pixels. */
export const PICTURE_SIDES = [null, 3840, 7680] as const;

/** The size of a picture with the shape of the view. */
export function pictureSize({ width, height }: PictureSize, side: number | null): PictureSize {
  const scale = side === null ? 1 : side / Math.max(width, height);
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/**
 * A picture of a scene as PNG, drawn and written band by band.
 * @throws Error where memory is short or the scene changes meanwhile; the reason of `signal` once it is told to stop
 */
export async function takePicture(
  scene: PictureHandle,
  size: PictureSize,
  background: string,
  ...[tell, signal]: Parameters<TakingWork>
): Promise<Blob> {
  const rows = pngRows(size.width, size.height, 3);
  for (const { top, pixels } of scene.bands(size, background)) {
    rows.add(pixels);
    tell((top + pixels.length / 3 / size.width) / size.height);
    await pause();
    signal.throwIfAborted();
  }
  return new Blob(rows.end(), { type: 'image/png' });
}
