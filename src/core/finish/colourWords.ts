/**
 * Bounds of the hue names in OKLCh, degrees, each up to the next. Chosen so that the pure hues of sRGB and the browns lie
 * inside their own; judged by eye, no source.
 */
const HUES: readonly (readonly [from: number, name: string])[] = [
  [0, 'pink'],
  [12, 'red'],
  [42, 'orange'],
  [85, 'yellow'],
  [118, 'green'],
  [170, 'turquoise'],
  [218, 'blue'],
  [285, 'violet'],
  [335, 'pink'],
];

/** A warm colour is brown up to this lightness, and cream or beige where its chroma is small. Judged by eye. */
const BROWN = { from: 38, to: 95, lightness: 0.7, chroma: 0.15 } as const;
const OLIVE = { from: 95, to: 125, lightness: 0.7 } as const;
const PALE = 0.075;
const CREAM = 0.86;
/** Chroma under which no hue is seen. Judged by eye. */
const GREY = 0.022;

/**
 * A colour in plain words, as `dark brown`, for papers that are printed without colour.
 *
 * The name follows lightness, chroma and hue in OKLCh (B. Ottosson, "A perceptual color space for image processing", 2020; also
 * CSS Color Module Level 4, section 9). It is a help to the eye and no match to any dye.
 * @param colour `#rrggbb`, sRGB
 */
export function colourWords(colour: string): string {
  const { lightness, chroma, hue } = oklch(colour);
  const between = (low: number, high: number, name: string): string =>
    lightness < low ? `dark ${name}` : lightness > high ? `light ${name}` : name;
  if (lightness < 0.2) return 'black';
  if (chroma < GREY) return lightness > 0.94 ? 'white' : between(0.45, 0.78, 'grey');
  if (chroma < PALE && hue >= BROWN.from && hue < OLIVE.to && lightness > BROWN.lightness)
    return lightness > CREAM ? 'cream' : 'beige';
  if (hue >= BROWN.from && hue < BROWN.to && lightness < BROWN.lightness && chroma < BROWN.chroma)
    return between(0.36, 0.57, 'brown');
  if (hue >= OLIVE.from && hue < OLIVE.to && lightness < OLIVE.lightness) return between(0.42, 0.62, 'olive');
  const [, name] = HUES.findLast(([from]) => hue >= from)!;
  return between(0.42, 0.8, name);
}

function oklch(colour: string): { readonly lightness: number; readonly chroma: number; readonly hue: number } {
  const linear = (at: number): number => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  };
  const [r, g, b] = [linear(1), linear(3), linear(5)];
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  const x = 1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s;
  const y = 0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s;
  return {
    lightness: 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    chroma: Math.hypot(x, y),
    hue: ((Math.atan2(y, x) * 180) / Math.PI + 360) % 360,
  };
}
