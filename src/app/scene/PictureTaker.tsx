import { useThree } from '@react-three/fiber';
import { type Ref, useImperativeHandle } from 'react';
import { Color, type PerspectiveCamera } from 'three';

/** Longest side of a picture, pixels. */
export const MAX_PICTURE = 4096;

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Takes pictures of what the scene shows, at any size. */
export interface PictureHandle {
  /**
   * Draws the view once at the given size and hands it over as a file.
   * @param size pixels, each side 1 to `MAX_PICTURE`
   * @param background as CSS writes colours
   * @throws Error where the graphics card cannot draw that large
   */
  take(size: PictureSize, type: 'image/png' | 'image/jpeg', background: string): Promise<Blob>;
}

/** Lets pictures be taken of the scene that it stands in. */
export function PictureTaker({ ref }: { ref: Ref<PictureHandle> }) {
  const get = useThree((state) => state.get);
  useImperativeHandle(ref, () => ({
    take(size, type, background) {
      const { gl, scene, camera, size: shown, viewport, invalidate } = get();
      const { domElement: canvas } = gl;
      const lens = (camera as PerspectiveCamera).clone();
      widen(lens, shown.width / shown.height, size.width / size.height);
      const clear = { colour: gl.getClearColor(new Color()), alpha: gl.getClearAlpha() };
      gl.setPixelRatio(1);
      gl.setSize(size.width, size.height, false);
      gl.setClearColor(background, 1);
      gl.render(scene, lens);
      const context = gl.getContext();
      const isWhole = context.drawingBufferWidth === size.width && context.drawingBufferHeight === size.height;
      // What was drawn is read before this turn ends, for the browser may drop it afterwards.
      const picture = new Promise<Blob>((resolve, reject) => {
        if (!isWhole) reject(tooLarge(size, context.drawingBufferWidth));
        else canvas.toBlob((blob) => (blob ? resolve(blob) : reject(tooLarge(size, 0))), type, 0.92);
      });
      gl.setClearColor(clear.colour, clear.alpha);
      gl.setPixelRatio(viewport.dpr);
      gl.setSize(shown.width, shown.height);
      gl.render(scene, camera);
      invalidate();
      return picture;
    },
  }));
  return null;
}

/** Fits the lens to another shape of picture, so that what was in the view stays in it. */
function widen(lens: PerspectiveCamera, before: number, after: number): void {
  lens.aspect = after;
  // The field of view is upright: a narrower picture needs a wider one.
  if (after < before) {
    const half = Math.tan((lens.fov * Math.PI) / 360) * (before / after);
    lens.fov = (Math.atan(half) * 360) / Math.PI;
  }
  lens.updateProjectionMatrix();
}

const tooLarge = ({ width, height }: PictureSize, got: number): Error =>
  new Error(
    `A picture of ${width} × ${height} pixels cannot be drawn here${got > 0 ? `; ${got} pixels wide can` : ''}. Choose a smaller size.`,
  );
