/** How strip units turn into millimetres and newtons: lengths times `length`, forces times `force`, and so on. */
export interface StripScale {
  /** D, mm. */
  readonly length: number;
  /** EI/D^2, N. */
  readonly force: number;
  /** EI/D, N mm; also the unit of energy, since 1 N mm = 1 mJ. */
  readonly moment: number;
  /** EA D^2/EI of a solid strip = 12 (D/t)^2; does not depend on E. */
  readonly stretchStiffness: number;
}

/**
 * Scales a solid strip of rectangular section: EI = E w t^3/12.
 *
 * @param length D, mm, above 0: the length that the problem is scaled by
 * @param thickness t, mm, above 0
 * @param width w of the strip across the plane, mm, above 0
 * @param modulus E, MPa, above 0; it scales forces and energy only, never the shape between posed ends
 */
export function stripScale(length: number, thickness: number, width: number, modulus: number): StripScale {
  const bending = (modulus * width * thickness ** 3) / 12;
  return {
    length,
    force: bending / length ** 2,
    moment: bending / length,
    stretchStiffness: 12 * (length / thickness) ** 2,
  };
}
