import { type HeavyStrip, heavyStrip, MOST_DROOP, stripOfDroop } from './heavyStrip.ts';
import type { TestFigure } from './testFigure.ts';
import type { DroopReading } from './testSchema.ts';

/** Standard gravity, m/s^2, so N/kg (ISO 80000-3, exact). */
const GRAVITY = 9.80665;

/** A droop below so many times its error is not told from a strip that hangs level. */
const LEAST_DROOP = 3;

/** What a strip that hangs over an edge says of its leather. All are figures at low strain: leather is stiffer where it is bent more. */
export interface DroopFigures {
  /** E, by the exact shape of the strip. */
  readonly modulus_MPa: TestFigure;
  /** Bending length c: the length that bends by its own weight as far as the leather's stiffness lets it, (EI / w)^(1/3). */
  readonly bendingLength_mm: number;
  /** Flexural rigidity for one mm of width, N mm: G = w c^3 with w the weight of one mm^2 (ASTM D1388, ISO 9073-7). */
  readonly rigidity_Nmm: number;
  /**
   * c by the formula of the fabric tests, L (cos(theta / 2) / (8 tan(theta)))^(1/3), theta from the edge down to the tip (Peirce 1930,
   * from memory).
   */
  readonly fabricLength_mm: number;
  /** E by the formula for small droops, EI = w L^4 / 8 d. */
  readonly smallDroopModulus_MPa: number;
  readonly density_kg_m3: TestFigure;
  /**
   * Stretch of the grain at the edge, as a share: t / 2 times the curvature there, which is sqrt(2 d / c) / c, as the bend holds half
   * of EI times its square for each mm and the weight has gone down by the droop (the first integral of the shape).
   */
  readonly strain: number;
}

/** Why readings give no answer, and what to do. */
export interface TestRefusal {
  readonly reason: string;
}

/**
 * Stiffness of a leather from a strip of thickness t and width b that hangs over an edge by L and droops by d under its own weight
 * w = W g / length, N/mm: `stripOfDroop` has the shape for d / L, so c = L / l, EI = w c^3 and E = 12 EI / (b t^3).
 *
 * With S = d ln(l^3) / d ln(d / L) the relative variance is, by first order (JCGM 100:2008 5.1.6, for products of powers), that of
 * weight, length and width, 9 times that of t, (3 + S)^2 times that of L and S^2 times that of d. The thickness decides: 2.5 % of it
 * are 7.5 % of E. For small droops S = 1, as in d = w L^4 / 8 EI.
 * @returns a reason where the droop says nothing of the stiffness
 */
export function droopTest(reading: Omit<DroopReading, 'day' | 'way' | 'worked' | 'grain'>): DroopFigures | TestRefusal {
  const {
    thickness_mm: t,
    overhang_mm: overhang,
    droop_mm: droop,
    length_mm: length,
    width_mm: width,
    weight_g: weight,
  } = reading;
  const share = droop / overhang;
  if (overhang > length) return { reason: 'The overhang is longer than the strip: check both.' };
  if (share > MOST_DROOP) return { reason: 'The strip hangs nearly straight down: let less of it hang over.' };
  if (droop < LEAST_DROOP * reading.error_mm)
    return { reason: 'The tip hangs too little to read: let more of it hang over.' };

  const strip = stripOfDroop(share);
  const u = reading.error_mm / 2;
  const relative = {
    droop: u / droop,
    overhang: u / overhang,
    length: u / length,
    width: u / width,
    weight: reading.scales_g / 2 / weight,
    thickness: reading.callipers_mm / 2 / t,
  };
  const slope = 3 * slopeOfLength(strip);
  const line = (weight * 1e-3 * GRAVITY) / length;
  const bendingLength = overhang / strip.length;
  const second = (width * t ** 3) / 12;
  const modulus = (line * bendingLength ** 3) / second;
  const density = (1e6 * weight) / (length * width * t);
  const chord = Math.atan2(strip.droop, strip.reach);
  const ofPiece = Math.hypot(relative.length, relative.width, relative.weight);
  return {
    modulus_MPa: {
      value: modulus,
      u: modulus * Math.hypot(ofPiece, 3 * relative.thickness, (3 + slope) * relative.overhang, slope * relative.droop),
    },
    bendingLength_mm: bendingLength,
    rigidity_Nmm: (line * bendingLength ** 3) / width,
    fabricLength_mm: overhang * Math.cbrt(Math.cos(chord / 2) / (8 * Math.tan(chord))),
    smallDroopModulus_MPa: (line * overhang ** 4) / (8 * droop * second),
    density_kg_m3: { value: density, u: density * Math.hypot(ofPiece, relative.thickness) },
    strain: (Math.sqrt(2 * strip.droop) / bendingLength) * (t / 2),
  };
}

/** Step of the tip's angle as a share of what it may still turn, small beside any curve and large beside rounding. */
const STEP = 1e-3;

/** d ln(length) / d ln(droop / length) of a strip, from two whose tips point a little more and less: a third where the droop is small. */
function slopeOfLength({ tip }: HeavyStrip): number {
  const by = STEP * Math.min(tip, Math.PI / 2 - tip);
  const [more, less] = [heavyStrip(tip + by), heavyStrip(tip - by)];
  const longer = Math.log(more.length / less.length);
  return longer / (Math.log(more.droop / less.droop) - longer);
}
