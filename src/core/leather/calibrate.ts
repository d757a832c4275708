/** A figure found by a test on the maker's own leather, with what the measuring errors leave open. */
export interface Calibrated {
  readonly value: number;
  /** Smallest and largest that all errors together allow. */
  readonly low: number;
  readonly high: number;
}

/** A strip bent round a block or rod of known size and measured from mark to mark. Lengths in mm, angle in radians. */
export interface TestBend {
  /** Length along the leather from where it leaves one straight side to where it reaches the other: L, flat. */
  readonly length: number;
  /** Turn of the bend: pi/2 over the edge of a block, pi round a rod. Over 0. */
  readonly angle: number;
  /** Radius of the block's edge or of the rod: r, 0 or more. */
  readonly radius: number;
  /** t, over 0. */
  readonly thickness: number;
  /** How far each of the three lengths may be off, 0 or more. */
  readonly error: number;
}

/**
 * Neutral fraction of a leather from a test bend: K = (L / A - r) / t.
 *
 * The bounds take every length off by the error in the unlucky direction; K falls as r grows, and rises or falls with t by
 * the sign of L / A - r, so the ends of the intervals give the ends of K.
 * @returns null where no thickness is left within the error
 */
export function calibrateNeutral({ length, angle, radius, thickness, error }: TestBend): Calibrated | null {
  if (thickness - error <= 0) return null;
  const neutral = (l: number, r: number, t: number): number => (l / angle - r) / t;
  const [lengths, radii, thicknesses] = [length, radius, thickness].map((size) => [size - error, size + error]);
  const corners = lengths!.flatMap((l) =>
    radii!.flatMap((r) => thicknesses!.map((t) => neutral(l, Math.max(0, r), t))),
  );
  return {
    value: neutral(length, radius, thickness),
    low: Math.min(...corners),
    high: Math.max(...corners),
  };
}

/**
 * Bend ratio of a leather from a strip folded hard on itself: F = 2 t (1 + bendRatio).
 * @param foldThickness F, mm, over the hard fold
 * @param thickness t, mm, over 0
 * @param error how far each of the two may be off, mm, 0 or more
 * @returns null where no thickness is left within the error; a fold measured thinner than two layers gives 0
 */
export function calibrateBendRatio(foldThickness: number, thickness: number, error: number): Calibrated | null {
  if (thickness - error <= 0) return null;
  const ratio = (fold: number, t: number): number => Math.max(0, fold / (2 * t) - 1);
  return {
    value: ratio(foldThickness, thickness),
    low: ratio(foldThickness - error, thickness + error),
    high: ratio(foldThickness + error, thickness - error),
  };
}
