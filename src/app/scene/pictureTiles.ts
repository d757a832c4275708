export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Some rows of a picture. */
export interface Band {
  /** Its first row, from the top. */
  readonly top: number;
  /** Red, green and blue, row by row. */
  readonly pixels: Uint8Array<ArrayBuffer>;
}

/** What a graphics card has drawn of a picture, in samples: four bytes each, row by row from the bottom. */
export interface Drawn {
  readonly bytes: Uint8Array;
  /** Samples along a row, and for a pixel along each of its sides. */
  readonly width: number;
  readonly samples: number;
}

/**
 * Writes the means of what is drawn into a picture.
 * @param drawn a tile with its upper left corner at `left` of the band's first row
 * @param band three bytes a pixel
 * @param size of the band, pixels; what is drawn beyond it is left out
 */
export function averageInto({ bytes, width, samples }: Drawn, band: Uint8Array, size: PictureSize, left: number): void {
  const height = bytes.length / 4 / width;
  const columns = Math.min(width / samples, size.width - left);
  const rows = Math.min(height / samples, size.height);
  const share = 1 / samples ** 2;
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) {
      let [red, green, blue] = [0, 0, 0];
      for (let y = 0; y < samples; y++) {
        let at = 4 * ((height - 1 - j * samples - y) * width + i * samples);
        for (let x = 0; x < samples; x++, at += 4) {
          red += bytes[at]!;
          green += bytes[at + 1]!;
          blue += bytes[at + 2]!;
        }
      }
      const to = 3 * (j * size.width + left + i);
      band[to] = Math.round(red * share);
      band[to + 1] = Math.round(green * share);
      band[to + 2] = Math.round(blue * share);
    }
}
