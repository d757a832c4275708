import { bilinear } from '../math/linear.ts';
import type { Vec2 } from '../math/vec2.ts';
import type { Vec3 } from '../math/vec3.ts';
import { type Adjusted, adjust, type Observation, type Prior, Unknowns } from './adjust.ts';
import { type Lens, pixelOf, rotationBy, type Standpoint, seenFrom } from './camera.ts';
import type { Photograph, PlaceDoubt, SeenMark } from './photograph.ts';
import { guessAt, longSide, type Placement, placedOnSheet, type SceneStart, sceneStart } from './sceneStart.ts';

/** What is assumed of a camera and a sheet before anything is seen. Assumptions of this project, no source. */
export const SCENE_DOUBTS = {
  /** Focal length that the camera wrote, as a share: it is rounded and changes a little with the distance. */
  focal: 0.05,
  /** The same where it wrote none, about `USUAL_FOCAL`. */
  focalUnknown: 0.35,
  /** Principal point off the middle of the picture, as a share of the longer side. */
  centre: 0.007,
  distortion: 0.05,
  /** How far a page curls up at its ends, mm. */
  curl: 0.7,
  /** How far one mark stands off its page's own curve, mm. */
  lift: 0.1,
} as const;

/** Focal length over the longer side of a usual telephone's picture. From memory. */
const USUAL_FOCAL = 0.8;
/** Half of a page's longer side, mm: the curl is told there. */
const HALF_PAGE = 150;

/** How large a sheet was printed, as factors of what was meant. */
export interface PrintScale {
  /** What is known of both directions together before anything is measured. */
  readonly size: Prior;
  /** Standard uncertainty of the difference between the directions. */
  readonly difference: number;
  /** Readings of a ruler across and along the page; null for what was not measured. */
  readonly across: Prior | null;
  readonly along: Prior | null;
}

/** An object on the sheet: points at heights over it. */
export interface SceneObject {
  /** For each point the place of its height in `heights`. */
  readonly heightOf: readonly number[];
  /** Heights over the sheet, mm, as far as they are known. */
  readonly heights: readonly Prior[];
  /** Distances between two of its points that are known, mm: they tell the size of the print. */
  readonly lengths?: readonly { readonly from: number; readonly to: number; readonly length: Prior }[];
}

/** A camera as it was found for one photograph. */
export interface View {
  readonly lens: Lens;
  readonly pose: Standpoint;
}

/** A figure found, with its standard uncertainty and the part of it that comes from the scale of the print. */
export interface SceneFigure {
  readonly value: number;
  readonly u: number;
  readonly uPrint: number;
}

/** A length, or any other figure, of the points of the object. */
export type SceneMeasure = (points: readonly (Vec3 | null)[]) => number;

interface SceneFigures {
  readonly figures: readonly SceneFigure[];
  readonly correlation: readonly (readonly number[])[];
}

export interface Scene {
  readonly ok: true;
  /** For each photograph; null for one that no page ties to the others. */
  readonly views: readonly (View | null)[];
  /** Points of the object, mm; null for one that is seen nowhere. */
  readonly points: readonly (Vec3 | null)[];
  /** Size of the residuals over what the observations claim; near 1 where all fits. */
  readonly misfit: number;
  /** Marks that do not fit the others. */
  readonly doubtful: readonly { readonly photograph: number; readonly page: string; readonly mark: string }[];
  readonly pages: ReadonlyMap<string, Placement>;
  /** Size of the print as found, with its standard uncertainty. */
  readonly print: { readonly across: Prior; readonly along: Prior };
  /**
   * Figures of the points with their uncertainties and correlations. A point that is seen nowhere is null to a measure.
   */
  readonly figures: (measures: readonly SceneMeasure[]) => SceneFigures;
}

export interface SceneTrouble {
  readonly ok: false;
  /** No mark at all; too few for one photograph; or the figures fit no camera. */
  readonly code: 'noMarks' | 'fewMarks' | 'unsolved';
}

/**
 * Finds cameras, pages and object of photographs of one scene, all at once: bundle adjustment (Triggs et al. 2000, Bundle
 * adjustment - a modern synthesis). Unknown are each photograph's pose, each camera's focal length, principal point and two terms
 * of distortion, the place of every page but the first, each page's curl and each mark's lift, the scale of the print, and
 * the object's points and heights. Lengths are mm on the plane of the first page, z upward.
 */
export function solveScene(
  photographs: readonly Photograph[],
  print: PrintScale,
  object: SceneObject = { heightOf: [], heights: [] },
): Scene | SceneTrouble {
  const corners = photographs.map(({ marks }) => marks.reduce((sum, mark) => sum + mark.corners.length, 0));
  if (corners.every((count) => count === 0)) return { ok: false, code: 'noMarks' };
  if (corners.every((count) => count < 4)) return { ok: false, code: 'fewMarks' };
  const start = sceneStart(photographs, USUAL_FOCAL);
  if (start === null) return { ok: false, code: 'unsolved' };

  const unknowns = new Unknowns();
  const scale = scaleUnknowns(unknowns, print);
  const eyes = eyeUnknowns(unknowns, photographs, start);
  const pages = pageUnknowns(unknowns, start.pages);
  const relief = reliefOf(unknowns, eyes);
  const lifts = new Map<string, number>();
  const liftOf = ({ page, mark }: SeenMark): number => {
    const place = lifts.get(`${page} ${mark}`) ?? unknowns.add(0, 1, { value: 0, u: SCENE_DOUBTS.lift });
    lifts.set(`${page} ${mark}`, place);
    return place;
  };
  const heights = object.heights.map((height) => unknowns.add(height.value, 1, height));
  const places = object.heightOf.map((height, point): Place | null => {
    const at = firstSight(photographs, start, point, object.heights[height]!.value);
    return at === null ? null : [unknowns.add(at[0], 1), unknowns.add(at[1], 1), heights[height]!];
  });

  const observations: Observation[] = [...scale.readings, ...lengthObservations(object, places)];
  const names: { photograph: number; page: string; mark: string; observation: number }[] = [];
  photographs.forEach(({ marks, points }, photograph) => {
    const eye = eyes[photograph];
    if (eye == null) return;
    for (const seen of marks) {
      const page = pages.get(seen.page);
      if (page === undefined) continue;
      names.push({ photograph, page: seen.page, mark: seen.mark, observation: observations.length });
      observations.push(markObservation(eye, page, scale, relief, liftOf(seen), seen));
    }
    for (const { point, seen, u } of points) {
      const place = places[point];
      if (place == null) continue;
      observations.push({
        of: [...eye.of, ...place],
        residuals: (values) => {
          const [x, y] = eye.shows(values)(vec3(values, place));
          return whitened([seen[0] - x, seen[1] - y], u);
        },
      });
    }
  });

  let adjusted: Adjusted;
  try {
    adjusted = adjust(unknowns, observations);
  } catch {
    return { ok: false, code: 'unsolved' };
  }
  const { values, covariance, weights, misfit } = adjusted;
  const points = places.map((place) => (place === null ? null : vec3(values, place)));
  return {
    ok: true,
    views: eyes.map((eye) => (eye === null ? null : eye.view(values))),
    points,
    misfit,
    doubtful: names
      .filter(({ observation }) => weights[observation]! < 0.5)
      .map(({ photograph, page, mark }) => ({ photograph, page, mark })),
    pages: new Map(
      [...pages].map(
        ([
          name,
          {
            at: [x, y],
            angle,
          },
        ]) => [name, { at: [values[x]!, values[y]!], angle: values[angle]! }],
      ),
    ),
    print: printOf(values, covariance, scale),
    figures: (measures) => figuresOf(measures, points, places, covariance, scale.of),
  };
}

/** A difference of places in its own uncertainties, by the lower triangle of its covariance (Cholesky). */
function whitened([x, y]: Vec2, u: PlaceDoubt): Vec2 {
  if (typeof u === 'number') return [x / u, y / u];
  const [xx, xy, yy] = u;
  const across = x / Math.sqrt(xx);
  return [across, (y - (xy / Math.sqrt(xx)) * across) / Math.sqrt(yy - (xy * xy) / xx)];
}

type Place = readonly [x: number, y: number, z: number];

const vec3 = (values: Float64Array, [x, y, z]: Place): Vec3 => [values[x]!, values[y]!, values[z]!];

/** The unknowns of the camera of one photograph. */
interface Eye {
  readonly of: readonly number[];
  readonly view: (values: Float64Array) => View;
  /** Where it shows points. */
  readonly shows: (values: Float64Array) => (point: Vec3) => Vec2;
}

/** One focal length and lens for each camera; one principal point for each format too, for a camera held upright has another. */
function eyeUnknowns(
  unknowns: Unknowns,
  photographs: readonly Photograph[],
  { focals, poses }: SceneStart,
): (Eye | null)[] {
  const shared = new Map<string, number[]>();
  const once = (key: string, make: () => number[]): number[] => {
    const places = shared.get(key) ?? make();
    shared.set(key, places);
    return places;
  };
  return photographs.map((photograph, i) => {
    const pose = poses[i];
    if (pose == null) return null;
    const { camera, width, height } = photograph;
    const side = longSide(photograph);
    const isWritten = photographs.some((each) => each.camera === camera && each.focal !== null);
    const focal = Math.log(focals.get(camera)!);
    const distortion: Prior = { value: 0, u: SCENE_DOUBTS.distortion };
    const lens = once(camera, () => [
      unknowns.add(focal, 1e-2, {
        value: isWritten ? focal : Math.log(USUAL_FOCAL),
        u: isWritten ? SCENE_DOUBTS.focal : SCENE_DOUBTS.focalUnknown,
      }),
      unknowns.add(0, 1e-2, distortion),
      unknowns.add(0, 1e-2, distortion),
    ]);
    const centre = once(`${camera} ${width} x ${height}`, () =>
      [width / 2, height / 2].map((value) => unknowns.add(value, 1, { value, u: SCENE_DOUBTS.centre * side })),
    );
    // Where the origin of the sheet is seen, and its distance over the focal length: a longer lens further away shows nearly the same,
    // and in the distance itself the adjustment would creep along a curved valley.
    const [x, y, z] = pose.shift;
    const own = [
      ...pose.turn.map((value) => unknowns.add(value, 1e-2)),
      unknowns.add(width / 2 + (Math.exp(focal) * side * x) / z, 1),
      unknowns.add(height / 2 + (Math.exp(focal) * side * y) / z, 1),
      unknowns.add(Math.log(z / side) - focal, 1e-3),
    ];
    const of = [...lens, ...centre, ...own];
    const view = (values: Float64Array): View => {
      const [f, k1, k2, cx, cy, a, b, c, u, v, over] = of.map((place) => values[place]!) as [
        ...[number, number, number, number, number],
        ...[number, number, number, number, number, number],
      ];
      const length = side * Math.exp(f);
      const away = side * Math.exp(f + over);
      return {
        lens: { focal: length, centre: [cx, cy], k1, k2 },
        pose: { turn: [a, b, c], shift: [((u - cx) / length) * away, ((v - cy) / length) * away, away] },
      };
    };
    return {
      of,
      view,
      shows: (values) => {
        const {
          lens: found,
          pose: { turn, shift },
        } = view(values);
        const rotation = rotationBy(turn);
        return (point) => pixelOf(found, seenFrom(rotation, shift, point));
      },
    };
  });
}

interface ScaleUnknowns {
  /** Size, and difference of across from along. */
  readonly of: readonly [size: number, difference: number];
  readonly factors: (values: Float64Array) => readonly [across: number, along: number];
  readonly readings: readonly Observation[];
}

function scaleUnknowns(unknowns: Unknowns, { size, difference, across, along }: PrintScale): ScaleUnknowns {
  const of = [
    unknowns.add(along?.value ?? across?.value ?? size.value, 1e-3, size),
    unknowns.add(0, 1e-3, { value: 0, u: difference }),
  ] as const;
  const factors = (values: Float64Array) => {
    const [middle, apart] = [values[of[0]]!, values[of[1]]!];
    return [middle + apart / 2, middle - apart / 2] as const;
  };
  return {
    of,
    factors,
    readings: [across, along].flatMap((reading, way) =>
      reading === null ? [] : [{ of, residuals: (values) => [(reading.value - factors(values)[way]!) / reading.u] }],
    ),
  };
}

/**
 * Curl and lift are told in millimetres at the focal length assumed at first, and grow with it. What is seen of them is their share of
 * the distance, and the distance goes with the focal length: told in plain millimetres they would be cheaper for a shorter lens, and the
 * adjustment would find every lens too short (by a standard uncertainty, for one photograph from above).
 */
interface Relief {
  readonly focal: number;
  readonly stretch: (values: Float64Array) => number;
}

function reliefOf({ starts }: Unknowns, eyes: readonly (Eye | null)[]): Relief {
  const focal = eyes.find((eye) => eye !== null)!.of[0]!;
  const start = starts[focal]!;
  return { focal, stretch: (values) => Math.exp(values[focal]! - start) };
}

/** The two factors with what the covariance leaves of their doubt: each is the size and half the difference. */
function printOf(
  values: Float64Array,
  covariance: readonly (readonly number[])[],
  { of, factors }: ScaleUnknowns,
): Scene['print'] {
  const [size, difference] = of;
  const [across, along] = factors(values);
  const u = (half: 0.5 | -0.5): number =>
    Math.sqrt(
      bilinear(
        [1, half],
        [
          [covariance[size]![size]!, covariance[size]![difference]!],
          [covariance[difference]![size]!, covariance[difference]![difference]!],
        ],
        [1, half],
      ),
    );
  return { across: { value: across, u: u(0.5) }, along: { value: along, u: u(-0.5) } };
}

function lengthObservations({ lengths = [] }: SceneObject, places: readonly (Place | null)[]): Observation[] {
  return lengths.flatMap(({ from, to, length }) => {
    const [a, b] = [places[from], places[to]];
    if (a == null || b == null) return [];
    return [
      {
        of: [...new Set([...a, ...b])],
        residuals: (values) => {
          const [p, q] = [vec3(values, a), vec3(values, b)];
          return [(length.value - Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])) / length.u];
        },
      },
    ];
  });
}

interface PageUnknowns {
  readonly of: readonly number[];
  readonly at: readonly [x: number, y: number];
  readonly angle: number;
  /** Three terms of the curve of a page: along x, along both, along y. */
  readonly curl: readonly [number, number, number];
}

function pageUnknowns(unknowns: Unknowns, pages: ReadonlyMap<string, Placement>): ReadonlyMap<string, PageUnknowns> {
  let isFirst = true;
  return new Map(
    [...pages].map(([name, { at, angle }]) => {
      // The first page is the frame in which all is told.
      const add = (value: number, step: number): number =>
        unknowns.add(value, step, isFirst ? { value, u: 1e-6 * step } : null);
      const curl = (): number => unknowns.add(0, 1, { value: 0, u: SCENE_DOUBTS.curl });
      const page = {
        at: [add(at[0], 1), add(at[1], 1)],
        angle: add(angle, 1e-2),
        curl: [curl(), curl(), curl()],
      } as const;
      isFirst = false;
      return [name, { ...page, of: [...page.at, page.angle, ...page.curl] }];
    }),
  );
}

function markObservation(
  eye: Eye,
  page: PageUnknowns,
  scale: ScaleUnknowns,
  relief: Relief,
  lift: number,
  { corners, seen, u }: SeenMark,
): Observation {
  return {
    of: [...new Set([...eye.of, relief.focal]), ...scale.of, ...page.of, lift],
    residuals: (values) => {
      const shows = eye.shows(values);
      const [across, along] = scale.factors(values);
      const [xx, xy, yy] = vec3(values, page.curl);
      const placement = { at: [values[page.at[0]]!, values[page.at[1]]!] as const, angle: values[page.angle]! };
      return corners.flatMap((corner, k) => {
        const [a, b] = [corner[0] / HALF_PAGE, corner[1] / HALF_PAGE];
        const [x, y] = placedOnSheet(placement, [across * corner[0], along * corner[1]]);
        const height = values[lift]! + xx * a * a + xy * a * b + yy * b * b;
        const [p, q] = shows([x, y, relief.stretch(values) * height]);
        return [(seen[k]![0] - p) / u, (seen[k]![1] - q) / u];
      });
    },
  };
}

/** Where a point of the object stands by the first photograph that shows it. */
function firstSight(photographs: readonly Photograph[], start: SceneStart, point: number, height: number): Vec2 | null {
  for (const [i, { points }] of photographs.entries()) {
    const seen = points.find((each) => each.point === point);
    const at = seen === undefined ? null : guessAt(start, photographs, i, seen.seen, height);
    if (at !== null) return at;
  }
  return null;
}

/** Propagates the covariance to figures by first order; what the print adds is what vanishes where its scale is known. */
function figuresOf(
  measures: readonly SceneMeasure[],
  points: readonly (Vec3 | null)[],
  places: readonly (Place | null)[],
  covariance: readonly (readonly number[])[],
  scale: readonly number[],
): SceneFigures {
  const values = measures.map((measure) => measure(points));
  const of = [...new Set(places.flatMap((place) => place ?? []))];
  const step = 1e-3;
  const slopes = measures.map((measure) =>
    of.map((unknown) => {
      const moved = (by: number): number =>
        measure(
          points.map(
            (point, i) => point?.map((value, k) => (places[i]![k] === unknown ? value + by : value)) as unknown as Vec3,
          ),
        );
      return (moved(step) - moved(-step)) / (2 * step);
    }),
  );
  const own = of.map((i) => of.map((k) => covariance[i]![k]!));
  // Covariance of the unknowns with the two scales, through the inverse of the scales' own two by two.
  const [a, b] = scale as [number, number];
  const [aa, ab, bb] = [covariance[a]![a]!, covariance[a]![b]!, covariance[b]![b]!];
  const determinant = aa * bb - ab * ab;
  const ofPrint = slopes.map((slope) => {
    const [p, q] = [a, b].map((place) =>
      of.reduce((sum, unknown, i) => sum + slope[i]! * covariance[unknown]![place]!, 0),
    ) as [number, number];
    return determinant > 0 ? (p * p * bb - 2 * p * q * ab + q * q * aa) / determinant : 0;
  });
  const variances = slopes.map((slope) => bilinear(slope, own, slope));
  return {
    figures: values.map((value, i) => ({
      value,
      u: Math.sqrt(Math.max(0, variances[i]!)),
      uPrint: Math.sqrt(Math.max(0, Math.min(ofPrint[i]!, variances[i]!))),
    })),
    correlation: slopes.map((one, i) =>
      slopes.map((other, k) => {
        const size = Math.sqrt(variances[i]! * variances[k]!);
        if (i === k) return 1;
        return size > 0 ? Math.max(-1, Math.min(1, bilinear(one, own, other) / size)) : 0;
      }),
    ),
  };
}
