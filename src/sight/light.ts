/** Light of the 256 greys, 0 to 1, by the curve of sRGB (IEC 61966-2-1): blur mixes light, not greys. */
export const LIGHT = Float64Array.from({ length: 256 }, (_, grey) => {
  const c = grey / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
});
