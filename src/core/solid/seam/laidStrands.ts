import type { FoldedHole } from '../meshData.ts';
import type { SeamCourse } from './seamCourse.ts';
import type { StrandSection } from './seamWork.ts';
import { between, type StationRow } from './station.ts';

/** The middle line of a strand on the folded cover, three numbers a knot; lengths in mm. */
export interface Strand {
  readonly section: StrandSection;
  readonly points: Float64Array;
  /** Unit vectors out of the leather under the strand. */
  readonly outward: Float64Array;
}

/** Lays the strands of a seam along its holes on the folded cover. Between two holes the seam goes through the place halfway. */
export function laidStrands(course: SeamCourse, seam: readonly FoldedHole[]): Strand[] {
  const known = new Map<StationRow, RowPlaces>();
  const place = new Float64Array(9);
  return course.strands.map(({ row, knots }) => {
    const places = known.get(row) ?? rowPlaces(row, seam);
    known.set(row, places);
    const points = new Float64Array(3 * knots.length);
    const outward = new Float64Array(3 * knots.length);
    for (let i = 0; i < knots.length; i++) {
      const { u, y, z, turn, twist } = knots[i]!;
      placeOn(place, row, places, u);
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const [cos, sin] = twist === 0 ? [s, 0] : [s * Math.cos(twist), s * Math.sin(twist)];
      for (let k = 0; k < 3; k++) {
        const [out, edge] = [place[OUT + k]!, place[EDGEWARD + k]!];
        points[3 * i + k] = place[k]! + y * out + z * edge;
        outward[3 * i + k] = c * out + cos * edge;
      }
      if (sin === 0) continue;
      // Along the seam: out of the leather x toward the edge.
      const [x, p, q] = [0, 1, 2].map((k) => place[OUT + k]!) as [number, number, number];
      const [e, f, g] = [0, 1, 2].map((k) => place[EDGEWARD + k]!) as [number, number, number];
      outward[3 * i]! += sin * (p * g - q * f);
      outward[3 * i + 1]! += sin * (q * e - x * g);
      outward[3 * i + 2]! += sin * (x * f - p * e);
    }
    return { section: course.section, points, outward };
  });
}

/** Where a place's vectors lie in its list: the place on the grain side, the way out of it, and that to the edge. */
const OUT = 3;
const EDGEWARD = 6;
const SIZE = 9;

/** Nine numbers for each station, and for the place halfway to the next station; NaN where there is none. */
interface RowPlaces {
  readonly stations: Float64Array;
  readonly halfway: Float64Array;
}

function rowPlaces({ stations }: StationRow, seam: readonly FoldedHole[]): RowPlaces {
  const places = {
    stations: new Float64Array(SIZE * stations.length),
    halfway: new Float64Array(SIZE * stations.length),
  };
  stations.forEach(({ hole, fan }, i) => {
    const { at, out, along, edgeward, halfway } = seam[hole]!;
    const next = stations[(i + 1) % stations.length]!.hole;
    const isNext = next !== hole && next === (hole + 1) % seam.length;
    const [c, s] = [Math.cos(fan), Math.sin(fan)];
    for (let k = 0; k < 3; k++) {
      places.stations[SIZE * i + k] = at[k]!;
      places.stations[SIZE * i + OUT + k] = out[k]!;
      places.stations[SIZE * i + EDGEWARD + k] = c * edgeward[k]! + s * along[k]!;
      places.halfway[SIZE * i + k] = isNext && halfway ? halfway.at[k]! : Number.NaN;
      places.halfway[SIZE * i + OUT + k] = isNext && halfway ? halfway.out[k]! : Number.NaN;
    }
  });
  return places;
}

/** Writes the axes at a place of a row: a parabola through two stations and the place halfway. */
function placeOn(place: Float64Array, row: StationRow, { stations, halfway }: RowPlaces, u: number): void {
  const [from, to, share] = between(row, u);
  const [a, b] = [SIZE * from, SIZE * to];
  if (share === 0 || share === 1) {
    const at = share === 0 ? a : b;
    for (let k = 0; k < SIZE; k++) place[k] = stations[at + k]!;
    return;
  }
  const isBent = !Number.isNaN(halfway[a]!);
  const [k0, k1, k2] = isBent
    ? [(1 - share) * (1 - 2 * share), 4 * share * (1 - share), share * (2 * share - 1)]
    : [1 - share, 0, share];
  for (let k = 0; k < EDGEWARD; k++)
    place[k] = k0 * stations[a + k]! + (isBent ? k1 * halfway[a + k]! : 0) + k2 * stations[b + k]!;
  for (let k = EDGEWARD; k < SIZE; k++) place[k] = (1 - share) * stations[a + k]! + share * stations[b + k]!;
  toUnit(place, OUT);
  const [x, y, z] = [place[OUT]!, place[OUT + 1]!, place[OUT + 2]!];
  const lean = place[EDGEWARD]! * x + place[EDGEWARD + 1]! * y + place[EDGEWARD + 2]! * z;
  place[EDGEWARD]! -= lean * x;
  place[EDGEWARD + 1]! -= lean * y;
  place[EDGEWARD + 2]! -= lean * z;
  toUnit(place, EDGEWARD);
}

function toUnit(place: Float64Array, at: number): void {
  const [x, y, z] = [place[at]!, place[at + 1]!, place[at + 2]!];
  const scale = 1 / (Math.sqrt(x * x + y * y + z * z) || 1);
  place[at] = scale * x;
  place[at + 1] = scale * y;
  place[at + 2] = scale * z;
}
