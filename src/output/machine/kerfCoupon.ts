import { rectangle, type Vec2 } from '../../core/index.ts';
import { type MachinePlan, planned } from './machinePlan.ts';
import { type MachineProfile, sameLeather } from './machineProfile.ts';
import type { Stroke } from './stroke.ts';

/** Two rows of strips, one read across the bed and one along it; mm. */
export const COUPON = { strips: 10, strip: 8, length: 30, apart: 10 } as const;

/** Width of a row of strips as drawn, mm. */
export const COUPON_ROW = COUPON.strips * COUPON.strip;

/** Widest kerf that a table takes, mm. */
const MOST_KERF = 2;

/** A row of strips from its lower left corner; `axis` 0 lays them side by side across the bed, 1 along it. */
function row([x, y]: Vec2, axis: 0 | 1): Stroke[] {
  const at = (along: number, over: number): Vec2 => (axis === 0 ? [x + along, y + over] : [x + over, y + along]);
  const [wide, high] = at(COUPON_ROW, COUPON.length);
  return [
    ...Array.from({ length: COUPON.strips - 1 }, (_, i): Stroke => {
      const along = (i + 1) * COUPON.strip;
      return {
        layer: 'CUT',
        depth: 2,
        isClosed: false,
        path: [{ kind: 'line', from: at(along, 0), to: at(along, COUPON.length) }],
      };
    }),
    { layer: 'CUT', depth: 3, isClosed: true, path: rectangle([x, y], [wide, high]) },
  ];
}

/**
 * A test piece whose readings give the kerf: two rows of ten strips, cut along their drawn lines without any allowance. Every strip
 * loses half a kerf on either side, so ten of them pushed together are ten kerfs narrower than drawn, and an error of reading counts
 * a tenth.
 *
 * Throws RangeError where no pass cuts, or where the bed is too small.
 */
export function kerfCoupon(profile: MachineProfile): MachinePlan {
  const { name, bed, margin_mm: margin, passes } = profile;
  if (!passes.some(({ layers }) => layers.includes('CUT')))
    throw new RangeError(`No pass of ${name} takes the layer CUT. Add it to the last pass.`);
  const [width, height] = [COUPON_ROW + COUPON.apart + COUPON.length, COUPON_ROW];
  if (bed.width_mm < width + 2 * margin || bed.height_mm < height + 2 * margin)
    throw new RangeError(
      `The test is ${width} × ${height} mm; the bed has room for ${bed.width_mm - 2 * margin} × ${bed.height_mm - 2 * margin} mm within its margins. Take a smaller margin.`,
    );
  const strokes = [...row([margin, margin], 0), ...row([margin + COUPON_ROW + COUPON.apart, margin], 1)];
  return {
    title: `Kerf test, ${name}`,
    bed: { width: bed.width_mm, height: bed.height_mm },
    beds: [{ number: 1, passes: planned(strokes, profile), pieces: [], crosses: [] }],
    leftOut: [],
    lacking: [],
    notes: [],
  };
}

/** What was read off a kerf test, mm. */
export interface CouponReading {
  /** The ten strips of each row, pushed together: across the bed and along it. */
  readonly across: number;
  readonly along: number;
  /** How far a reading may be off, above 0. */
  readonly error: number;
}

export interface CouponKerf {
  readonly kerf: number;
  /** How far the kerf may be off by the error of reading. */
  readonly doubt: number;
  readonly across: number;
  readonly along: number;
  /** Whether the two rows differ by more than reading explains: 3 times the doubt of their difference. */
  readonly differs: boolean;
}

/**
 * Kerf from a reading: k = (row - read) / 10 for each row, their mean with the doubt error / (10 sqrt 2), by first order.
 *
 * Throws RangeError for readings that give no kerf from 0 to 2 mm.
 */
export function couponKerf({ across, along, error }: CouponReading): CouponKerf {
  for (const read of [across, along])
    if (!(read <= COUPON_ROW && read >= COUPON_ROW - COUPON.strips * MOST_KERF))
      throw new RangeError(
        `Got ${read} mm; allowed: ${COUPON_ROW - COUPON.strips * MOST_KERF} to ${COUPON_ROW} mm. Push the ten strips of a row together and measure across all of them.`,
      );
  if (!(error > 0)) throw new RangeError(`Got an error of ${error} mm; allowed: above 0, such as 0.1 mm.`);
  const kerfOf = (read: number): number => (COUPON_ROW - read) / COUPON.strips;
  const doubt = error / COUPON.strips;
  return {
    kerf: (kerfOf(across) + kerfOf(along)) / 2,
    doubt: doubt / Math.SQRT2,
    across: kerfOf(across),
    along: kerfOf(along),
    differs: Math.abs(across - along) / COUPON.strips > 3 * doubt * Math.SQRT2,
  };
}

/** The machine with a reading in its table, to a thousandth; it takes the place of an older one of the same leather and thickness. */
export const withKerf = (
  profile: MachineProfile,
  leather: string,
  thickness: number,
  kerf: number,
): MachineProfile => ({
  ...profile,
  kerfs: [
    ...profile.kerfs.filter((each) => !(sameLeather(each.leather, leather) && each.thickness_mm === thickness)),
    { leather: leather.trim(), thickness_mm: thickness, kerf_mm: Math.round(kerf * 1000) / 1000 },
  ],
});
