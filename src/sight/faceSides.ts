import { heading, type Vec2, type Vec3 } from '../core/index.ts';
import { type GreyPicture, lightAt } from './greyPicture.ts';
import { pixelsPerMm, type Shows } from './shows.ts';

/** Edge of a face between two corners, at its height over the sheet at either end, mm. */
export interface FaceSide {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly heights: readonly [number, number];
}

/** Where a side was found, as its distance outward from where it was sought: `at + tilt * t` for t from -1 to 1 along it, mm. */
export interface SideLine {
  readonly at: number;
  readonly tilt: number;
}

/** A side as one photograph has it. */
interface SeenSide extends SideLine {
  /** Standard uncertainty of `at` and of `tilt`, mm. */
  readonly uAt: number;
  readonly uTilt: number;
  /** Share of the places along it where it was found. */
  readonly share: number;
}

export interface FoundSide extends SideLine {
  /** Agreement of the photographs, 0 to 1. */
  readonly support: number;
  /** For each photograph whether it looks at the side from well within, so that the ground is all that is beyond it. */
  readonly isWithin: readonly boolean[];
  /** For each photograph; null where it does not show the side. */
  readonly seen: readonly (SeenSide | null)[];
}

/** Part of a side that is left out at either end: rounded corners, and other sides. */
const ENDS = 0.06;
/** Most places along a side, and the least distance between them, mm. */
const MOST_PLACES = 60;
const LEAST_SPACING = 1.5;
/** Distance between the offsets that are tried, mm, and how far from a line a step of light still speaks for it. */
const BIN = 0.1;
const NEAR = 0.3;
/** Steps of light below this share of the light itself are texture and noise. */
const LEAST_STEP = 0.012;

/** Two photographs that see a line at places this far apart, were it on the sheet, tell whether it is, mm. */
const LEAST_PARALLAX = 1.2;
/** What steps count that are on the sheet: print, edges of pages, shadows. */
const ON_SHEET = 0.1;

/** A photograph in which sides are sought. */
export interface Seer {
  readonly picture: GreyPicture;
  readonly shows: Shows;
  /** Where its camera is, mm. */
  readonly eye: Vec3;
}

/** So far on the sheet behind a side, mm, its shadow and the book's lower edge do not blur with it any more. By rendered scenes of this project. */
const FROM_WITHIN = 1.5;

/** What counts for a photograph that looks at a side from without: the edge of the board's underside is near, and its cloth is the same. */
const FROM_WITHOUT = 0.5;

/** A step of light across a side. */
interface Step {
  readonly off: number;
  readonly weight: number;
  /** How much lighter it gets outward. */
  readonly slope: number;
}

/**
 * Finds a side within `reach` millimetres: steps of light across it are sought in each photograph, the line on which most of them
 * agree is taken, and then each photograph's own steps near it are fitted. Of three or more photographs one may disagree, but not
 * the only one that looks at the side from within, which has nothing but the ground beyond it.
 */
export function foundSide(seers: readonly Seer[], side: FaceSide, reach: number): FoundSide | null {
  const { from, to } = side;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const most = reach > 2 ? MOST_PLACES / 2 : MOST_PLACES;
  const count = Math.max(8, Math.min(most, Math.floor(((1 - 2 * ENDS) * length) / LEAST_SPACING)));
  const places = Array.from({ length: count }, (_, i) => (1 - 2 * ENDS) * ((2 * i + 1) / count - 1));
  const steps = seers.map((seer) => stepsAcross(seer, otherSight(seers, seer, side), side, places, reach));
  const bins = 2 * Math.round(reach / BIN) + 1;
  const supports = steps.map((each) => each.map((own) => supportOf(own, bins)));
  const isWithin = seers.map((seer) => behind(seer, side) > FROM_WITHIN);
  const weights = isWithin.map((within) => (within ? 1 : FROM_WITHOUT));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const within = isWithin.filter(Boolean).length;
  const mayDrop = isWithin.map((own) => seers.length > 2 && !(own && within === 1));
  let best: SideLine = { at: 0, tilt: 0 };
  let support = 0;
  const own = new Float64Array(seers.length);
  // A guess may be turned by two degrees.
  const steepest = Math.min(reach, 0.3 + 0.035 * length, reach > 2 ? reach : 1);
  for (let tilt = -steepest; tilt <= steepest; tilt += 2 * BIN) {
    const shifts = Int32Array.from(places, (place) => Math.round((tilt * place) / BIN));
    for (let bin = 0; bin < bins; bin++) {
      let sum = 0;
      for (let i = 0; i < own.length; i++) {
        own[i] = weights[i]! * agreement(supports[i]!, shifts, bin);
        sum += own[i]!;
      }
      let most = sum / total;
      for (let i = 0; i < own.length; i++)
        if (mayDrop[i]) most = Math.max(most, (sum - own[i]!) / (total - weights[i]!));
      if (most <= support) continue;
      support = most;
      best = { at: (bin - (bins - 1) / 2) * BIN, tilt };
    }
  }
  if (support === 0) return null;
  return { ...best, support, isWithin, seen: steps.map((each) => fitted(each, places, best)) };
}

/** Outward from a side, for corners that run clockwise as seen from above. */
export function outward({ from, to }: Pick<FaceSide, 'from' | 'to'>): Vec2 {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [-(to[1] - from[1]) / length, (to[0] - from[0]) / length];
}

/** How far on the sheet, outward, what a camera sees at the middle of a side is from it, mm. */
export function behind({ eye }: Seer, side: FaceSide): number {
  const out = outward(side);
  const [x, y] = [(side.from[0] + side.to[0]) / 2 - eye[0], (side.from[1] + side.to[1]) / 2 - eye[1]];
  const height = (side.heights[0] + side.heights[1]) / 2;
  return ((x * out[0] + y * out[1]) * height) / (eye[2] - height);
}

/** Of the other photographs that which sees the sheet beyond a side at the most different place; null where none does. */
function otherSight(seers: readonly Seer[], seer: Seer, side: FaceSide): Seer | null {
  const own = behind(seer, side);
  let far = LEAST_PARALLAX;
  let other: Seer | null = null;
  for (const each of seers) {
    const off = Math.abs(behind(each, side) - own);
    if (off <= far) continue;
    far = off;
    other = each;
  }
  return other;
}

function agreement(supports: readonly Float32Array[], shifts: Int32Array, bin: number): number {
  let sum = 0;
  for (let k = 0; k < shifts.length; k++) {
    const support = supports[k]!;
    const at = bin + shifts[k]!;
    if (at >= 0 && at < support.length) sum += support[at]!;
  }
  return sum / shifts.length;
}

function supportOf(steps: readonly Step[], bins: number): Float32Array {
  const support = new Float32Array(bins);
  const spread = NEAR / BIN;
  for (const { off, weight } of steps) {
    const middle = off / BIN + (bins - 1) / 2;
    for (let bin = Math.max(0, Math.ceil(middle - spread)); bin <= Math.min(bins - 1, middle + spread); bin++)
      support[bin] = Math.max(support[bin]!, weight * (1 - Math.abs(bin - middle) / spread));
  }
  return support;
}

/** For each place along a side the steps of light across it. */
function stepsAcross(
  { picture, shows, eye }: Seer,
  other: Seer | null,
  side: FaceSide,
  places: readonly number[],
  reach: number,
): Step[][] {
  const { from, to, heights } = side;
  const out = outward(side);
  const middle: Vec2 = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const step = 0.5 / pixelsPerMm(shows, middle, (heights[0] + heights[1]) / 2);
  if (!(step > 0)) return places.map(() => []);
  const half = Math.ceil(reach / step) + 4;
  const spacing = ((1 - 2 * ENDS) * 2) / places.length;
  const pixel = new Float64Array(2);
  const parts = reach > 2 ? [0] : [-1 / 3, 0, 1 / 3];
  const share = 1 / parts.length;
  return places.map((place) => {
    const row = new Float64Array(2 * half + 1);
    for (const part of parts) {
      const t = (1 + place + part * spacing) / 2;
      const [x, y] = [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
      const z = heights[0] + t * (heights[1] - heights[0]);
      for (let k = 0; k <= 2 * half; k++) {
        const far = (k - half) * step;
        if (!shows(x + far * out[0], y + far * out[1], z, pixel)) return [];
        row[k]! += share * lightAt(picture, [pixel[0]!, pixel[1]!]);
      }
    }
    const steps = stepsOf(row, step, half, reach);
    if (other === null) return steps;
    const t = (1 + place) / 2;
    const z = heights[0] + t * (heights[1] - heights[0]);
    const grow = eye[2] / (eye[2] - z);
    return steps.map((own) => {
      const [x, y] = [
        from[0] + t * (to[0] - from[0]) + own.off * out[0],
        from[1] + t * (to[1] - from[1]) + own.off * out[1],
      ];
      const under: Vec2 = [eye[0] + grow * (x - eye[0]), eye[1] + grow * (y - eye[1])];
      return showsStep(other, under, out, own.slope) ? { ...own, weight: ON_SHEET * own.weight } : own;
    });
  });
}

/** Whether a photograph shows a like step of light at a place of the sheet. */
function showsStep({ picture, shows }: Seer, [x, y]: Vec2, out: Vec2, slope: number): boolean {
  const step = 0.5 / pixelsPerMm(shows, [x, y], 0);
  const half = Math.ceil(0.4 / step) + 4;
  const row = new Float64Array(2 * half + 1);
  const pixel = new Float64Array(2);
  for (let k = 0; k <= 2 * half; k++) {
    const far = (k - half) * step;
    if (!shows(x + far * out[0], y + far * out[1], 0, pixel)) return false;
    row[k] = lightAt(picture, [pixel[0]!, pixel[1]!]);
  }
  const like = 0.4 * Math.abs(slope);
  return slopesOf(row).some((each) => each * Math.sign(slope) > like);
}

/** Normal distribution's slope over two samples, which are a pixel. */
const SLOPE = [4, 3, 2, 1, 0, -1, -2, -3, -4].map((k) => k * Math.exp((-k * k) / 8));

function slopesOf(row: Float64Array): Float64Array {
  const slopes = new Float64Array(row.length);
  for (let k = 4; k + 4 < row.length; k++) {
    let sum = 0;
    for (let i = 0; i < 9; i++) sum += SLOPE[i]! * row[k + 4 - i]!;
    // Nothing where the row leaves the picture.
    slopes[k] = Number.isNaN(sum) ? 0 : sum;
  }
  return slopes;
}

function stepsOf(row: Float64Array, step: number, half: number, reach: number): Step[] {
  const slopes = slopesOf(row);
  const steps: Step[] = [];
  for (let k = 5; k + 5 < row.length; k++) {
    const [a, b, c] = [Math.abs(slopes[k - 1]!), Math.abs(slopes[k]!), Math.abs(slopes[k + 1]!)];
    if (!(b > a && b >= c)) continue;
    const light = (row[k - 4]! + row[k + 4]!) / 2 + 0.02;
    const least = LEAST_STEP * light * 4;
    if (b < least) continue;
    const off = (k - half + (a - c) / (2 * (a - 2 * b + c))) * step;
    if (Math.abs(off) <= reach) steps.push({ off, weight: b / (b + 3 * least), slope: slopes[k]! });
  }
  return steps;
}

/** Line through a photograph's own steps near a line, those far off not counting (Tukey's biweight; Huber 1981, Robust Statistics). */
function fitted(steps: readonly (readonly Step[])[], places: readonly number[], line: SideLine): SeenSide | null {
  let { at, tilt } = line;
  let near = 0.5;
  let result: SeenSide | null = null;
  for (let round = 0; round < 8; round++) {
    const [sums, squares] = [[0, 0, 0, 0, 0], 0];
    let residuals = squares;
    let inside = 0;
    steps.forEach((own, i) => {
      const t = places[i]!;
      const aim = at + tilt * t;
      // Of the steps at a place the one that is nearest, and strong for being near.
      let best: Step | null = null;
      for (const each of own)
        if (Math.abs(each.off - aim) < near && (best === null || each.weight > best.weight)) best = each;
      if (best === null) return;
      const off = best.off - aim;
      const weight = (1 - (off / near) ** 2) ** 2;
      inside++;
      residuals += weight * off * off;
      [1, t, t * t].forEach((value, k) => {
        sums[k]! += weight * value;
      });
      sums[3]! += weight * off;
      sums[4]! += weight * off * t;
    });
    const [w, wt, wtt, wo, wot] = sums as [number, number, number, number, number];
    const whole = w * wtt - wt * wt;
    if (inside < 0.35 * places.length || !(whole > 1e-9)) return null;
    at += (wtt * wo - wt * wot) / whole;
    tilt += (w * wot - wt * wo) / whole;
    const deviation = Math.sqrt(residuals / w);
    near = Math.max(0.15, Math.min(near, 4 * deviation));
    result = {
      at,
      tilt,
      uAt: deviation * Math.sqrt(wtt / whole),
      uTilt: deviation * Math.sqrt(w / whole),
      share: inside / places.length,
    };
  }
  return result;
}

/** Side moved to a line. */
export function movedSide({ from, to, heights }: FaceSide, { at, tilt }: SideLine): FaceSide {
  const [x, y] = heading(Math.atan2(to[1] - from[1], to[0] - from[0]));
  const moved = (point: Vec2, by: number): Vec2 => [point[0] - by * y, point[1] + by * x];
  return { from: moved(from, at - tilt), to: moved(to, at + tilt), heights };
}
