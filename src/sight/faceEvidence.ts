import type { Photograph, Vec2, Vec3 } from '../core/index.ts';
import { behind, type FaceSide, outward, type Seer } from './faceSides.ts';
import { type GreyPicture, lightAt } from './greyPicture.ts';
import type { LevelGrid } from './levelGrid.ts';

/**
 * Whether places belong to the face of a book or to the ground about it: what is on the face is seen alike by all photographs at the
 * height of the face, what is on the ground at the height of the ground. Evidence is 1 for the ground, -1 for the face, and 0
 * where nothing tells, as on a plain cover far from its rim.
 */

/** Factors from the light of one photograph to that of another, by their places. */
export type Exposures = readonly (readonly number[])[];

/** Distance between the offsets at which a side is looked at, mm, and places along it. */
export const EVIDENCE_STEP = 0.5;
const ALONG = 40;
/** Two photographs that see a line at places this far apart, were it on the sheet, tell whether it is, mm. */
const LEAST_PARALLAX = 1;
/** Difference of light, as a share of it, from which on two places are surely not the same, and the light that noise adds. */
const DIFFERENT = 0.25;
const DARK = 0.02;
/** From the middle of a mark to the paper beside it, in parts of its own half. */
const BESIDE = 1.16;

/** How photographs were exposed, by the paper round the marks that two of them show. */
export function exposuresOf(
  taken: readonly { readonly picture: GreyPicture; readonly photograph: Photograph }[],
): Exposures {
  const whites = taken.map(({ picture, photograph }) => whitesOf(picture, photograph));
  return whites.map((own) =>
    whites.map((other) => {
      const ratios = [...own].flatMap(([mark, white]) => (other.has(mark) ? [other.get(mark)! / white] : []));
      return ratios.sort((a, b) => a - b)[ratios.length >> 1] ?? 1;
    }),
  );
}

function whitesOf(picture: GreyPicture, { marks }: Photograph): Map<string, number> {
  return new Map(
    marks.flatMap(({ page, mark, seen }) => {
      if (seen.length !== 4) return [];
      const [x, y] = [0, 1].map((k) => seen.reduce((sum, corner) => sum + corner[k]!, 0) / 4) as [number, number];
      const lights = seen.map(([a, b], k) => {
        const [c, d] = seen[(k + 1) % 4]!;
        return lightAt(picture, [x + BESIDE * ((a + c) / 2 - x), y + BESIDE * ((b + d) / 2 - y)]);
      });
      const white = lights.sort((a, b) => a - b)[2]!;
      return white > 0 ? [[`${page} ${mark}`, white] as const] : [];
    }),
  );
}

/**
 * Evidence at offsets from `low` to `high` outward from a side, mm. Of two photographs that which looks at the side more from within
 * has nothing but the ground beyond it, and the other sees that ground.
 */
export function sideEvidence(
  seers: readonly Seer[],
  exposures: Exposures,
  side: FaceSide,
  [low, high]: readonly [number, number],
): Float64Array {
  const { from, to, heights } = side;
  const out = outward(side);
  const evidence = new Float64Array(Math.round((high - low) / EVIDENCE_STEP) + 1);
  const leans = seers.map((seer) => behind(seer, side));
  const pairs = pairsOf(seers, exposures).filter(([i, k]) => leans[i]! > 0 && leans[k]! < leans[i]! - LEAST_PARALLAX);
  for (let at = 0; at < evidence.length; at++) {
    const off = low + at * EVIDENCE_STEP;
    const sum = new Sum();
    for (let k = 0; k < ALONG; k++) {
      const t = 0.05 + (0.9 * (k + 0.5)) / ALONG;
      const [x, y] = [from[0] + t * (to[0] - from[0]) + off * out[0], from[1] + t * (to[1] - from[1]) + off * out[1]];
      const z = heights[0] + t * (heights[1] - heights[0]);
      for (const [, , own, other, exposure] of pairs) sum.add(told(own, other, exposure, x, y, z));
    }
    evidence[at] = sum.mean;
  }
  return evidence;
}

/** Evidence at the places of a grid at height `z`. */
export function levelEvidence(
  seers: readonly Seer[],
  exposures: Exposures,
  { left, low, step, columns, rows }: LevelGrid,
  z: number,
): Float32Array {
  const pairs = pairsOf(seers, exposures);
  const evidence = new Float32Array(columns * rows);
  for (let row = 0, i = 0; row < rows; row++)
    for (let column = 0; column < columns; column++, i++) {
      const sum = new Sum();
      for (const [, , own, other, exposure] of pairs)
        sum.add(told(own, other, exposure, left + column * step, low + row * step, z));
      evidence[i] = sum.mean;
    }
  return evidence;
}

type Pair = readonly [i: number, k: number, own: Seer, other: Seer, exposure: number];

const pairsOf = (seers: readonly Seer[], exposures: Exposures): Pair[] =>
  seers.flatMap((own, i) =>
    seers.flatMap((other, k): Pair[] => (i === k ? [] : [[i, k, own, other, exposures[i]![k]!]])),
  );

/** What one photograph's sight of a place tells beside another's: NaN where one of them does not reach. */
function told(own: Seer, other: Seer, exposure: number, x: number, y: number, z: number): number {
  const light = exposure * lightOf(own, x, y, z);
  const [a, b] = onGround(own.eye, x, y, z);
  return differs(light, lightOf(other, x, y, z)) - differs(light, lightOf(other, a, b, 0));
}

const pixel = new Float64Array(2);
const lightOf = ({ picture, shows }: Seer, x: number, y: number, z: number): number =>
  shows(x, y, z, pixel) ? lightAt(picture, [pixel[0]!, pixel[1]!]) : Number.NaN;

/** Where a line of sight meets the ground. */
function onGround(eye: Vec3, x: number, y: number, z: number): Vec2 {
  const grow = eye[2] / (eye[2] - z);
  return [eye[0] + grow * (x - eye[0]), eye[1] + grow * (y - eye[1])];
}

const differs = (a: number, b: number): number => Math.min(1, Math.abs(a - b) / (DIFFERENT * ((a + b) / 2 + DARK)));

/** Mean of what is a number. */
class Sum {
  #sum = 0;
  #count = 0;
  add(value: number): void {
    if (Number.isNaN(value)) return;
    this.#sum += value;
    this.#count++;
  }
  get mean(): number {
    return this.#count > 0 ? this.#sum / this.#count : 0;
  }
}
