import type { PictureSize } from '../scene/pictureTiles.ts';

/** Frames a second. */
export const RATE = 24;

/** A film being written. */
export interface FilmFile {
  /** Takes the next frame, as the canvas shows it. */
  add(canvas: HTMLCanvasElement): Promise<void>;
  finish(): Promise<FinishedFilm>;
  /** Drops what is written. */
  cancel(): Promise<void>;
}

export interface FinishedFilm {
  readonly bytes: ArrayBuffer;
  readonly ending: 'mp4' | 'webm';
  readonly type: string;
}

/** Why this browser makes no films; null where it makes some. */
export function filmRefusal(): string | null {
  if ('VideoEncoder' in globalThis) return null;
  return window.isSecureContext
    ? 'This browser cannot make films: it has no video encoder (WebCodecs). Another browser, or a newer one, may have it.'
    : 'Films need a secure address, which begins with https: the browser gives its video encoder to no other.';
}

/**
 * Opens a film without sound, of even frames: MP4 with H.264 where the browser encodes it, as most programs show it; otherwise WebM
 * or MP4 with what it does encode.
 * @throws Error where it encodes no film of this size
 */
export async function openFilm({ width, height }: PictureSize): Promise<FilmFile> {
  const {
    BufferTarget,
    CanvasSource,
    getFirstEncodableVideoCodec,
    Mp4OutputFormat,
    Output,
    QUALITY_HIGH,
    WebMOutputFormat,
  } = await import('mediabunny');
  const codec = await getFirstEncodableVideoCodec(['avc', 'vp9', 'vp8', 'av1'], {
    width,
    height,
    bitrate: QUALITY_HIGH,
  });
  if (codec === null)
    throw new Error(`This browser encodes no film of ${width} × ${height} pixels. Choose a smaller size.`);
  const isMp4 = codec === 'avc';
  const target = new BufferTarget();
  const output = new Output({ format: isMp4 ? new Mp4OutputFormat() : new WebMOutputFormat(), target });
  // What is drawn for a frame is put on a canvas of the film's own size, which smooths it.
  const frame = Object.assign(document.createElement('canvas'), { width, height });
  const context = frame.getContext('2d');
  if (context === null) throw new Error('This device has no memory left for a film. Close other pages first.');
  const source = new CanvasSource(frame, { codec, bitrate: QUALITY_HIGH });
  output.addVideoTrack(source, { frameRate: RATE });
  await output.start();
  let count = 0;
  return {
    add(canvas) {
      context.drawImage(canvas, 0, 0, width, height);
      return source.add(count++ / RATE, 1 / RATE);
    },
    async finish() {
      await output.finalize();
      return { bytes: target.buffer!, ending: isMp4 ? 'mp4' : 'webm', type: isMp4 ? 'video/mp4' : 'video/webm' };
    },
    cancel: () => output.cancel(),
  };
}
