import {
  type ColorSpace,
  DataTexture,
  LinearFilter,
  LinearMipmapLinearFilter,
  NoColorSpace,
  RepeatWrapping,
  RGBAFormat,
  SRGBColorSpace,
} from 'three';

/** A square picture that repeats, as a texture for uv in mm. */
function tile(pixels: Uint8Array, size: number, tile_mm: number, colorSpace: ColorSpace): DataTexture {
  const texture = new DataTexture(pixels, size, size, RGBAFormat);
  texture.wrapS = texture.wrapT = RepeatWrapping;
  texture.repeat.set(1 / tile_mm, 1 / tile_mm);
  texture.minFilter = LinearMipmapLinearFilter;
  texture.magFilter = LinearFilter;
  texture.generateMipmaps = true;
  texture.anisotropy = 8;
  texture.colorSpace = colorSpace;
  texture.needsUpdate = true;
  return texture;
}

/** Pixels drawn so far, by what drew them: they take a while, and another look wants the same. */
const drawn = new WeakMap<object, Uint8Array>();

function drawnOnce(by: object, draw: () => Uint8Array): Uint8Array {
  const pixels = drawn.get(by) ?? draw();
  drawn.set(by, pixels);
  return pixels;
}

/** Repeating picture of tones: `tone`, always drawn at one size, gives 0 (black) to 1 at a place in [0, 1) of the tile. */
export function toneTile(size: number, tile_mm: number, tone: (u: number, v: number) => number): DataTexture {
  const draw = (): Uint8Array => {
    const pixels = new Uint8Array(size * size * 4);
    for (let i = 0; i < size * size; i++) {
      const grey = Math.round(255 * Math.max(0, Math.min(1, tone((i % size) / size, Math.floor(i / size) / size))));
      pixels.set([grey, grey, grey, 255], 4 * i);
    }
    return pixels;
  };
  return tile(drawnOnce(tone, draw), size, tile_mm, SRGBColorSpace);
}

/** Repeating normal map of a height field in mm over the tile; `height` is always drawn at one size. */
export function reliefTile(size: number, tile_mm: number, height: (u: number, v: number) => number): DataTexture {
  const draw = (): Uint8Array => {
    const heights = new Float32Array(size * size);
    for (let i = 0; i < heights.length; i++) heights[i] = height((i % size) / size, Math.floor(i / size) / size);
    const at = (x: number, y: number): number => heights[((y + size) % size) * size + ((x + size) % size)] ?? 0;
    const run = (2 * tile_mm) / size;
    const pixels = new Uint8Array(size * size * 4);
    for (let y = 0; y < size; y++) {
      for (let x = 0; x < size; x++) {
        const dx = (at(x + 1, y) - at(x - 1, y)) / run;
        const dy = (at(x, y + 1) - at(x, y - 1)) / run;
        const scale = 127 / Math.hypot(dx, dy, 1);
        pixels.set([128 - dx * scale, 128 - dy * scale, 128 + scale, 255], 4 * (y * size + x));
      }
    }
    return pixels;
  };
  return tile(drawnOnce(height, draw), size, tile_mm, NoColorSpace);
}
