import { useThree } from '@react-three/fiber';
import { type Ref, useImperativeHandle } from 'react';
import { Color, type PerspectiveCamera } from 'three';

/** JPEG quality, 0 to 1. */
const QUALITY = 0.92;

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Takes pictures of the scene, at any size. */
export interface PictureHandle {
  /**
   * Draws the view once at the given size and returns it as a file.
   * @param size pixels, each side 1 to 4096
   * @param background as CSS writes colours
   * @throws Error where the graphics card cannot draw that large
   */
  take(size: PictureSize, type: 'image/png' | 'image/jpeg', background: string): Promise<Blob>;
  /** As `take`, but synchronous: a JPEG as a data address. Throws as `take` does. */
  takeAtOnce(size: PictureSize, background: string): string;
}

/** Gives its scene's `PictureHandle` to the parent. */
export function PictureTaker({ ref }: { ref: Ref<PictureHandle> }) {
  const get = useThree((state) => state.get);
  useImperativeHandle(ref, () => {
    /**
     * Draws at `size`, calls `read` before the browser may drop the picture, at the end of this task, and goes back.
     */
    const drawn = <T,>(size: PictureSize, background: string, read: (canvas: HTMLCanvasElement) => T): T => {
      const { gl, scene, camera, size: shown, viewport, invalidate } = get();
      const lens = (camera as PerspectiveCamera).clone();
      // On the screen the view is shifted clear of the words over it.
      lens.clearViewOffset();
      widen(lens, shown.width / shown.height, size.width / size.height);
      const clear = { colour: gl.getClearColor(new Color()), alpha: gl.getClearAlpha() };
      try {
        gl.setPixelRatio(1);
        gl.setSize(size.width, size.height, false);
        gl.setClearColor(background, 1);
        gl.render(scene, lens);
        const { drawingBufferWidth: width, drawingBufferHeight: height } = gl.getContext();
        if (width !== size.width || height !== size.height) throw tooLarge(size, width);
        return read(gl.domElement);
      } finally {
        gl.setClearColor(clear.colour, clear.alpha);
        gl.setPixelRatio(viewport.dpr);
        gl.setSize(shown.width, shown.height);
        gl.render(scene, camera);
        invalidate();
      }
    };
    return {
      async take(size, type, background) {
        return drawn(
          size,
          background,
          (canvas) =>
            new Promise<Blob>((resolve, reject) =>
              canvas.toBlob((blob) => (blob ? resolve(blob) : reject(tooLarge(size, 0))), type, QUALITY),
            ),
        );
      },
      takeAtOnce(size, background) {
        return drawn(size, background, (canvas) => canvas.toDataURL('image/jpeg', QUALITY));
      },
    };
  });
  return null;
}

/** Fits the lens to another shape of picture, so that all of the view stays in it. */
function widen(lens: PerspectiveCamera, before: number, after: number): void {
  lens.aspect = after;
  // The field of view is vertical: a narrower picture needs a wider one.
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
