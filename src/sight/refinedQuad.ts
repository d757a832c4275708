import { distance, inverse, type Vec2 } from '../core/index.ts';
import { type GreyPicture, lightAt } from './greyPicture.ts';

export interface RefinedQuad {
  readonly corners: readonly Vec2[];
  /** Standard uncertainty of each coordinate of each corner, pixels. */
  readonly u: readonly number[];
  /** Width over which the edges rise from 10 to 90 % of their step, pixels; a picture of no blur has about 1. */
  readonly blur: number;
  /** Whether all four sides were found near the corners given; if not, the corners are as given. */
  readonly found: boolean;
}

export interface QuadSearch {
  /** What lies outside: lighter, darker, or either where that is not known. */
  readonly outside?: 'lighter' | 'darker';
  /** Part of each side that is left out at either end, where corners are rounded or others begin. */
  readonly ends?: number;
  /** How far from a side, in and out, nothing else lies, pixels; `reach` where it is not told. */
  readonly room?: number;
}

/** A side as a curve over its chord: how far out it lies at `t` from -1 to 1 along the chord. */
interface Side {
  readonly a: Vec2;
  readonly b: Vec2;
  readonly terms: readonly number[];
  /** Covariance of the terms, pixels squared. */
  readonly spread: readonly (readonly number[])[];
}

/** Sides longer than this many pixels may be bent by the lens. */
const STRAIGHT = 250;
/** What no fit shows, as a share of the blur: pixels that are not points, light that is not linear. By drawn pictures of this project. */
const LEAST_U = 0.012;
/** Neighbouring profiles are not independent: they share pixels and blocks of JPEG. */
const SHARED = 1.5;
/** Steps of light smaller than this are noise. */
const LEAST_STEP = 0.02;
/** Residuals beyond so many standard deviations do not count (Tukey's biweight; Huber 1981, Robust Statistics). */
const TUKEY = 4.685;

/**
 * Finds the four sides of a quadrilateral to a small part of a pixel: across each side the strongest step of light is sought, the
 * line on which most of them agree is taken (Fischler and Bolles 1981), and then each step is placed by the area under its profile
 * (a grey-level moment, after Tabatabai and Mitchell 1984) and the side fitted robustly. Corners are where sides meet.
 *
 * @param corners in order round the quadrilateral, either way
 * @param reach how far off the true side may be, pixels
 */
export function refinedQuad(
  picture: GreyPicture,
  corners: readonly Vec2[],
  reach: number,
  { outside, ends = 0.1, room = reach }: QuadSearch = {},
): RefinedQuad {
  const lost = { corners, u: corners.map(() => reach), blur: 0, found: false };
  const way = turns(corners);
  if (way === -4) {
    const { corners: back, u, ...rest } = refinedQuad(picture, [...corners].reverse(), reach, { outside, ends, room });
    return { ...rest, corners: [...back].reverse(), u: [...u].reverse() };
  }
  if (way !== 4) return lost;
  const sign = outside === undefined ? 0 : outside === 'lighter' ? 1 : -1;
  const coarse = sidesOf(corners, (a, b) => coarseSide(picture, a, b, reach, sign, ends));
  if (coarse === null) return lost;
  let quad = meetings(coarse.map(({ side }) => side));
  if (quad === null) return lost;
  let half = Math.min(room, 4);
  let blur = 0;
  let sides = coarse;
  for (let round = 0; round < 3; round++) {
    const before = sides;
    const after = sidesOf(quad, (a, b, i) =>
      fineSide(picture, a, b, half, before[i]!.sign, ends, before[i]!.side.terms[2] ?? 0),
    );
    const met = after && meetings(after.map(({ side }) => side));
    if (!(after && met)) return lost;
    [sides, quad] = [after, met];
    blur = sides.reduce((sum, each) => sum + each.blur / 4, 0);
    half = Math.max(2, Math.min(room, 1 + 1.25 * blur));
  }
  const isNear = quad.every((corner, i) => distance(corner, corners[i]!) < 1.5 * reach + 2);
  if (!isNear || turns(quad) !== 4) return lost;
  return {
    corners: quad,
    u: quad.map((_, i) => cornerU(sides[(i + 3) % 4]!.side, sides[i]!.side, LEAST_U * blur)),
    blur,
    found: true,
  };
}

interface FoundSide {
  readonly side: Side;
  /** 1 where it is lighter outside, -1 where darker. */
  readonly sign: number;
  readonly blur: number;
}

/** Sides between a corner and the next; null where one is not found. */
function sidesOf(
  corners: readonly Vec2[],
  find: (a: Vec2, b: Vec2, i: number) => FoundSide | null,
): FoundSide[] | null {
  const found: FoundSide[] = [];
  for (let i = 0; i < 4; i++) {
    const side = find(corners[i]!, corners[(i + 1) % 4]!, i);
    if (side === null) return null;
    found.push(side);
  }
  return found;
}

/** Light across a side: rows of samples from inside to outside, `step` pixels apart, at places `t` along it. */
interface Profiles {
  readonly places: readonly number[];
  readonly rows: readonly Float64Array[];
  readonly step: number;
  /** Profiles that were sought; those that leave the picture are missing. */
  readonly sought: number;
}

function profilesAcross(
  picture: GreyPicture,
  a: Vec2,
  b: Vec2,
  bend: number,
  half: number,
  step: number,
  ends: number,
): Profiles {
  const length = distance(a, b);
  const [along, out] = axes(a, b);
  const sought = Math.max(10, Math.min(80, Math.round(length / 2)));
  const count = 2 * Math.round(half / step) + 1;
  const places: number[] = [];
  const rows: Float64Array[] = [];
  for (let i = 0; i < sought; i++) {
    const t = (1 - 2 * ends) * ((2 * i + 1) / sought - 1);
    const off = bend * (t * t - 1);
    const at = (length * (t + 1)) / 2;
    const row = new Float64Array(count);
    for (let k = 0; k < count; k++) {
      const far = off + (k - (count - 1) / 2) * step;
      row[k] = lightAt(picture, [a[0] + at * along[0] + far * out[0], a[1] + at * along[1] + far * out[1]]);
    }
    if (row.some(Number.isNaN)) continue;
    places.push(t);
    rows.push(row);
  }
  return { places, rows, step, sought };
}

/** Directions along a side and out of a quadrilateral that runs clockwise as seen. */
function axes(a: Vec2, b: Vec2): [along: Vec2, out: Vec2] {
  const length = distance(a, b) || 1;
  const [x, y] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  return [
    [x, y],
    [y, -x],
  ];
}

/** The line on which most of the strongest steps lie. */
function coarseSide(
  picture: GreyPicture,
  a: Vec2,
  b: Vec2,
  reach: number,
  sign: number,
  ends: number,
): FoundSide | null {
  const step = Math.max(0.5, Math.min(1, reach / 8));
  const { places, rows, sought } = profilesAcross(picture, a, b, 0, reach + 2 * step, step, ends);
  const points: { t: number; off: number; size: number }[] = [];
  rows.forEach((row, i) => {
    let best = 0;
    let at = -1;
    for (let k = 2; k < row.length - 2; k++) {
      const rise = row[k + 2]! + row[k + 1]! - row[k - 1]! - row[k - 2]!;
      const size = sign === 0 ? Math.abs(rise) : sign * rise;
      if (size > Math.abs(best)) [best, at] = [rise, k];
    }
    if (Math.abs(best) / 2 > LEAST_STEP)
      points.push({ t: places[i]!, off: (at - (row.length - 1) / 2) * step, size: best });
  });
  if (points.length < 0.5 * sought) return null;
  // Either kind of step may be stronger in places: the kind that has more light in it all told is followed.
  const kind = sign === 0 ? Math.sign(points.reduce((sum, { size }) => sum + size, 0)) || 1 : sign;
  const own = points.filter(({ size }) => size * kind > 0);
  const near = Math.max(1, 1.5 * step);
  let most: typeof own = [];
  let weight = 0;
  for (let i = 0; i < own.length; i++)
    for (let k = i + Math.ceil(own.length / 6); k < own.length; k += 2) {
      const [p, q] = [own[i]!, own[k]!];
      const slope = (q.off - p.off) / (q.t - p.t);
      const agree = own.filter(({ t, off }) => Math.abs(off - p.off - slope * (t - p.t)) <= near);
      const sum = agree.reduce((total, { size }) => total + Math.min(Math.abs(size), 0.5), 0);
      if (sum > weight) [most, weight] = [agree, sum];
    }
  if (most.length < 0.4 * sought) return null;
  const fit = fitted(
    most.map(({ t }) => t),
    most.map(({ off }) => off),
    2,
  );
  return fit === null ? null : { side: { a, b, ...fit }, sign: kind, blur: 0 };
}

/** The side through the steps near it, each placed by the area under its profile. */
function fineSide(
  picture: GreyPicture,
  a: Vec2,
  b: Vec2,
  half: number,
  sign: number,
  ends: number,
  bend: number,
): FoundSide | null {
  const step = 0.5;
  const { places, rows, sought } = profilesAcross(picture, a, b, bend, half, step, ends);
  const at: number[] = [];
  const off: number[] = [];
  const mean = new Float64Array(rows[0]?.length ?? 0);
  rows.forEach((row, i) => {
    const last = row.length - 1;
    const inner = (row[0]! + row[1]!) / 2;
    const outer = (row[last]! + row[last - 1]!) / 2;
    const rise = outer - inner;
    if (rise * sign < LEAST_STEP) return;
    let area = 0;
    for (let k = 0; k <= last; k++) area += ((k === 0 || k === last ? 0.5 : 1) * step * (row[k]! - inner)) / rise;
    const place = (last * step) / 2 - area;
    if (Math.abs(place) > half) return;
    at.push(places[i]!);
    off.push(place + bend * (places[i]! ** 2 - 1));
    for (let k = 0; k <= last; k++) mean[k]! += (row[k]! - inner) / rise;
  });
  if (at.length < 0.4 * sought) return null;
  const fit = fitted(at, off, distance(a, b) > STRAIGHT ? 3 : 2);
  if (fit === null || fit.kept < 0.4 * sought) return null;
  return { side: { a, b, ...fit }, sign, blur: riseWidth(mean, step) };
}

/** Width from 10 to 90 % of a profile that rises from its first sample to its last. */
function riseWidth(profile: Float64Array, step: number): number {
  const last = profile.length - 1;
  const [low, high] = [profile[0]!, profile[last]!];
  const crossing = (share: number): number => {
    const level = low + share * (high - low);
    for (let k = 1; k <= last; k++) {
      const [p, q] = [profile[k - 1]!, profile[k]!];
      if (p < level && q >= level) return (k - 1 + (level - p) / (q - p)) * step;
    }
    return 0;
  };
  return Math.max(0, crossing(0.9) - crossing(0.1));
}

interface Fit {
  readonly terms: readonly number[];
  readonly spread: readonly (readonly number[])[];
  /** Points that count. */
  readonly kept: number;
}

/** A line (2 terms) or parabola (3) through points, those far off counting less or not at all. */
function fitted(t: readonly number[], off: readonly number[], count: number): Fit | null {
  if (t.length < 2 * count) return null;
  let weights = t.map(() => 1);
  let terms: readonly number[] = [];
  let spread: readonly (readonly number[])[] = [];
  for (let round = 0; round < 6; round++) {
    const normal = Array.from({ length: count }, () => new Array<number>(count).fill(0));
    const right = new Float64Array(count);
    t.forEach((place, i) => {
      for (let p = 0; p < count; p++) {
        right[p]! += weights[i]! * place ** p * off[i]!;
        for (let q = 0; q < count; q++) normal[p]![q]! += weights[i]! * place ** (p + q);
      }
    });
    const back = inverse(normal);
    terms = back.map((row) => row.reduce((sum, value, q) => sum + value * right[q]!, 0));
    const residuals = t.map((place, i) => off[i]! - valueAt(terms, place));
    const sizes = residuals.map(Math.abs).sort((p, q) => p - q);
    // 1.4826 of the median size is the standard deviation of a normal distribution.
    const deviation = Math.max(0.02, 1.4826 * sizes[sizes.length >> 1]!);
    spread = back.map((row) => row.map((value) => SHARED * value * deviation ** 2));
    if (round === 5) break;
    weights = residuals.map((residual) => {
      const share = residual / (TUKEY * deviation);
      return Math.abs(share) < 1 ? (1 - share * share) ** 2 : 0;
    });
  }
  return { terms, spread, kept: weights.filter((weight) => weight > 0.1).length };
}

const valueAt = (terms: readonly number[], t: number): number =>
  terms.reduce((sum, term, power) => sum + term * t ** power, 0);

/** The corners in which each side meets the one before it; null where they do not. */
function meetings(sides: readonly Side[]): Vec2[] | null {
  const corners: Vec2[] = [];
  for (let i = 0; i < 4; i++) {
    const corner = meeting(sides[(i + 3) % 4]!, sides[i]!);
    if (corner === null) return null;
    corners.push(corner);
  }
  return corners;
}

/** Where two curves meet, by their tangents near the corner that they share. */
function meeting(before: Side, after: Side): Vec2 | null {
  let at = after.a;
  for (let round = 0; round < 4; round++) {
    const [p, q] = [tangent(before, at), tangent(after, at)];
    const cross = p.along[0] * q.along[1] - p.along[1] * q.along[0];
    if (Math.abs(cross) < 0.1) return null;
    const [dx, dy] = [q.at[0] - p.at[0], q.at[1] - p.at[1]];
    const s = (dx * q.along[1] - dy * q.along[0]) / cross;
    at = [p.at[0] + s * p.along[0], p.at[1] + s * p.along[1]];
  }
  return at.every(Number.isFinite) ? at : null;
}

function tangent({ a, b, terms }: Side, near: Vec2): { at: Vec2; along: Vec2 } {
  const [along, out] = axes(a, b);
  const half = distance(a, b) / 2;
  const t = placeAlong(a, b, near);
  const off = valueAt(terms, t);
  const slope = ((terms[1] ?? 0) + 2 * (terms[2] ?? 0) * t) / half;
  const far = (t + 1) * half;
  const size = Math.hypot(1, slope);
  return {
    at: [a[0] + far * along[0] + off * out[0], a[1] + far * along[1] + off * out[1]],
    along: [(along[0] + slope * out[0]) / size, (along[1] + slope * out[1]) / size],
  };
}

function placeAlong(a: Vec2, b: Vec2, near: Vec2): number {
  const [along] = axes(a, b);
  const far = (near[0] - a[0]) * along[0] + (near[1] - a[1]) * along[1];
  return (2 * far) / (distance(a, b) || 1) - 1;
}

/** Uncertainty of a coordinate of the corner in which two sides meet. */
function cornerU(before: Side, after: Side, least: number): number {
  const variance = ({ spread }: Side, t: number): number =>
    spread.reduce((sum, row, p) => sum + row.reduce((part, value, q) => part + value * t ** (p + q), 0), 0);
  const [p, q] = [axes(before.a, before.b)[0], axes(after.a, after.b)[0]];
  const sine = p[0] * q[1] - p[1] * q[0];
  return Math.sqrt(least ** 2 + (variance(before, 1) + variance(after, -1)) / (2 * sine * sine));
}

/** Corners that turn clockwise as seen less those that turn counterclockwise: 4 or -4 for a convex quadrilateral. */
function turns(corners: readonly Vec2[]): number {
  let count = 0;
  corners.forEach((corner, i) => {
    const [before, after] = [corners[(i + 3) % 4]!, corners[(i + 1) % 4]!];
    const cross = (corner[0] - before[0]) * (after[1] - corner[1]) - (corner[1] - before[1]) * (after[0] - corner[0]);
    if (cross !== 0) count += Math.sign(cross);
  });
  return count;
}
