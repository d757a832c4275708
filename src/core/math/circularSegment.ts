/** Circle through the ends of a chord, standing `rise` above its middle. */
export interface CircularSegment {
  readonly radius: number;
  /** Half the angle that the arc subtends, radians, 0 to pi. */
  readonly halfAngle: number;
  /** Arc length, in the chord's unit. */
  readonly arc: number;
}

/**
 * Arc over a chord: R = c^2/(8e) + e/2, alpha = 2 atan(2e/c), arc = 2 R alpha (circular segment, exact).
 * @param chord c > 0
 * @param rise e >= 0, any unit equal to the chord's; at e = 0 the arc is the chord and the radius infinite
 */
export function circularSegment(chord: number, rise: number): CircularSegment {
  const radius = (chord * chord) / (8 * rise) + rise / 2;
  if (!Number.isFinite(radius)) return { radius: Number.POSITIVE_INFINITY, halfAngle: 0, arc: chord };
  const halfAngle = 2 * Math.atan((2 * rise) / chord);
  return { radius, halfAngle, arc: 2 * radius * halfAngle };
}

/**
 * Rise of the arc of a given length over a chord, by bisection of `circularSegment` to 1e-12 of the chord.
 * @param chord c > 0
 * @param arc length wanted, at least the chord and at most the half circle's pi c / 2
 * @returns the rise, or null where no such arc exists
 */
export function riseForArc(chord: number, arc: number): number | null {
  if (arc < chord || arc > (Math.PI / 2) * chord) return null;
  let low = 0;
  let high = chord / 2;
  while (high - low > 1e-12 * chord) {
    const middle = (low + high) / 2;
    if (circularSegment(chord, middle).arc < arc) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
