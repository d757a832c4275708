/** A square picture that repeats. Independent of three, so that a worker can draw it. */
export interface Tile {
  /** `tone`: shades from 0 (black) to 1. `relief`: the normals of a height field in mm. */
  readonly kind: 'tone' | 'relief';
  /** Pixels along a side. */
  readonly size: number;
  /** Length of a side on the work. */
  readonly side_mm: number;
  /** Shade or height at a place in [0, 1) of the tile. */
  readonly at: (u: number, v: number) => number;
}

const drawn = new WeakMap<Tile, Uint8Array>();

/** Pixels of a tile, drawn once for all looks, because it takes a while. */
export function tilePixels(tile: Tile): Uint8Array {
  const pixels = drawn.get(tile) ?? (tile.kind === 'tone' ? tonePixels(tile) : reliefPixels(tile));
  drawn.set(tile, pixels);
  return pixels;
}

/** Stores the pixels of a tile that a worker has drawn. */
export function keepPixels(tile: Tile, pixels: Uint8Array): void {
  drawn.set(tile, pixels);
}

function tonePixels({ size, at }: Tile): Uint8Array {
  const pixels = new Uint8Array(size * size * 4);
  for (let i = 0; i < size * size; i++) {
    const grey = Math.round(255 * Math.max(0, Math.min(1, at((i % size) / size, Math.floor(i / size) / size))));
    pixels.set([grey, grey, grey, 255], 4 * i);
  }
  return pixels;
}

function reliefPixels({ size, side_mm, at: height }: Tile): Uint8Array {
  const heights = new Float32Array(size * size);
  for (let i = 0; i < heights.length; i++) heights[i] = height((i % size) / size, Math.floor(i / size) / size);
  const at = (x: number, y: number): number => heights[((y + size) % size) * size + ((x + size) % size)] ?? 0;
  const run = (2 * side_mm) / size;
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
}
