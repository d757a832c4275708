import type { DoubtPath } from '../job/doubtSchema.ts';
import { cross3, type Vec3 } from '../math/vec3.ts';
import type { Prior } from './adjust.ts';
import type { Photograph } from './photograph.ts';
import {
  type PrintScale,
  type Scene,
  type SceneFigure,
  type SceneMeasure,
  type SceneTrouble,
  solveScene,
} from './scene.ts';

/**
 * Points of a book lying on the sheet: the corners of its upper board, seen from above. Of a book standing on its tail: the same corners
 * of its head end, its front board upward in the picture, and where they are seen the top of a rounded back and the inner edge of a
 * board.
 */
export const LYING_POINTS = ['headSpine', 'headForeEdge', 'tailForeEdge', 'tailSpine'] as const;
export const STANDING_POINTS = ['frontSpine', 'frontForeEdge', 'backForeEdge', 'backSpine', 'top', 'board'] as const;

/** Photographs of the book in one position, their points numbered as in the lists above. */
export interface BookPhotographs {
  readonly lying: readonly Photograph[];
  readonly standing: readonly Photograph[];
  readonly print: PrintScale;
  /** Thickness at spine and fore-edge as measured by hand; null to find them from the views alone. */
  readonly thickness: Prior | null;
  readonly foreEdgeThickness: Prior | null;
  /** Height as measured by hand, for a book that is photographed standing only. */
  readonly height: Prior | null;
  /** Whether both thicknesses are one, as of a book that is no wedge. */
  readonly isParallel: boolean;
}

/** A measure of the book found by photograph. */
export interface BookMeasure extends SceneFigure {
  readonly path: Extract<
    DoubtPath,
    | 'book.width_mm'
    | 'book.height_mm'
    | 'book.thickness_mm'
    | 'book.foreEdgeThickness_mm'
    | 'book.boardThickness_mm'
    | 'book.spine.rise_mm'
  >;
}

export interface MeasuredBook {
  readonly measures: readonly BookMeasure[];
  /** Correlations of the measures, in their order. */
  readonly correlation: readonly (readonly number[])[];
  /** How much longer the diagonal from head at the spine is than the other, mm: 0 for a board cut square. */
  readonly outOfSquare: SceneFigure | null;
  /** How much thicker the book is at the spine than at the fore-edge, mm. */
  readonly swell: SceneFigure | null;
  /** The scenes as solved; null where there were no photographs of that position. */
  readonly lying: Scene | SceneTrouble | null;
  readonly standing: Scene | SceneTrouble | null;
}

/** A height of which nothing is known: a book may be as thick as this, give or take as much, mm. */
const ANY_THICKNESS: Prior = { value: 30, u: 60 };
const ANY_HEIGHT: Prior = { value: 250, u: 150 };

const away = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Distance of a point from the line through two others. */
function offLine(a: Vec3, b: Vec3, point: Vec3): number {
  const along: Vec3 = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const across = cross3(along, [point[0] - a[0], point[1] - a[1], point[2] - a[2]]);
  return Math.hypot(...across) / Math.hypot(...along);
}

const width: SceneMeasure = ([a, b, c, d]) => (away(a!, b!) + away(d!, c!)) / 2;
const height: SceneMeasure = ([a, b, c, d]) => (away(a!, d!) + away(b!, c!)) / 2;

/** Measures of a book that lies on the sheet, by the path of each in the job. */
const LYING: readonly (readonly [BookMeasure['path'], SceneMeasure])[] = [
  ['book.width_mm', width],
  ['book.height_mm', height],
  ['book.thickness_mm', ([a, , , d]) => (a![2] + d![2]) / 2],
  ['book.foreEdgeThickness_mm', ([, b, c]) => (b![2] + c![2]) / 2],
];

/** Of a book that stands on its tail, with the points that each needs. */
const STANDING: readonly (readonly [BookMeasure['path'], readonly number[], SceneMeasure])[] = [
  ['book.thickness_mm', [0, 3], ([a, , , d]) => away(a!, d!)],
  ['book.foreEdgeThickness_mm', [1, 2], ([, b, c]) => away(b!, c!)],
  ['book.spine.rise_mm', [0, 3, 4], ([a, , , d, top]) => offLine(a!, d!, top!)],
  ['book.boardThickness_mm', [0, 1, 5], ([a, b, , , , board]) => offLine(a!, b!, board!)],
];

/**
 * Measures a book from its photographs. The two positions help each other: the height found of the book that lies tells how far the
 * head of the one that stands is above the sheet, and the thickness found of that one tells how far the upper board of the first is.
 */
export function measuredBook(book: BookPhotographs): MeasuredBook {
  const thickness = [
    book.thickness ?? ANY_THICKNESS,
    book.foreEdgeThickness ?? book.thickness ?? ANY_THICKNESS,
  ] as const;
  const lie = (known: readonly Prior[]): Scene | SceneTrouble | null =>
    book.lying.length === 0
      ? null
      : solveScene(book.lying, book.print, {
          heightOf: book.isParallel ? [0, 0, 0, 0] : [0, 1, 1, 0],
          heights: book.isParallel ? known.slice(0, 1) : known,
        });
  const first = lie(thickness);
  const stood = book.height ?? heightFound(first);
  const standing = book.standing.length === 0 ? null : stand(book, stood ?? ANY_HEIGHT);
  const found = standing?.ok === true ? foundOf(standing, STANDING) : null;
  const foundThickness = found?.paths.indexOf('book.thickness_mm') ?? -1;
  const foundForeEdge = found?.paths.indexOf('book.foreEdgeThickness_mm') ?? -1;
  const lying =
    found === null || foundThickness < 0
      ? first
      : lie([
          both(book.thickness, found.figures[foundThickness]!),
          foundForeEdge < 0 ? thickness[1] : both(book.foreEdgeThickness, found.figures[foundForeEdge]!),
        ]);

  const ofLying = lying?.ok === true && isSeen(lying, [0, 1, 2, 3]) ? lyingMeasures(lying, book.isParallel) : NOTHING;
  const ofStanding = standing?.ok === true && found !== null ? without(found, new Set(ofLying.paths)) : NOTHING;
  return {
    measures: [...named(ofLying), ...named(ofStanding)],
    correlation: joined(ofLying, ofStanding),
    outOfSquare:
      lying?.ok === true && isSeen(lying, [0, 1, 2, 3])
        ? lying.figures([([a, b, c, d]) => away(a!, c!) - away(b!, d!)]).figures[0]!
        : null,
    swell:
      standing?.ok === true && isSeen(standing, [0, 1, 2, 3])
        ? standing.figures([([a, b, c, d]) => away(a!, d!) - away(b!, c!)]).figures[0]!
        : null,
    lying,
    standing,
  };
}

interface Found {
  readonly paths: readonly BookMeasure['path'][];
  readonly figures: readonly SceneFigure[];
  readonly correlation: readonly (readonly number[])[];
}

const NOTHING: Found = { paths: [], figures: [], correlation: [] };

const isSeen = ({ points }: Scene, needed: readonly number[]): boolean =>
  needed.every((point) => points[point] != null);

/** A figure that photographs found, with the reading by hand of the same length where there is one. */
function both(typed: Prior | null, { value, u }: SceneFigure): Prior {
  if (typed === null) return { value, u };
  const weight = 1 / u ** 2 + 1 / typed.u ** 2;
  return { value: (value / u ** 2 + typed.value / typed.u ** 2) / weight, u: 1 / Math.sqrt(weight) };
}

function stand({ standing, print }: BookPhotographs, height: Prior): Scene | SceneTrouble {
  return solveScene(standing, print, { heightOf: STANDING_POINTS.map(() => 0), heights: [height] });
}

function heightFound(scene: Scene | SceneTrouble | null): Prior | null {
  if (scene?.ok !== true || !isSeen(scene, [0, 1, 2, 3])) return null;
  const { value, u } = scene.figures([height]).figures[0]!;
  return { value, u };
}

function foundOf(scene: Scene, table: typeof STANDING): Found {
  const rows = table.filter(([, needed]) => isSeen(scene, needed));
  const { figures, correlation } = scene.figures(rows.map(([, , measure]) => measure));
  return { paths: rows.map(([path]) => path), figures, correlation };
}

function lyingMeasures(scene: Scene, isParallel: boolean): Found {
  const rows = LYING.filter(([path]) => !(isParallel && path === 'book.foreEdgeThickness_mm'));
  const { figures, correlation } = scene.figures(rows.map(([, measure]) => measure));
  return { paths: rows.map(([path]) => path), figures, correlation };
}

function without({ paths, figures, correlation }: Found, taken: ReadonlySet<string>): Found {
  const kept = [...paths.keys()].filter((i) => !taken.has(paths[i]!));
  return {
    paths: kept.map((i) => paths[i]!),
    figures: kept.map((i) => figures[i]!),
    correlation: kept.map((i) => kept.map((k) => correlation[i]![k]!)),
  };
}

const named = ({ paths, figures }: Found): BookMeasure[] =>
  figures.map((figure, i) => ({ ...figure, path: paths[i]! }));

/** Correlations of two sets; between them only the scale of the print is shared. */
function joined(a: Found, b: Found): number[][] {
  const all = [...a.figures, ...b.figures];
  const n = a.figures.length;
  return all.map((one, i) =>
    all.map((other, k) => {
      if (i < n && k < n) return a.correlation[i]![k]!;
      if (i >= n && k >= n) return b.correlation[i - n]![k - n]!;
      return (one.uPrint * other.uPrint) / (one.u * other.u);
    }),
  );
}
