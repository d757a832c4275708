import { type RootState, useThree } from '@react-three/fiber';
import { type Ref, useImperativeHandle, useRef } from 'react';
import { Color, type PerspectiveCamera, type WebGLRenderer } from 'three';
import type { Pose } from '../../core/index.ts';
import type { Look } from './material/coverMaterials.ts';
import { averageInto, type Band, type PictureSize } from './pictureTiles.ts';

/** JPEG quality, 0 to 1. */
const QUALITY = 0.92;

/** Samples along each side of a pixel of a picture. The full look smooths each of them once more. */
const SAMPLES: Readonly<Record<Look, number>> = { full: 2, light: 3 };

/** The same of a picture that the page waits for, as a print does: a graphics card that is none draws them slowly. */
const AT_ONCE = 2;

/** The same of a film, which moves. */
const FILMED: Readonly<Record<Look, number>> = { full: 1, light: 2 };

/** Largest side of what is drawn at once, samples: some 16 MB, or 130 where the graphics card smooths it. */
const LARGEST = 2048;

/** Takes pictures of the scene, at any size. */
export interface PictureHandle {
  /** What the scene shows. */
  readonly pose: Pose;
  /** Size of the view on the screen, pixels of the screen. */
  shownSize(): PictureSize;
  /**
   * Draws the view in bands from top to bottom, each of tiles that the graphics card can draw: a picture may be larger than
   * what it draws at once. Between two bands the page may go on.
   * @param background as CSS writes colours
   * @throws Error where memory is short, or the scene has changed since the first band
   */
  bands(size: PictureSize, background: string): Generator<Band>;
  /** The whole picture as a JPEG. Throws as `bands` does. */
  take(size: PictureSize, background: string): Promise<Blob>;
  /** As `take`, but synchronous: a data address. */
  takeAtOnce(size: PictureSize, background: string): string;
  /** Draws frame after frame at one size, and no longer what is on the screen. */
  film(size: PictureSize, background: string): Filming;
}

interface Filming {
  /**
   * Draws what the scene now shows, smoothed by being drawn larger than the film.
   * @returns a canvas that holds the frame until the end of this task
   * @throws Error where memory is short
   */
  frame(lens: PerspectiveCamera): HTMLCanvasElement;
  /** Gives the canvas back to the screen. */
  end(): void;
}

interface PictureTakerProps {
  readonly ref: Ref<PictureHandle>;
  readonly pose: Pose;
  readonly look: Look;
  /** Changes with whatever the scene shows. */
  readonly work: unknown;
}

/** Gives its scene's `PictureHandle` to the parent, a new one whenever the scene shows something else. */
export function PictureTaker({ ref, pose, look, work }: PictureTakerProps) {
  const get = useThree((state) => state.get);
  const shown = useRef(work);
  shown.current = work;
  useImperativeHandle(ref, (): PictureHandle => {
    function* bands(size: PictureSize, background: string, samples = SAMPLES[look]): Generator<Band> {
      const lens = lensFor(get(), size);
      const first = shown.current;
      const side = tileSide(get(), samples);
      const tile = { width: Math.min(side, size.width), height: Math.min(side, size.height) };
      const drawn = { width: tile.width * samples, height: tile.height * samples };
      const bytes = room(4 * drawn.width * drawn.height, size);
      for (let top = 0; top < size.height; top += tile.height) {
        if (shown.current !== first) throw new Error(CHANGED);
        const rows = Math.min(tile.height, size.height - top);
        const pixels = room(3 * size.width * rows, size);
        drawnAt(get(), drawn, background, size, ({ gl, scene }) => {
          const context = gl.getContext();
          for (let left = 0; left < size.width; left += tile.width) {
            lens.setViewOffset(size.width, size.height, left, top, tile.width, tile.height);
            gl.render(scene, lens);
            context.readPixels(0, 0, drawn.width, drawn.height, context.RGBA, context.UNSIGNED_BYTE, bytes);
            averageInto({ bytes, width: drawn.width, samples }, pixels, { width: size.width, height: rows }, left);
          }
          if (context.isContextLost()) throw noRoom(size);
        });
        yield { top, pixels };
      }
    }
    const onCanvas = (size: PictureSize, background: string): HTMLCanvasElement => {
      const canvas = Object.assign(document.createElement('canvas'), size);
      const context = canvas.getContext('2d');
      if (context === null) throw noRoom(size);
      for (const { top, pixels } of bands(size, background, AT_ONCE)) {
        const rows = new ImageData(size.width, pixels.length / 3 / size.width);
        rows.data.fill(255);
        pixels.forEach((value, i) => {
          rows.data[4 * Math.floor(i / 3) + (i % 3)] = value;
        });
        context.putImageData(rows, 0, top);
      }
      return canvas;
    };
    return {
      pose,
      shownSize() {
        const { size, viewport } = get();
        return { width: Math.round(size.width * viewport.dpr), height: Math.round(size.height * viewport.dpr) };
      },
      bands: (size, background) => bands(size, background),
      async take(size, background) {
        const canvas = onCanvas(size, background);
        return new Promise<Blob>((resolve, reject) =>
          canvas.toBlob((blob) => (blob ? resolve(blob) : reject(noRoom(size))), 'image/jpeg', QUALITY),
        );
      },
      takeAtOnce: (size, background) => onCanvas(size, background).toDataURL('image/jpeg', QUALITY),
      film(size, background) {
        const drawn = { width: size.width * FILMED[look], height: size.height * FILMED[look] };
        const goBack = resized(get(), drawn);
        return {
          frame(lens) {
            const { gl, scene } = get();
            // For this frame alone: between two of them the scene draws its shadows, over a ground of its own.
            const uncovered = onGround(gl, background);
            gl.render(scene, lens);
            uncovered();
            if (!isDrawn(gl.getContext(), drawn)) throw noRoom(size);
            return gl.domElement;
          },
          end: goBack,
        };
      },
    };
  });
  return null;
}

const CHANGED = 'The view changed while the picture was taken. Let the cover stand still, and take it again.';

/** The camera of the screen for a picture of another shape, from where it now stands. */
function lensFor({ camera, size }: RootState, picture: PictureSize): PerspectiveCamera {
  const lens = (camera as PerspectiveCamera).clone();
  // On the screen the view is shifted clear of the words over it.
  lens.clearViewOffset();
  widen(lens, size.width / size.height, picture.width / picture.height);
  return lens;
}

/** The side of the largest tile, pixels: even, as graphics cards shade two by two. */
function tileSide({ gl }: RootState, samples: number): number {
  const context = gl.getContext();
  const most = Math.min(
    LARGEST,
    context.getParameter(context.MAX_RENDERBUFFER_SIZE),
    ...context.getParameter(context.MAX_VIEWPORT_DIMS),
  );
  return Math.max(2, 2 * Math.floor(most / samples / 2));
}

/** Draws on a background; returns what takes it back. */
function onGround(gl: WebGLRenderer, background: string): () => void {
  const clear = { colour: gl.getClearColor(new Color()), alpha: gl.getClearAlpha() };
  gl.setClearColor(background, 1);
  return () => gl.setClearColor(clear.colour, clear.alpha);
}

/** Gives the canvas a size; returns what takes it back. */
function resized({ gl, size, viewport }: RootState, drawn: PictureSize): () => void {
  gl.setPixelRatio(1);
  gl.setSize(drawn.width, drawn.height, false);
  return () => {
    gl.setPixelRatio(viewport.dpr);
    gl.setSize(size.width, size.height);
  };
}

/** Draws at a size, and what was on the screen again before the task ends: nobody sees it. */
function drawnAt(
  state: RootState,
  drawn: PictureSize,
  background: string,
  picture: PictureSize,
  draw: (state: RootState) => void,
): void {
  const { gl, scene, camera, invalidate } = state;
  const goBack = resized(state, drawn);
  const uncovered = onGround(gl, background);
  try {
    if (!isDrawn(gl.getContext(), drawn)) throw noRoom(picture);
    draw(state);
  } finally {
    uncovered();
    goBack();
    gl.render(scene, camera);
    invalidate();
  }
}

/** Whether the browser gave a canvas of the size that was asked for. */
const isDrawn = (context: WebGLRenderingContext | WebGL2RenderingContext, { width, height }: PictureSize): boolean =>
  !context.isContextLost() && context.drawingBufferWidth === width && context.drawingBufferHeight === height;

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

function room(bytes: number, picture: PictureSize): Uint8Array<ArrayBuffer> {
  try {
    return new Uint8Array(bytes);
  } catch {
    throw noRoom(picture);
  }
}

const noRoom = ({ width, height }: PictureSize): Error =>
  new Error(
    `This device has no memory left for ${width} × ${height} pixels. Choose a smaller size, or close other pages first.`,
  );
