/** A picture in colour, four bytes a pixel, row by row from the top; what was not seen has no opacity. */
export interface ColourPicture {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8ClampedArray<ArrayBuffer>;
}
