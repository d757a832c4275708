import { dot3, unit3, type Vec3 } from '../../src/core/math/vec3.ts';

/** The measures of a book to be photographed, mm. */
export interface TestBook {
  readonly width: number;
  readonly height: number;
  readonly thicknessAtSpine: number;
  readonly thicknessAtForeEdge: number;
  readonly board: number;
  /** How far the boards stand out over the pages. */
  readonly squares: number;
  /** How far the back is rounded out beyond the boards; 0 for a flat one. */
  readonly rise: number;
  /** Radius of the boards' corners at the fore-edge. */
  readonly corner: number;
  readonly cover: CoverLook;
}

export interface CoverLook {
  /** Reflectance of the cloth: red, green, blue. */
  readonly colour: Vec3;
  readonly pages: Vec3;
  /** Depth of the cloth's weave, as a share. */
  readonly weave: number;
  /** Whether a frame and a title are stamped on the front. */
  readonly isStamped: boolean;
}

/** All points with normal . p <= reach for every plane. */
interface Plane {
  readonly normal: Vec3;
  readonly reach: number;
}

export interface Solid {
  readonly part: 'cover' | 'pages';
  readonly planes: readonly Plane[];
}

/**
 * The book as convex solids, in its own axes: x from the spine to the fore-edge, y from the tail to the head, z from the
 * back board to the front board; the origin is the corner of the back board at spine and tail.
 */
export function bookSolids(book: TestBook): readonly Solid[] {
  const { width, height, thicknessAtSpine: spine, thicknessAtForeEdge: fore, board, squares, rise } = book;
  const slope = (fore - spine) / width;
  const below = (reach: number): Plane => scaled([-slope, 0, 1], reach);
  const above = (reach: number): Plane => scaled([slope, 0, -1], -reach);
  const box = (left: number, right: number, tail: number, head: number): Plane[] => [
    { normal: [-1, 0, 0], reach: -left },
    { normal: [1, 0, 0], reach: right },
    { normal: [0, -1, 0], reach: -tail },
    { normal: [0, 1, 0], reach: head },
  ];
  const outline = [...box(0, width, 0, height), ...corners(book)];
  const floor = (reach: number): Plane => ({ normal: [0, 0, -1], reach: -reach });
  return [
    { part: 'cover', planes: [...outline, floor(0), { normal: [0, 0, 1], reach: board }] },
    { part: 'cover', planes: [...outline, below(spine), above(spine - board)] },
    {
      part: 'pages',
      planes: [...box(0, width - squares, squares, height - squares), floor(board), below(spine - board)],
    },
    { part: 'cover', planes: back(book, rise) },
  ];
}

/** Tangents of the two arcs at the fore-edge. */
function corners({ width, height, corner }: TestBook): Plane[] {
  if (corner <= 0) return [];
  return [1, 2, 3, 4].flatMap((k) => {
    const angle = (k / 5) * (Math.PI / 2);
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const [x, y] = [width - corner, height - corner];
    return [
      { normal: [c, s, 0] as const, reach: c * x + s * y + corner },
      { normal: [c, -s, 0] as const, reach: c * x - s * corner + corner },
    ];
  });
}

/** The back: flat, one board thick, or as a segment of a circle over the spine. */
function back({ height, thicknessAtSpine: spine, board, squares }: TestBook, rise: number): Plane[] {
  const ends: Plane[] = [
    { normal: [0, -1, 0], reach: 0 },
    { normal: [0, 1, 0], reach: height },
    { normal: [1, 0, 0], reach: Math.max(board, squares) },
    { normal: [0, 0, -1], reach: 0 },
    { normal: [0, 0, 1], reach: spine },
  ];
  if (rise <= 0) return [...ends, { normal: [-1, 0, 0], reach: 0 }];
  // Radius of the circle with that sagitta over the spine as chord.
  const radius = (spine * spine) / (8 * rise) + rise / 2;
  const half = Math.asin(Math.min(1, spine / 2 / radius));
  const facets = 24;
  for (let i = 0; i < facets; i++) {
    const angle = half * ((2 * (i + 0.5)) / facets - 1);
    const normal: Vec3 = [-Math.cos(angle), 0, Math.sin(angle)];
    // Each facet passes through the ends of its arc.
    const chord = radius * Math.cos(half / facets);
    ends.push({ normal, reach: dot3(normal, [radius - rise, 0, spine / 2]) + chord });
  }
  return ends;
}

function scaled(normal: Vec3, reach: number): Plane {
  return { normal: unit3(normal), reach: reach / Math.hypot(...normal) };
}

/** Places of a book that can be seen from outside, by name, in its own axes. */
export function bookPoints({
  width,
  height,
  thicknessAtSpine: spine,
  thicknessAtForeEdge: fore,
  board,
  rise,
}: TestBook) {
  return {
    headSpine: [0, height, spine],
    headForeEdge: [width, height, fore],
    tailForeEdge: [width, 0, fore],
    tailSpine: [0, 0, spine],
    backHeadSpine: [0, height, 0],
    backHeadForeEdge: [width, height, 0],
    backTailForeEdge: [width, 0, 0],
    backTailSpine: [0, 0, 0],
    apex: [-rise, height, spine / 2],
    frontBoardInside: [width, height, fore - board],
    backBoardInside: [width, height, board],
  } satisfies Record<string, Vec3>;
}
